package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"tubewright/route"
)

// numbers is the six fields of a part: its place and its turn.
type numbers struct {
	widget.BaseWidget
	part    string
	units   route.Units
	at      [3]float64 // as typed last, mm
	turn    [3]float64
	entries [3][2]*numberEntry // by axis; place, turn
	heads   [2]*canvas.Text
	names   [3]*canvas.Text
	onSet   func(part string, at, turn [3]float64) error
	onWrong func(error)
}

func newNumbers(onSet func(string, [3]float64, [3]float64) error, onWrong func(error)) *numbers {
	n := &numbers{onSet: onSet, onWrong: onWrong}
	n.heads = [2]*canvas.Text{newLine("", smallSize, soft), newLine("turn, °", smallSize, soft)}
	for axis, name := range [...]string{"x", "y", "z"} {
		n.names[axis] = newLine(name, textSize, soft)
		for i := range 2 {
			e := newNumberEntry(func(text string) error { return n.keep(axis, i, text) }, onWrong)
			e.onStep = func(up bool) { n.step(axis, i, up) }
			n.entries[axis][i] = e
		}
	}
	n.ExtendBaseWidget(n)
	return n
}

// show puts a part's numbers into the fields. What is being typed stays when
// the part is the same.
func (n *numbers) show(part string, at, turn [3]float64, u route.Units) {
	other := n.part != part
	n.part, n.at, n.turn, n.units = part, at, turn, u
	setLine(n.heads[0], "place, "+string(u), soft)
	for axis := range 3 {
		texts := [2]string{lengthText(at[axis], u), angleText(turn[axis])}
		for i, e := range n.entries[axis] {
			if other {
				e.kept = e.Text
			}
			e.show(texts[i])
		}
	}
}

// keep gives one number to the plan.
func (n *numbers) keep(axis, i int, text string) error {
	read := func(text string) (float64, error) { return parseLength(text, n.units) }
	if i == 1 {
		read = parseAngle
	}
	value, err := read(text)
	if err != nil {
		return err
	}
	return n.set(axis, i, value)
}

func (n *numbers) set(axis, i int, value float64) error {
	at, turn := n.at, n.turn
	if i == 0 {
		at[axis] = value
	} else {
		turn[axis] = value
	}
	return n.onSet(n.part, at, turn)
}

// step is what Up and Down change a number by: a millimetre, a sixteenth of an
// inch, or 15 degrees.
func (n *numbers) step(axis, i int, up bool) {
	by, old := 1.0, n.at[axis]
	switch {
	case i == 1:
		by, old = 15, n.turn[axis]
	case n.units == route.Inches:
		by = route.Inch / 16
	}
	if !up {
		by = -by
	}
	n.onWrong(n.set(axis, i, old+by))
}

func (n *numbers) rowHeight() float32 { return n.entries[0][0].MinSize().Height }

func (n *numbers) boxes(width float32) ([2]box, [3]box, [3][2]box, float32) {
	return numbersBoxes(width, n.heads[1].MinSize().Height, n.rowHeight())
}

// HeightFor is the height of all rows.
func (n *numbers) HeightFor(width float32) float32 {
	_, _, _, height := n.boxes(width)
	return height
}

func (n *numbers) CreateRenderer() fyne.WidgetRenderer { return &numbersRenderer{n} }

type numbersRenderer struct{ *numbers }

func (r *numbersRenderer) MinSize() fyne.Size { return fyne.NewSize(120, r.HeightFor(120)) }

func (r *numbersRenderer) Layout(size fyne.Size) {
	heads, names, entries, _ := r.boxes(size.Width)
	for i := range 2 {
		heads[i].put(r.heads[i])
	}
	for axis := range 3 {
		high := r.names[axis].MinSize().Height
		names[axis].at.Y += (names[axis].size.Height - high) / 2
		names[axis].size.Height = high
		names[axis].put(r.names[axis])
		for i := range 2 {
			entries[axis][i].put(r.entries[axis][i])
		}
	}
}

func (r *numbersRenderer) Refresh() {
	for _, t := range []*canvas.Text{r.heads[0], r.heads[1], r.names[0], r.names[1], r.names[2]} {
		setLine(t, t.Text, soft)
	}
}

func (r *numbersRenderer) Objects() []fyne.CanvasObject {
	all := []fyne.CanvasObject{r.heads[0], r.heads[1]}
	for i := range 2 { // Tab goes down the places, then down the turns
		for axis := range 3 {
			if i == 0 {
				all = append(all, r.names[axis])
			}
			all = append(all, r.entries[axis][i])
		}
	}
	return all
}

func (r *numbersRenderer) Destroy() {}
