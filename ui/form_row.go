package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// formRow is a value of a form: its name at the left, its field and unit at the
// right, and under them a hint, and what is wrong with what was typed.
type formRow struct {
	widget.BaseWidget
	label  *flow
	entry  *numberEntry // nil: there is something to choose
	choice *choice      // nil: there is something to type
	unit   *canvas.Text
	hint   *flow
	wrong  *flow
	long   bool   // the field stands under the label
	quiet  bool   // the choice is being set, not made
	grown  func() // told when the row has become higher or lower
}

func newFormRow(m fieldModel, keep func(string) error, onFocus, grown func()) *formRow {
	r := &formRow{
		label: newFlow(m.label, textSize, ink), unit: newLine(m.unit, smallSize, ink),
		hint: newFlow(m.hint, smallSize, soft), wrong: newFlow("", smallSize, bad), grown: grown,
	}
	if m.choices == nil {
		r.entry = newNumberEntry(keep, r.tellWrong)
		r.entry.onFocus, r.long = onFocus, m.long
		if m.words { // elsewhere it would take the wheel from the page
			r.entry.Scroll = fyne.ScrollHorizontalOnly
		}
	} else {
		r.choice = newChoice(m.choices, func(text string) {
			if !r.quiet {
				r.tellWrong(keep(text))
			}
		})
		r.choice.onFocus = onFocus
	}
	r.ExtendBaseWidget(r)
	return r
}

// suits reports whether the row can show a value.
func (r *formRow) suits(m fieldModel) bool {
	if r.label.text != m.label || r.unit.Text != m.unit || r.hint.text != m.hint {
		return false
	}
	if r.choice == nil {
		return m.choices == nil
	}
	return slices.Equal(r.choice.Options, m.choices)
}

// show puts the plan's value into the field, but not over what is being typed.
func (r *formRow) show(m fieldModel) {
	if r.entry != nil {
		r.entry.show(m.text)
		return
	}
	if r.choice.Selected != m.text {
		r.quiet = true
		r.choice.SetSelected(m.text)
		r.quiet = false
	}
}

// tellWrong says what is wrong with what was typed; nil takes it back.
func (r *formRow) tellWrong(err error) {
	text := ""
	if err != nil {
		text = sentence(err.Error()) + " The old value stays."
	}
	if r.wrong.set(text, bad) {
		r.Refresh()
		r.grown()
	}
}

func (r *formRow) field() fyne.CanvasObject {
	if r.entry != nil {
		return r.entry
	}
	return r.choice
}

// HeightFor is the height of all that stands in the row.
func (r *formRow) HeightFor(width float32) float32 {
	_, _, _, high := r.boxes(width)
	for _, f := range []*flow{r.hint, r.wrong} {
		if f.text != "" {
			high += f.HeightFor(width) + 2
		}
	}
	return high
}

// boxes places label, field and unit, and says how high they are together.
func (r *formRow) boxes(width float32) (label, field, unit box, high float32) {
	most := r.field().MinSize().Height
	if r.long {
		text := r.label.HeightFor(width)
		return box{size: fyne.NewSize(width, text)}, box{fyne.NewPos(0, text+2), fyne.NewSize(width, most)}, box{}, text + 2 + most
	}
	label, field, unit = formRowBoxes(width, most, r.unit.MinSize().Width)
	text := r.label.HeightFor(label.size.Width)
	high = max(most, text)
	label.at.Y, label.size.Height = (high-text)/2, text
	field.at.Y = (high - most) / 2
	unit.size.Height = high
	return label, field, unit, high
}

func (r *formRow) CreateRenderer() fyne.WidgetRenderer { return &formRowRenderer{r} }

type formRowRenderer struct{ *formRow }

func (r *formRowRenderer) MinSize() fyne.Size { return fyne.NewSize(0, r.HeightFor(r.Size().Width)) }

func (r *formRowRenderer) Layout(size fyne.Size) {
	label, field, unit, high := r.boxes(size.Width)
	label.put(r.label)
	field.put(r.field())
	centred(unit, r.unit)
	y := high + 2
	for _, f := range []*flow{r.hint, r.wrong} {
		h := f.HeightFor(size.Width)
		box{fyne.NewPos(0, y), fyne.NewSize(size.Width, h)}.put(f)
		if h > 0 {
			y += h + 2
		}
	}
}

func (r *formRowRenderer) Refresh() { r.Layout(r.Size()) }

func (r *formRowRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.label, r.field(), r.unit, r.hint, r.wrong}
}

func (r *formRowRenderer) Destroy() {}
