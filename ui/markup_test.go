package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"tubewright/route"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// looksLike compares a widget of a size with its markup in testdata/markup. A
// new look is accepted by copying it from testdata/failed, after reading it.
func looksLike(t *testing.T, name string, o fyne.CanvasObject, size fyne.Size) {
	t.Helper()
	w := test.NewTempWindow(t, container.NewWithoutLayout(o))
	w.SetPadded(false)
	w.Resize(size)
	o.Resize(size)
	test.AssertRendersToMarkup(t, "markup/"+name+".xml", w.Canvas())
}

func themed(t *testing.T) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(NewTheme(false))
}

func TestMarkupOfAHeader(t *testing.T) {
	themed(t)
	h := newHeader(headerActions{})
	h.show(headerModel{title: "Bench *", undo: "Move pump", units: route.Millimetres, ready: readyModel{"Ready to cut.", fine, false}})
	looksLike(t, "header", h, fyne.NewSize(900, headerHigh))
}

func TestMarkupOfNumbers(t *testing.T) {
	themed(t)
	n := newNumbers(nil, nil)
	n.show("pump", [3]float64{60, 80.5, -30}, [3]float64{0, 90, 0}, route.Millimetres)
	looksLike(t, "numbers", n, fyne.NewSize(200, n.HeightFor(200)))
}

func TestMarkupOfALineToBuy(t *testing.T) {
	themed(t)
	l := newBuyLine(buyRow{item: "socket-16", label: "socket-16", need: "4", buy: "3", onHand: 1, price: "18.60"}, nil, nil, nil)
	looksLike(t, "buy_line", l, fyne.NewSize(400, l.HeightFor(400)))
}

func TestMarkupOfAChosenField(t *testing.T) {
	themed(t)
	p := newPress(newFlow("radiator", textSize, ink), nil)
	p.choose(true)
	looksLike(t, "press", p, fyne.NewSize(200, p.HeightFor(200)))
}

func TestMarkupOfButtons(t *testing.T) {
	themed(t)
	r := newButtonRow(button{text: "Cancel", cancel: true}, button{text: "Save", strong: true})
	r.toRight = true
	looksLike(t, "buttons", r, fyne.NewSize(300, r.HeightFor(300)))
}

func TestMarkupOfAPanel(t *testing.T) {
	themed(t)
	p := newPanel("Findings (2)", nil, newFlow("Nothing to settle.", smallSize, soft))
	looksLike(t, "panel", p, fyne.NewSize(240, 120))
}

func TestMarkupOfFindings(t *testing.T) {
	themed(t)
	f := newFindings(nil, wayOutActions{})
	f.Resize(fyne.NewSize(240, 200))
	f.show([]findingGroup{{"error", "1 error: do not cut", []findingModel{{0, "error", "Run a hits part pump.", "Move it 3.2 mm.", "-3.2 mm", true, true, false}}}}, "", "", 0, wayOutModel{index: -1})
	looksLike(t, "findings", f.pane, fyne.NewSize(240, 200))
}

// What was not shown for a while is drawn anew as it was: Fyne has thrown its
// renderer away by then, and lays a new one out only where the size is another.
func TestRenderersMadeAnewShowTheSame(t *testing.T) {
	themed(t)
	p := newPress(newFlow("Remove", smallSize, accent), nil)
	size := fyne.NewSize(80, 24)
	test.NewTempWindow(t, p)
	p.Resize(size)
	text := p.content.(*flow).CreateRenderer().Objects()
	if len(text) != 1 || text[0].(*canvas.Text).Text != "Remove" || text[0].Size().IsZero() {
		t.Errorf("the text made anew is %v", text)
	}
	if back := p.CreateRenderer().Objects()[0]; back.Size() != size {
		t.Errorf("the ground made anew is %v wide and high, want %v", back.Size(), size)
	}
}

// A widget's own state, where markup would be hard to read.

func TestPressByKeyAndBySlippedClick(t *testing.T) {
	themed(t)
	pressed := 0
	p := newPress(canvas.NewRectangle(nothing), func() { pressed++ })
	p.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	p.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	p.TypedKey(&fyne.KeyEvent{Name: fyne.KeyA})
	if pressed != 2 {
		t.Errorf("Space, Enter and A pressed %d times, want 2", pressed)
	}
	p.Dragged(&fyne.DragEvent{Dragged: fyne.Delta{DX: 3, DY: 2}})
	p.DragEnd()
	if pressed != 3 {
		t.Error("a click that slipped by 4 pixels was lost")
	}
	p.Dragged(&fyne.DragEvent{Dragged: fyne.Delta{DX: 30}})
	p.DragEnd()
	if pressed != 3 {
		t.Error("a drag over 30 pixels counts as a click")
	}
	p.off = true
	test.Tap(p)
	if pressed != 3 {
		t.Error("a field that is off was pressed")
	}
}

func TestFlowTakesMoreLinesWhenNarrow(t *testing.T) {
	themed(t)
	f := newFlow(strings.Repeat("conservation ", 6), textSize, ink)
	wide, narrow := f.HeightFor(1000), f.HeightFor(120)
	if narrow < 4*wide {
		t.Errorf("six words are %v high at 120 and %v at 1000; want at least four lines", narrow, wide)
	}
	f.most = 2
	if got := f.HeightFor(120); got != 2*wide {
		t.Errorf("at most two lines are %v high, want %v", got, 2*wide)
	}
}

// Fyne throws the renderer of a widget away that was not shown for 20 seconds, and
// asks for another when it is shown again, at the size it had.
func TestAFlowIsThereAgainAfterItWasAway(t *testing.T) {
	themed(t)
	f := newFlow("Remove", smallSize, accent)
	f.Resize(fyne.NewSize(100, 20))
	objects := f.CreateRenderer().Objects()
	if len(objects) != 1 || objects[0].(*canvas.Text).Text != "Remove" || objects[0].Size().Width != 100 {
		t.Errorf("a new renderer shows %v", objects)
	}
}

func TestAPaneRevealsWhatIsBelow(t *testing.T) {
	themed(t)
	rows := make([]fyne.CanvasObject, 40)
	for i := range rows {
		rows[i] = newFlow("row", textSize, ink)
	}
	p := newPane(newColumn(0, 0, rows...))
	w := test.NewTempWindow(t, p)
	w.Resize(fyne.NewSize(200, 150))
	p.reveal(rows[30])
	if p.scroll.Offset.Y <= 0 {
		t.Fatal("the pane did not scroll to a row below")
	}
	far := p.scroll.Offset.Y
	p.reveal(rows[30])
	if p.scroll.Offset.Y != far {
		t.Error("revealing what is seen scrolled again")
	}
	p.reveal(rows[0])
	if p.scroll.Offset.Y != 0 {
		t.Errorf("revealing the first row left the pane at %v", p.scroll.Offset.Y)
	}
}

func TestAStripIsOnlyPaintedWhenSomethingIsNew(t *testing.T) {
	b := opened(t)
	strip := b.cards.byRun["left-to-top"].strip
	first := strip.paint(250, 40)
	if strip.paint(250, 40) != first {
		t.Error("asked twice, the picture was painted twice")
	}
	strip.redraw()
	strip.paint(250, 40)
	if len(strip.drawing.Items) == 0 {
		t.Error("the strip of a tube is empty")
	}
}

func TestDetailsOfEverything(t *testing.T) {
	b := opened(t)
	for _, row := range []struct {
		at          board.Target
		title, says string
	}{
		{board.PartTarget("top"), "top", "out: G1/4 · free"},
		{board.RunTarget("left-to-top"), "left-to-top", "from left.out to top.in"},
		{board.PortTarget(route.PortRef{Part: "top", Port: "in"}), "top.in", "facing −y"},
		{board.PortTarget(route.PortRef{Part: "top", Port: "none"}), "top.none", ""},
		{board.FindingTarget(0), codeWords(b.snapshot.List.Findings[0].Code), b.snapshot.List.Findings[0].What},
		{board.FindingTarget(99), "Nothing is selected", "Click a part"},
		{board.PartTarget("gone"), "Nothing is selected", ""},
	} {
		got := detailOf(b.snapshot, row.at)
		if got.title != row.title || !strings.Contains(strings.Join(got.lines, "\n"), row.says) {
			t.Errorf("details of %+v: %q %q, want %q and a line with %q", row.at, got.title, got.lines, row.title, row.says)
		}
	}
	if got := detailOf(session.Snapshot{}, board.Target{}); !strings.Contains(got.lines[0], "Open a plan") {
		t.Errorf("with no plan: %q", got.lines)
	}
}
