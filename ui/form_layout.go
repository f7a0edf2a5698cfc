package ui

import "fyne.io/fyne/v2"

// Shares of a row of a form.
const (
	formLabel    = 0.5 // of the width: the name
	formUnit     = 24  // a unit, at least
	formUnitGap  = 6   // between a field and its unit
	formFieldMax = 190 // a field needs no more
)

// formRowBoxes places a row of a form: the name, the field of a height, and the
// unit behind it, which is unit wide.
func formRowBoxes(width, high, unit float32) (label, field, units box) {
	const gap = 10
	left := width * formLabel
	label = box{fyne.NewPos(0, 0), fyne.NewSize(max(0, left-gap), high)}
	room := max(0, width-left)
	behind := max(unit, grown(formUnit)) + formUnitGap // the same in every row
	wide := min(grown(formFieldMax), max(0, room-behind))
	field = box{fyne.NewPos(left, 0), fyne.NewSize(wide, high)}
	units = box{fyne.NewPos(left+wide+formUnitGap, 0), fyne.NewSize(unit, high)}
	return label, field, units
}
