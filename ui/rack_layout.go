package ui

import "fyne.io/fyne/v2"

// rackBoxes places a bar behind its name, which is wide.
func rackBoxes(size fyne.Size, wide float32) (name, bar box) {
	const gap = 8
	name = box{fyne.NewPos(0, 0), fyne.NewSize(wide, size.Height)}
	x := wide + gap
	bar = box{fyne.NewPos(x, 1), fyne.NewSize(max(0, size.Width-x), max(0, size.Height-2))}
	return name, bar
}
