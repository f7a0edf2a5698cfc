package ui

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
)

// within reports whether one box lies in another.
func within(in, out box) bool {
	return in.at.X >= out.at.X && in.at.Y >= out.at.Y &&
		in.at.X+in.size.Width <= out.at.X+out.size.Width+0.01 && in.at.Y+in.size.Height <= out.at.Y+out.size.Height+0.01
}

// apart reports whether two boxes share no room.
func apart(a, b box) bool {
	return a.at.X+a.size.Width <= b.at.X || b.at.X+b.size.Width <= a.at.X ||
		a.at.Y+a.size.Height <= b.at.Y || b.at.Y+b.size.Height <= a.at.Y
}

func TestTheWindowIsSharedWithoutOverlap(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 800, Height: 560}, {Width: 1024, Height: 700}, {Width: 1280, Height: 800}, {Width: 1920, Height: 1080}, {Width: 3840, Height: 2160}} {
		for _, wants := range [][2]float32{{0, 0}, {120, 90}, {2000, 3000}} {
			f := frameOf(size, wants[0], wants[1])
			whole := box{fyne.NewPos(0, 0), size}
			all := []box{f.header, f.parts, f.details, f.board, f.status, f.runs, f.findings, f.rack, f.buying}
			for i, b := range all {
				if !within(b, whole) || b.size.Width < 60 || b.size.Height < 20 {
					t.Errorf("%v wanting %v: box %d is %v, outside or too small", size, wants, i, b)
				}
				for j := range i {
					if !apart(b, all[j]) {
						t.Errorf("%v wanting %v: boxes %d and %d overlap: %v, %v", size, wants, j, i, all[j], b)
					}
				}
			}
			if f.board.size.Width < size.Width*0.35 {
				t.Errorf("%v: the board is only %v wide", size, f.board.size.Width)
			}
		}
	}
}

func TestColumnBoxes(t *testing.T) {
	for _, row := range []struct {
		name              string
		width, inset, gap float32
		heights, tops     []float32
		wide, height      float32
	}{
		{name: "nothing", width: 100, inset: 5, gap: 3, height: 10},
		{name: "one", width: 100, inset: 5, gap: 3, heights: []float32{20}, tops: []float32{5}, wide: 90, height: 30},
		{name: "two", width: 100, inset: 5, gap: 3, heights: []float32{20, 10}, tops: []float32{5, 28}, wide: 90, height: 43},
		{name: "an empty one between takes no gap", width: 100, gap: 3, heights: []float32{20, 0, 10}, tops: []float32{0, 20, 23}, wide: 100, height: 33},
		{name: "narrower than its insets", width: 4, inset: 5, heights: []float32{7}, tops: []float32{5}, wide: 0, height: 17},
	} {
		boxes, height := columnBoxes(row.width, row.inset, row.gap, row.heights)
		if height != row.height || len(boxes) != len(row.tops) {
			t.Errorf("%s: %d boxes, height %v; want %d, %v", row.name, len(boxes), height, len(row.tops), row.height)
			continue
		}
		for i, b := range boxes {
			if b.at != fyne.NewPos(row.inset, row.tops[i]) || b.size != fyne.NewSize(row.wide, row.heights[i]) {
				t.Errorf("%s: box %d is %v, want at y %v and %v wide", row.name, i, b, row.tops[i], row.wide)
			}
		}
	}
}

func TestGridColumns(t *testing.T) {
	for _, row := range []struct {
		width, gap  float32
		wants, want []float32
	}{
		{100, 5, nil, []float32{}},
		{100, 5, []float32{10}, []float32{100}},
		{100, 5, []float32{10, 20, 30}, []float32{40, 20, 30}},
		{40, 5, []float32{10, 20, 30}, []float32{0, 20, 30}},
	} {
		if got := gridColumns(row.width, row.gap, row.wants); !slices.Equal(got, row.want) {
			t.Errorf("gridColumns(%v, %v, %v) = %v, want %v", row.width, row.gap, row.wants, got, row.want)
		}
	}
}

func TestHeaderGivesUpTheTitleFirst(t *testing.T) {
	title, ready := fyne.NewSize(200, 20), fyne.NewSize(300, 24)
	buttons := []fyne.Size{{Width: 80, Height: 28}, {Width: 80, Height: 28}}
	for _, row := range []struct{ width, title, ready float32 }{
		{1000, 200, 300},
		{600, 100, 300},
		{550, 90, 260},
		{200, 90, 0},
	} {
		got, boxes, right := headerBoxes(row.width, headerHigh, title, ready, buttons)
		if got.size.Width != row.title || right.size.Width != row.ready {
			t.Errorf("%v wide: title %v, ready line %v; want %v, %v", row.width, got.size.Width, right.size.Width, row.title, row.ready)
		}
		if !apart(got, boxes[0]) || !apart(boxes[0], boxes[1]) || (row.width >= 500 && !apart(boxes[1], right)) {
			t.Errorf("%v wide: %v %v %v overlap", row.width, got, boxes, right)
		}
	}
}

func TestCardHead(t *testing.T) {
	for _, width := range []float32{0, 60, 250, 400} {
		name, figure, unit := cardHeadBoxes(width, fyne.NewSize(70, 30), fyne.NewSize(20, 16))
		if unit.at.X+unit.size.Width != width || figure.at.X+figure.size.Width+4 != unit.at.X {
			t.Errorf("%v wide: figure %v and unit %v do not end at the right", width, figure, unit)
		}
		if name.size.Width < 0 || (width > 200 && !apart(name, figure)) {
			t.Errorf("%v wide: name %v, figure %v", width, name, figure)
		}
	}
}

func TestNumbersBoxes(t *testing.T) {
	_, names, entries, height := numbersBoxes(200, 16, 28)
	for axis := range 3 {
		if !apart(names[axis], entries[axis][0]) || !apart(entries[axis][0], entries[axis][1]) {
			t.Errorf("row %d overlaps: %v %v", axis, names[axis], entries[axis])
		}
		if end := entries[axis][1].at.X + entries[axis][1].size.Width; end != 200 {
			t.Errorf("row %d ends at %v, want 200", axis, end)
		}
	}
	if last := entries[2][0]; last.at.Y+last.size.Height != height {
		t.Errorf("the height is %v, the last row ends at %v", height, last.at.Y+last.size.Height)
	}
	if _, _, entries, _ := numbersBoxes(0, 16, 28); entries[0][0].size.Width != 0 {
		t.Error("without width an entry has some")
	}
}

func TestBuyAndRackBoxes(t *testing.T) {
	boxes := buyBoxes(400, 28)
	if len(boxes) != 5 || boxes[4].at.X+boxes[4].size.Width != 400 {
		t.Errorf("a line of 400 is %v", boxes)
	}
	for i := 1; i < 5; i++ {
		if !apart(boxes[i-1], boxes[i]) {
			t.Errorf("cells %d and %d overlap: %v", i-1, i, boxes)
		}
	}
	name, bar := rackBoxes(fyne.NewSize(300, 26), 50)
	if !apart(name, bar) || bar.at.X+bar.size.Width != 300 {
		t.Errorf("name %v, bar %v", name, bar)
	}
	if _, bar := rackBoxes(fyne.NewSize(20, 26), 50); bar.size.Width != 0 {
		t.Errorf("a narrow bar is %v wide", bar.size.Width)
	}
}
