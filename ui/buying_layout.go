package ui

import "fyne.io/fyne/v2"

// buyColumns are the widths of the columns behind the item: need, on hand,
// buy, price.
var buyColumns = []float32{36, 52, 34, 58}

// buyBoxes places the cells of a line of the buying list.
func buyBoxes(width, height float32) []box {
	const gap = 6
	wants := []float32{0}
	for _, wide := range buyColumns {
		wants = append(wants, grown(wide))
	}
	widths := gridColumns(width, gap, wants)
	boxes := make([]box, len(widths))
	x := float32(0)
	for i, w := range widths {
		boxes[i] = box{fyne.NewPos(x, 0), fyne.NewSize(w, height)}
		x += w + gap
	}
	return boxes
}
