package ui

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tubewright/bends"
	"tubewright/bends/trial"
	"tubewright/cutlist/draw"
	"tubewright/route"
)

// The case worked by hand in package trial: two marks 200 mm apart on 16 mm
// tube, formed to 93° and opening to 90°, 115 mm to the back on both sides.
// (2·107 − 200)/0.429204 = 32.62 mm.
var handBend = []string{"93", "90", "115", "115", "200"}

func handModel() *trialModel {
	return &trialModel{
		tube:  route.Tube{Name: "petg", Tube: bends.Tube{OD: 16, Radius: 32}},
		units: route.Millimetres, list: []trial.Bend{{From: trial.Marks, To: trial.Back}},
	}
}

func typeBend(t *testing.T, m *trialModel, row int, texts []string) {
	t.Helper()
	for col, text := range texts {
		if err := m.set(row, col, text); err != nil {
			t.Fatal(err)
		}
	}
}

func TestTestBendByHand(t *testing.T) {
	m := handModel()
	if text, _ := m.words(); !strings.Contains(text, "Bend 1 is not complete") || m.ready() {
		t.Errorf("with nothing typed it says %q", text)
	}
	typeBend(t, m, 0, handBend)
	if math.Abs(m.fit.Radius.At-32.62) > 0.005 || !m.ready() {
		t.Fatalf("the radius is %.3f, ready %v, want 32.62 as worked by hand", m.fit.Radius.At, m.ready())
	}
	if text, r := m.words(); r != ink || !strings.Contains(text, "Radius 32.6 mm") || !strings.Contains(text, "opens by 3.0°") || !strings.Contains(text, "gains 14.0 mm") {
		t.Errorf("it says %q", text)
	}
	if got := strings.Join(m.texts(0), " "); got != strings.Join(handBend, " ") {
		t.Errorf("the fields show %q", got)
	}
}

func TestTestBendInInches(t *testing.T) {
	m := handModel()
	m.units = route.Inches
	typeBend(t, m, 0, []string{"93", "90", "115 mm", "4 1/2+0.0276", "200mm"})
	if math.Abs(m.list[0].Legs[1]-115) > 0.01 || math.Abs(m.fit.Radius.At-32.62) > 0.05 {
		t.Errorf("leg 2 is %.3f mm and the radius %.2f", m.list[0].Legs[1], m.fit.Radius.At)
	}
	if text, _ := m.words(); !strings.Contains(text, "Radius 1.28") || m.heads()[3] != "leg 1, in" {
		t.Errorf("it says %q under %q", text, m.heads()[3])
	}
}

func TestTestBendRefusesNonsense(t *testing.T) {
	m := handModel()
	typeBend(t, m, 0, handBend)
	if err := m.set(0, trialLeg1, "abc"); err == nil || m.list[0].Legs[0] != 115 {
		t.Errorf("abc is taken: %v, leg %v", err, m.list[0].Legs[0])
	}
	typeBend(t, m, 0, []string{"80"})
	if text, r := m.words(); r != bad || !strings.Contains(text, "it keeps 90.00 degrees but was only formed to 80.00") || m.ready() {
		t.Errorf("bent back it says %q", text)
	}
	typeBend(t, m, 0, []string{""})
	if m.missing() != 0 || m.err != nil {
		t.Errorf("an emptied field: missing %d, %v", m.missing(), m.err)
	}
}

func TestTestBendMeasuredAnotherWay(t *testing.T) {
	m := handModel()
	typeBend(t, m, 0, handBend)
	m.measureTo(trial.Centre)
	typeBend(t, m, 0, []string{"93", "90", "107", "107"})
	if math.Abs(m.fit.Radius.At-32.62) > 0.005 {
		t.Errorf("to the centrelines the radius is %.3f", m.fit.Radius.At)
	}
	m.measureFrom(trial.Ends)
	if m.list[0].Blank != 200 || m.heads()[5] != "piece before, mm" || math.Abs(m.fit.Radius.At-32.62) > 0.005 {
		t.Errorf("from the ends: %+v, radius %.3f", m.list[0], m.fit.Radius.At)
	}
	m.add()
	if b := m.list[1]; b.From != trial.Ends || b.To != trial.Centre {
		t.Errorf("a further bend is measured as %+v", b)
	}
	m.drop()
	m.drop()
	if text, _ := m.words(); !strings.Contains(text, "No test bend yet") || m.ready() {
		t.Errorf("without bends it says %q", text)
	}
}

func TestUsingTestBends(t *testing.T) {
	for _, use := range []bool{true, false} {
		b := opened(t)
		name := b.snapshot.Plan.Tube
		before, _ := b.snapshot.Plan.FindTube(name)
		m := newTrialModel(b.snapshot, name)
		m.measureFrom(trial.Marks)
		p := b.askTrial([]string{name}, m)
		if b.asked() != "Test bends of "+name {
			t.Fatalf("the window asks %q", b.asked())
		}
		for col, text := range handBend {
			typeInto(p.table.cells[0][col], text)
		}
		button := "Keep the readings"
		if use {
			button = "Use these figures"
		}
		b.pressButton(button)
		b.settle()
		after, _ := b.snapshot.Plan.FindTube(name)
		want := before.Radius
		if use {
			want = 32.62
		}
		if len(after.TestBends) != 1 || math.Abs(after.Radius-want) > 1e-9 {
			t.Errorf("%s: %d test bends, radius %v, want %v", button, len(after.TestBends), after.Radius, want)
		}
		if use && (after.KnownFrom != route.Measured || math.Abs(after.Springback.FormTo(90)-93) > 0.02) {
			t.Errorf("used, the tube is known from %q and 90° is formed to %.2f", after.KnownFrom, after.Springback.FormTo(90))
		}
		b.undo()
		b.settle()
		if b.asked() != "" {
			t.Errorf("%s leaves %q open", button, b.asked())
		}
		if again, _ := b.snapshot.Plan.FindTube(name); again.Radius != before.Radius || len(again.TestBends) != len(before.TestBends) {
			t.Errorf("%s undone: radius %v, %d bends", button, again.Radius, len(again.TestBends))
		}
	}
}

func TestFiguresThatAreNotThereCannotBeUsed(t *testing.T) {
	b := opened(t)
	b.testBends()
	b.pressButton("Use these figures")
	if b.asked() != "There are no figures to use yet" || b.snapshot.Dirty {
		t.Errorf("the window says %q, dirty %v", b.asked(), b.snapshot.Dirty)
	}
	b.pressButton("Close")
	if b.asked() != "Test bends of "+b.snapshot.Plan.Tube {
		t.Errorf("then it shows %q", b.asked())
	}
}

func TestBendsCanBeAddedAndTakenAway(t *testing.T) {
	b := opened(t)
	m := newTrialModel(b.snapshot, b.snapshot.Plan.Tube)
	p := b.askTrial([]string{b.snapshot.Plan.Tube}, m)
	high := p.form.place.MinSize().Height
	p.change(m.add)
	if len(p.table.cells) != 2 || p.form.place.MinSize().Height <= high {
		t.Errorf("one more: %d rows, %v high after %v", len(p.table.cells), p.form.place.MinSize().Height, high)
	}
	p.table.cells[1][0].TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if b.win.Canvas().Focused() != p.table.cells[0][0] {
		t.Error("Up does not go to the row above")
	}
	p.table.cells[0][0].TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if b.asked() != "" {
		t.Errorf("Esc leaves %q open", b.asked())
	}
}

func TestDrawingOfATestBendStaysOnItsPaper(t *testing.T) {
	themed(t)
	for _, from := range []trial.From{trial.Ends, trial.Marks} {
		for _, to := range []trial.To{trial.Back, trial.Centre} {
			d := drawTrial(from, to)
			for _, it := range d.Items {
				text, ok := it.(draw.Text)
				if !ok {
					continue
				}
				if lo, hi := text.Bounds(); lo.X < 0 || lo.Y < 0 || hi.X > d.W || hi.Y > d.H {
					t.Errorf("%s to %s: %q reaches from %v to %v", from, to, text.Text, lo, hi)
				}
			}
		}
	}
}
