package ui

import "fyne.io/fyne/v2"

// titleLeast is how much of a title is always shown, in Fyne's pixels.
const titleLeast float32 = 90

// headerBoxes places the row on top: the title at the left, the buttons behind
// it, the ready line at the right, in a row of a height. When all cannot be shown the title gives up
// room first, down to titleLeast, then the ready line.
func headerBoxes(width, high float32, title, ready fyne.Size, buttons []fyne.Size) (titleBox box, buttonBoxes []box, readyBox box) {
	const gap, apart = 4, 16
	wide := float32(0)
	for _, b := range buttons {
		wide += b.Width + gap
	}
	room := width - wide - 2*apart
	titleWide := min(title.Width, max(titleLeast, room-ready.Width))
	readyWide := max(0, min(ready.Width, room-titleWide))
	middle := func(x, w, h float32) box { return box{fyne.NewPos(x, (high-h)/2), fyne.NewSize(w, h)} }
	titleBox = middle(2, titleWide, title.Height)
	x := 2 + titleWide + apart
	for _, b := range buttons {
		buttonBoxes = append(buttonBoxes, middle(x, b.Width, b.Height))
		x += b.Width + gap
	}
	return titleBox, buttonBoxes, middle(width-readyWide, readyWide, ready.Height)
}
