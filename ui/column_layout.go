package ui

import "fyne.io/fyne/v2"

// columnBoxes puts things of these heights under one another, inset from the
// sides, with a gap between those that have a height. It gives a box for each
// and the height of the whole.
func columnBoxes(width, inset, gap float32, heights []float32) (boxes []box, height float32) {
	boxes = make([]box, len(heights))
	y := inset
	wide := max(0, width-2*inset)
	any := false
	for i, h := range heights {
		if h > 0 && any {
			y += gap
		}
		boxes[i] = box{fyne.NewPos(inset, y), fyne.NewSize(wide, h)}
		y += h
		any = any || h > 0
	}
	return boxes, y + inset
}

// box is a place and a size.
type box struct {
	at   fyne.Position
	size fyne.Size
}

func (b box) put(o fyne.CanvasObject) {
	o.Move(b.at)
	o.Resize(b.size)
}
