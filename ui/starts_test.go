package ui

import (
	"context"
	"os"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tubewright/assets"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/planfile"
	"tubewright/ui/board"
)

// Nothing stands in anything else, and the first loop one would think of can be
// run: pump, processor, card, a radiator and back. The largest case takes a few
// seconds and is tried when TUBEWRIGHT_STARTS is all.
func TestStartingPlansCanBePlumbed(t *testing.T) {
	names := assets.Starts()
	if os.Getenv("TUBEWRIGHT_STARTS") != "all" {
		names = names[:2]
	}
	for _, name := range names {
		text, _ := assets.Start(name)
		plan, _, err := planfile.Read(name+planfile.Ending, text)
		if err != nil {
			t.Fatal(err)
		}
		last, card := "side", "card"
		for _, k := range plan.Parts {
			switch k.Name {
			case "front":
				last = "front"
			case "card-1":
				card = "card-1"
			}
		}
		for i, ends := range [][2]string{{"pump.out", "processor.in"}, {"processor.out", card + ".in"}, {card + ".out", last + ".low"}, {last + ".high", "pump.in"}} {
			ref := func(text string) route.PortRef {
				part, port, _ := strings.Cut(text, ".")
				return route.PortRef{Part: part, Port: port}
			}
			plan.Runs = append(plan.Runs, route.Run{Name: string(rune('a' + i)), From: ref(ends[0]), To: ref(ends[1])})
		}
		sol, err := find.Solve(context.Background(), plan)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range check.Findings(plan, sol) {
			if f.Severity == check.Error {
				t.Errorf("%s: %s %s", name, f.What, f.Fix)
			}
		}
	}
}

func TestANewPlanBeginsWithACase(t *testing.T) {
	b := opened(t)
	b.newPlan()
	if b.asked() != "Begin a plan with" {
		t.Fatalf("asked is %q", b.asked())
	}
	b.press(fyne.KeyDown)
	b.press(fyne.KeyReturn)
	b.settle()
	if got := b.snapshot; got.Plan.Name != "Small case" || got.Path != "" || got.Dirty || len(got.Plan.Runs) != 0 || b.asked() != "" {
		t.Errorf("begun is %q, file %q, dirty %v, asked %q", got.Plan.Name, got.Path, got.Dirty, b.asked())
	}
	b.newPlan()
	b.press(fyne.KeyReturn)
	b.settle()
	if got := b.snapshot.Plan; got.Name != "New plan" || len(got.Parts) != 0 {
		t.Errorf("an empty case is %q with %d parts", got.Name, len(got.Parts))
	}
	b.newPlan()
	b.press(fyne.KeyEscape)
	if b.asked() != "" {
		t.Errorf("Esc leaves %q open", b.asked())
	}
}

func TestAboutAStartingPlan(t *testing.T) {
	p := route.Plan{Units: route.Inches, Case: [3]float64{254, 508, 127}, Parts: make([]route.Part, 1)}
	if got, want := startAbout(p), "10 × 20 × 5 in · 1 part, no tubes yet · invented: put your own measures in"; got != want {
		t.Errorf("about is %q, want %q", got, want)
	}
}

// The picture holds more than its ground, and is not painted twice.
func TestAThumbIsPaintedOnce(t *testing.T) {
	themed(t)
	text, _ := assets.Start("small-case")
	plan, _, err := planfile.Read("small-case", text)
	if err != nil {
		t.Fatal(err)
	}
	th := newThumb(board.NewScene(plan, cutlist.List{}, find.Solution{}), board.Turntable, thumbSize)
	w := test.NewTempWindow(t, th)
	w.Resize(thumbSize)
	first := th.paint(104, 78)
	seen := map[string]bool{}
	for y := range 78 {
		for x := range 104 {
			r, g, b, _ := first.At(x, y).RGBA()
			seen[string([]rune{rune(r), rune(g), rune(b)})] = true
		}
	}
	if len(seen) < 50 {
		t.Errorf("the picture has %d colours, want many", len(seen))
	}
	if th.paint(104, 78) != first {
		t.Error("it is painted anew though nothing changed")
	}
	th.show(th.scene)
	if th.painted != nil {
		t.Error("a new scene does not make it paint anew")
	}
}

func TestMarkupOfARowWithAPicture(t *testing.T) {
	themed(t)
	r := newIconRow(newFixed(40, 30), newColumn(0, 1, newFlow("Small case", textSize, accent), newFlow("7 parts, no tubes yet", smallSize, soft)))
	looksLike(t, "icon_row", r, fyne.NewSize(240, r.HeightFor(240)))
}

// newFixed is an object of a fixed size.
func newFixed(w, h float32) fyne.CanvasObject {
	th := newThumb(board.Scene{}, board.Side, fyne.NewSize(w, h))
	th.painted = nil
	return th
}
