package ui

import "fyne.io/fyne/v2"

// numbersBoxes places the heads and the entries of a part's numbers: a row for
// each axis, its name at the left, place and turn beside it.
func numbersBoxes(width, head, row float32) (heads [2]box, names [3]box, entries [3][2]box, height float32) {
	const name, gap = 16, 6
	each := max(0, (width-name-2*gap)/2)
	for i := range 2 {
		x := name + gap + float32(i)*(each+gap)
		heads[i] = box{fyne.NewPos(x, 0), fyne.NewSize(each, head)}
		for axis := range 3 {
			y := head + 2 + float32(axis)*(row+4)
			names[axis] = box{fyne.NewPos(0, y), fyne.NewSize(name, row)}
			entries[axis][i] = box{fyne.NewPos(x, y), fyne.NewSize(each, row)}
		}
	}
	return heads, names, entries, head + 2 + 3*row + 2*4
}
