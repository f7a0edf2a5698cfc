package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tubewright/route"
)

// typeIn gives a field of a form the focus, types and leaves it.
func (b *bench) typeIn(f *form, id, text string) {
	b.t.Helper()
	row := f.rows[id]
	if row == nil {
		b.t.Fatalf("the form has no field %q", id)
	}
	if row.choice != nil {
		row.choice.SetSelected(text)
		b.settle()
		return
	}
	row.entry.FocusGained()
	row.entry.SetText(text)
	row.entry.FocusLost()
	b.settle()
}

func TestAFormKeepsWhatIsTyped(t *testing.T) {
	themed(t)
	kept, grown := "", 0
	f := newForm()
	f.grown = func() { grown++ }
	model := func(text string) []formGroup {
		return []formGroup{{title: "Saw", fields: []fieldModel{
			{id: "kerf", label: "Kerf", unit: "mm", text: text, keep: func(s string) error {
				if s == "wide" {
					return &NumberError{s, "that is not a number", "Type one."}
				}
				kept = s
				return nil
			}},
		}, buttons: []button{{text: "Add", act: func() { kept = "added to " + text }}}}}
	}
	if !f.show(model("1")) || f.show(model("1.5")) {
		t.Error("rows are made anew for another value, or were not made at first")
	}
	e := f.rows["kerf"].entry
	if e.Text != "1.5" {
		t.Fatalf("the field shows %q", e.Text)
	}
	e.SetText("wide")
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if kept != "" || e.Text != "1.5" || !strings.Contains(f.rows["kerf"].wrong.text, "The old value stays.") || grown != 1 {
		t.Errorf("a wrong text: kept %q, shown %q, told %q, grown %d", kept, e.Text, f.rows["kerf"].wrong.text, grown)
	}
	e.SetText("2")
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if kept != "2" || f.rows["kerf"].wrong.text != "" {
		t.Errorf("kept %q, still told %q", kept, f.rows["kerf"].wrong.text)
	}
	live := f.live(f.groups[0])
	f.show(model("3"))
	live[0].act()
	if kept != "added to 3" {
		t.Errorf("the button acts on %q, want on the newest values", kept)
	}
}

func TestFieldsOfEveryKind(t *testing.T) {
	p := route.Defaults()
	p.Units = route.Inches
	var names []string
	e := editor{plan: p, units: route.Inches, put: func(name string, change func(*route.Plan)) error {
		names = append(names, name)
		change(&p)
		return nil
	}}
	clear := e.length("clear", "Clearance", "", func(p *route.Plan) *float64 { return &p.Clear })
	if clear.text != "0.1575" || clear.unit != "in" {
		t.Errorf("4 mm is shown as %s %s", clear.text, clear.unit)
	}
	for _, row := range []struct {
		m    fieldModel
		text string
		ok   bool
		got  func() any
		want any
	}{
		{clear, "1/2 in", true, func() any { return p.Clear }, 12.7},
		{clear, "5 mm", true, func() any { return p.Clear }, 5.0},
		{clear, "wide", false, func() any { return p.Clear }, 5.0},
		{e.number("b", "A bend", "mm", "", func(p *route.Plan) *float64 { return &p.Weigh.Bend }), "40+20,5 mm", true, func() any { return p.Weigh.Bend }, 60.5},
		{e.number("t", "Turn", "°", "", func(p *route.Plan) *float64 { return &p.Errors.Turn }), "2°", true, func() any { return p.Errors.Turn }, 2.0},
		{e.whole("n", "Machines", "", func(p *route.Plan) *int { return &p.Build }), " 3 ", true, func() any { return p.Build }, 3},
		{e.whole("n", "Machines", "", func(p *route.Plan) *int { return &p.Build }), "2.5", false, func() any { return p.Build }, 3},
		{e.whole("n", "Machines", "", func(p *route.Plan) *int { return &p.Build }), "", true, func() any { return p.Build }, 0},
		{e.word("w", "Name", "", func(p *route.Plan) *string { return &p.Name }), " desk ", true, func() any { return p.Name }, "desk"},
		{pick(e, "u", "Units", "", []string{"mm", "inches"}, []route.Units{route.Millimetres, route.Inches}, func(p *route.Plan) *route.Units { return &p.Units }), "mm", true, func() any { return p.Units }, route.Millimetres},
	} {
		err := row.m.keep(row.text)
		if (err == nil) != row.ok || row.got() != row.want {
			t.Errorf("%s: %q gives %v (%v), want %v", row.m.label, row.text, row.got(), err, row.want)
		}
	}
	if names[0] != "Set clearance" {
		t.Errorf("the edit is called %q", names[0])
	}
}

func TestFormRowBoxes(t *testing.T) {
	for _, width := range []float32{150, 260, 400, 900} {
		for _, unit := range []float32{0, 20, 40} {
			label, field, units := formRowBoxes(width, 28, unit)
			whole := box{size: fyne.NewSize(width, 28)}
			if !within(label, whole) || !within(field, whole) || (unit > 0 && !within(units, whole)) || !apart(label, field) || (unit > 0 && !apart(field, units)) {
				t.Errorf("width %v, unit %v: %v, %v, %v", width, unit, label, field, units)
			}
		}
	}
}

func TestMarkupOfARowOfAForm(t *testing.T) {
	themed(t)
	f := newForm()
	f.show([]formGroup{{title: "Saw", note: "What cutting costs.", fields: []fieldModel{
		{id: "kerf", label: "Kerf", unit: "mm", text: "1.4", hint: "Lost per cut."},
		{id: "sides", label: "Fans on the side", text: "near", choices: []string{"near", "far"}},
	}, buttons: []button{{text: "Add a bar"}}}})
	looksLike(t, "form", f.column, fyne.NewSize(320, f.HeightFor(320)))
}

func TestAPageFollowsThePlanAndTakesUndo(t *testing.T) {
	b := opened(t)
	b.askSettings()
	m := b.modals[0]
	if m.page == nil || b.asked() != "Plan and workshop" {
		t.Fatalf("asked is %q", b.asked())
	}
	left := b.formOf(0)
	b.typeIn(left, "clear", "6")
	if b.snapshot.Plan.Clear != 6 || left.rows["clear"].entry.Text != "6" {
		t.Errorf("clearance %v, shown %q", b.snapshot.Plan.Clear, left.rows["clear"].entry.Text)
	}
	b.typeIn(left, "clear", "-1")
	if b.snapshot.Plan.Clear != 6 || left.rows["clear"].wrong.text == "" {
		t.Errorf("a clearance of −1 gives %v, told %q", b.snapshot.Plan.Clear, left.rows["clear"].wrong.text)
	}
	b.actingOnPages(b.undo)()
	if b.snapshot.Plan.Clear != 4 || left.rows["clear"].entry.Text != "4" {
		t.Errorf("undone: clearance %v, shown %q", b.snapshot.Plan.Clear, left.rows["clear"].entry.Text)
	}
	right := b.formOf(1)
	b.typeIn(right, "stock.0.most", "2")
	b.typeIn(right, "offcuts.petg-16-12", "310; 22,5 cm")
	if k := b.snapshot.Plan; k.Stock[0].Most != 2 || len(k.Offcuts) != 1 || k.Offcuts[0].Lengths[1] != 225 {
		t.Errorf("stock %+v, offcuts %+v", k.Stock, k.Offcuts)
	}
	b.typeIn(right, "offcuts.petg-16-12", "")
	if len(b.snapshot.Plan.Offcuts) != 0 {
		t.Errorf("offcuts that are none: %+v", b.snapshot.Plan.Offcuts)
	}
	for _, g := range right.groups {
		for _, k := range g.buttons {
			if k.text == "Add a bar to buy" {
				k.act()
			}
		}
	}
	b.settle()
	if n := len(b.snapshot.Plan.Stock); n != 2 || right.rows["stock.1.length"] == nil {
		t.Errorf("a bar more gives %d", n)
	}
	right.groups[1].buttons[0].act()
	b.settle()
	if k := b.snapshot.Plan.Stock; len(k) != 1 || right.rows["stock.1.length"] != nil {
		t.Errorf("a bar less gives %+v", k)
	}
	b.press(fyne.KeyEscape)
	if b.asked() != "" {
		t.Error("Esc does not close the page")
	}
}

// formOf finds the left (0) or right (1) form of the page that is open.
func (b *bench) formOf(side int) *form {
	b.t.Helper()
	if n := len(b.modals); n == 0 || b.modals[n-1].page == nil {
		b.t.Fatal("no page is open")
	}
	return b.modals[len(b.modals)-1].page.forms[side]
}

func TestLengthsInARow(t *testing.T) {
	for text, want := range map[string]int{"": 0, "600": 1, "600; 225.5 ;170": 3, "600 225,5 170": 3, "1 1/2 in; 3 cm": 2, "600;;": 1} {
		if got, err := parseLengths(text, route.Millimetres); err != nil || len(got) != want {
			t.Errorf("%q gives %v (%v), want %d", text, got, err, want)
		}
	}
	for _, text := range []string{"long", "600; 0", "-5"} {
		if got, err := parseLengths(text, route.Millimetres); err == nil {
			t.Errorf("%q gives %v, want an error", text, got)
		}
	}
	test.NewTempApp(t)
}
