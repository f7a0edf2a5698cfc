package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// cell is a field of an entry table. Enter goes on to the next field, and after
// the last to what the question does; Esc takes back what was typed, and with
// nothing typed gives the question up.
type cell struct {
	widget.Entry
	table *entryTable
	row   int
	col   int
	kept  string
}

func newCell(t *entryTable, row, col int, text string) *cell {
	c := &cell{table: t, row: row, col: col, kept: text}
	c.ExtendBaseWidget(c)
	c.Scroll, c.Wrapping = fyne.ScrollNone, fyne.TextWrapOff
	c.Text = text
	return c
}

// TypedKey moves between fields as a table does.
func (c *cell) TypedKey(k *fyne.KeyEvent) {
	t := c.table
	switch k.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		if !t.focus(c.row, c.col+1) && !t.focus(c.row+1, 0) && !t.next.focus(0, 0) && t.modal != nil {
			t.modal.key(k.Name)
		}
	case fyne.KeyEscape:
		if c.Text != c.kept {
			c.SetText(c.kept)
		} else if t.modal != nil {
			t.modal.key(k.Name)
		}
	case fyne.KeyUp:
		_ = t.focus(c.row-1, c.col) || t.before.focus(t.before.last(), c.col)
	case fyne.KeyDown:
		_ = t.focus(c.row+1, c.col) || t.next.focus(0, c.col)
	default:
		c.Entry.TypedKey(k)
	}
}

// FocusGained brings the field into view.
func (c *cell) FocusGained() {
	c.Entry.FocusGained()
	selectAll(&c.Entry)
	if c.table.onFocus != nil {
		c.table.onFocus(c)
	}
}

// FocusLost tells what was typed.
func (c *cell) FocusLost() {
	c.Entry.FocusLost()
	c.commit()
}

func (c *cell) commit() {
	if c.Text != c.kept {
		c.kept = c.Text
		c.table.onTyped(c.row, c.col, c.Text)
	}
}

// entryTable is rows of fields under common heads, each row with a name.
type entryTable struct {
	widget.BaseWidget
	modal   *modal
	heads   []*flow // the first is above the names
	names   []*flow
	cells   [][]*cell
	share   float32 // of the width that the names take
	onTyped func(row, col int, text string)
	onFocus func(*cell) // nil: nobody is told
	before  *entryTable // the table above, to which Up goes on; nil: none
	next    *entryTable // the table below, to which Enter and Down go on
}

// newEntryTable makes a table; onTyped is told each text that was changed.
func newEntryTable(share float32, heads []string, onTyped func(row, col int, text string)) *entryTable {
	t := &entryTable{share: share, onTyped: onTyped}
	for _, h := range heads {
		t.heads = append(t.heads, newFlow(h, smallSize, soft))
	}
	t.ExtendBaseWidget(t)
	return t
}

// add puts a row at the end.
func (t *entryTable) add(name string, texts ...string) {
	row := make([]*cell, len(texts))
	for i, text := range texts {
		row[i] = newCell(t, len(t.cells), i, text)
	}
	t.cells = append(t.cells, row)
	t.names = append(t.names, newFlow(name, smallSize, ink))
}

// settle tells what was typed in the field that still has the focus.
func (t *entryTable) settle() {
	for _, row := range t.cells {
		for _, c := range row {
			c.commit()
		}
	}
}

// hint shows in brackets what an empty field of the last row stands for.
func (t *entryTable) hint(texts ...string) {
	for i, text := range texts {
		t.cells[len(t.cells)-1][i].PlaceHolder = "(" + text + ")"
	}
}

// last is the number of the last row.
func (t *entryTable) last() int {
	if t == nil {
		return -1
	}
	return len(t.cells) - 1
}

// focus goes to a field, if there is one.
func (t *entryTable) focus(row, col int) bool {
	if t == nil || row < 0 || row >= len(t.cells) || col < 0 || col >= len(t.cells[row]) {
		return false
	}
	if t.modal != nil {
		t.modal.window.win.Canvas().Focus(t.cells[row][col])
	}
	return true
}

const (
	tableGap    float32 = 6 // between columns
	tableRowGap float32 = 4
)

// widths are the names' and one field's.
func (t *entryTable) widths(width float32) (name, field float32) {
	n := float32(len(t.heads) - 1)
	name = width * t.share
	return name, max(0, (width-name)/n-tableGap)
}

func (t *entryTable) headHeight(width float32) (high float32) {
	name, field := t.widths(width)
	for i, h := range t.heads {
		wide := field
		if i == 0 {
			wide = name
		}
		high = max(high, h.HeightFor(wide))
	}
	return high
}

func (t *entryTable) rowHeight() float32 {
	if len(t.cells) == 0 {
		return 0
	}
	return t.cells[0][0].MinSize().Height
}

// HeightFor is the height of heads and rows at a width.
func (t *entryTable) HeightFor(width float32) float32 {
	return t.headHeight(width) + float32(len(t.cells))*(t.rowHeight()+tableRowGap)
}

func (t *entryTable) CreateRenderer() fyne.WidgetRenderer { return &entryTableRenderer{t} }

type entryTableRenderer struct{ *entryTable }

func (r *entryTableRenderer) MinSize() fyne.Size {
	return fyne.NewSize(0, r.HeightFor(r.Size().Width))
}

func (r *entryTableRenderer) Layout(size fyne.Size) {
	name, field := r.widths(size.Width)
	head, row := r.headHeight(size.Width), r.rowHeight()
	left := func(col int) float32 { return name + tableGap + float32(col)*(field+tableGap) }
	for i, h := range r.heads {
		x, wide := float32(0), name
		if i > 0 {
			x, wide = left(i-1), field
		}
		high := h.HeightFor(wide)
		box{fyne.NewPos(x, head-high), fyne.NewSize(wide, high)}.put(h)
	}
	for i, cells := range r.cells {
		y := head + tableRowGap + float32(i)*(row+tableRowGap)
		high := r.names[i].HeightFor(name)
		box{fyne.NewPos(0, y+(row-high)/2), fyne.NewSize(name, high)}.put(r.names[i])
		for k, c := range cells {
			box{fyne.NewPos(left(k), y), fyne.NewSize(field, row)}.put(c)
		}
	}
}

func (r *entryTableRenderer) Refresh() { r.Layout(r.Size()) }

func (r *entryTableRenderer) Objects() (all []fyne.CanvasObject) {
	for _, h := range r.heads {
		all = append(all, h)
	}
	for i, cells := range r.cells {
		all = append(all, r.names[i])
		for _, c := range cells {
			all = append(all, c)
		}
	}
	return all
}

func (r *entryTableRenderer) Destroy() {}
