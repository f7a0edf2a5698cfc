package ui

import (
	"maps"
	"slices"

	"fyne.io/fyne/v2"
)

// fieldModel is one value of a form.
type fieldModel struct {
	id      string // unlike any other of the form
	label   string
	unit    string   // behind the field
	text    string   // what the plan has
	hint    string   // small, under the field
	choices []string // the words to choose from; nil: what is typed is taken
	words   bool     // a text, which may be longer than its field and then scrolls
	long    bool     // and has a row of its own under its label
	keep    func(text string) error
}

// formGroup is fields under a heading.
type formGroup struct {
	title  string // "": none
	note   string // under the heading
	fields []fieldModel

	buttons []button // under the fields
}

// alike reports whether two groups have the same rows, whatever stands in them.
func alike(a, b []formGroup) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].title != b[i].title || a[i].note != b[i].note || len(a[i].buttons) != len(b[i].buttons) || len(a[i].fields) != len(b[i].fields) {
			return false
		}
		for k := range a[i].fields {
			x, y := a[i].fields[k], b[i].fields[k]
			if x.id != y.id || x.label != y.label || x.unit != y.unit || x.hint != y.hint || !equalWords(x.choices, y.choices) {
				return false
			}
		}
	}
	return true
}

func equalWords(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// form is rows of values, each kept as soon as it has been typed.
type form struct {
	*column
	groups []formGroup
	rows   map[string]*formRow
	dark   bool
	// onFocus is told when a field gets the focus; nil: nobody is.
	onFocus func(id string)
	// grown is told when a row has become higher or lower; nil: nobody is.
	grown func()
	// reveal brings what has the focus into view; nil: nothing has to.
	reveal func(fyne.CanvasObject)
}

func newForm() *form { return &form{column: newColumn(0, 10), rows: map[string]*formRow{}} }

// show brings the form up to its values and reports whether its rows are others
// than before.
func (f *form) show(groups []formGroup) bool {
	same := alike(groups, f.groups) && f.dark == isDark() && len(f.rows) > 0
	if f.dark != isDark() {
		clear(f.rows) // they are of the other colours
	}
	f.groups, f.dark = groups, isDark()
	if !same {
		f.refill()
	}
	for _, g := range groups {
		for _, m := range g.fields {
			f.rows[m.id].show(m)
		}
	}
	return !same
}

// refill makes the rows anew. The focus stays; from a button that brought new
// fields it goes to the first of them.
func (f *form) refill() {
	c, old := canvasOf(f), maps.Clone(f.rows)
	pressed := false
	if c != nil {
		_, pressed = c.Focused().(*press)
		pressed = pressed && slices.Contains(focusablesIn(f.column), c.Focused())
	}
	keepFocus(c, f.column, f.fill, func() {})
	if !pressed {
		return
	}
	for _, g := range f.groups {
		for _, m := range g.fields {
			if old[m.id] == nil {
				c.Focus(f.rows[m.id].field().(fyne.Focusable))
				return
			}
		}
	}
}

func (f *form) fill() {
	old := f.rows
	f.rows = map[string]*formRow{}
	var objects []fyne.CanvasObject
	for _, g := range f.groups {
		group := newColumn(0, 4)
		if g.title != "" {
			group.items = append(group.items, newHeading(g.title))
		}
		if g.note != "" {
			group.items = append(group.items, newFlow(g.note, smallSize, soft))
		}
		for _, m := range g.fields {
			f.rows[m.id] = f.row(old[m.id], m)
			group.items = append(group.items, f.rows[m.id])
		}
		if len(g.buttons) > 0 {
			row := newButtonRow(f.live(g)...)
			for _, p := range row.presses {
				p.onFocus = func() { f.bring(p) }
			}
			group.items = append(group.items, row)
		}
		objects = append(objects, group)
	}
	f.set(objects...)
}

// row is the row of a value: the one it had, where that can show it. So Tab, which
// keeps what was typed on its way, finds the next field even where that made rows.
func (f *form) row(old *formRow, m fieldModel) *formRow {
	if old != nil && old.suits(m) {
		return old
	}
	return newFormRow(m, func(text string) error { return f.keep(m.id, text) }, func() { f.focused(m.id) }, f.grew)
}

// live are the buttons of a group, which act as those of the newest values do.
func (f *form) live(g formGroup) []button {
	out := make([]button, len(g.buttons))
	for i, b := range g.buttons {
		out[i] = button{text: b.text, act: func() {
			for _, now := range f.groups {
				if now.title == g.title && i < len(now.buttons) && now.buttons[i].text == b.text {
					now.buttons[i].act()
					return
				}
			}
		}}
	}
	return out
}

// keep gives what was typed to whoever the field is of now.
func (f *form) keep(id, text string) error {
	for _, g := range f.groups {
		for _, m := range g.fields {
			if m.id == id {
				return m.keep(text)
			}
		}
	}
	return nil
}

func (f *form) focused(id string) {
	if row := f.rows[id]; row != nil {
		f.bring(row)
	}
	if f.onFocus != nil {
		f.onFocus(id)
	}
}

// bring brings something into view.
func (f *form) bring(o fyne.CanvasObject) {
	if f.reveal != nil {
		f.reveal(o)
	}
}

func (f *form) grew() {
	if f.grown != nil {
		f.grown()
	}
}
