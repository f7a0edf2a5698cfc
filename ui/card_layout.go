package ui

import "fyne.io/fyne/v2"

// cardHeadBoxes places the first line of a card: the badge at the left, the
// cut length and its unit at the right on one baseline, the name between.
func cardHeadBoxes(width float32, figure, unit fyne.Size) (name, figures, units box) {
	high := max(figure.Height, grown(badgeSize))
	unitX := width - unit.Width
	figureX := unitX - figure.Width
	if unit.Width > 0 {
		figureX -= 4
	}
	figures = box{fyne.NewPos(figureX, (high-figure.Height)/2), figure}
	// The descents of the two sizes differ by about a fifth of their heights' difference.
	lift := (figure.Height - unit.Height) * 0.78
	units = box{fyne.NewPos(unitX, (high-figure.Height)/2+lift), unit}
	left := grown(badgeSize) + 8
	name = box{fyne.NewPos(left, 0), fyne.NewSize(max(0, figureX-8-left), high)}
	return name, figures, units
}
