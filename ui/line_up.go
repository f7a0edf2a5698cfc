package ui

// linedUp is where one of several things side by side stands.
type linedUp struct {
	row int
	x   float32
}

// lineUp puts things of some widths side by side, and under one another where a
// width has no room for the next. A thing wider than that has a row of its own.
func lineUp(wides []float32, width, gap float32) (places []linedUp, rows int) {
	x := float32(0)
	for i, wide := range wides {
		if i > 0 && x+wide > width {
			rows, x = rows+1, 0
		}
		places = append(places, linedUp{rows, x})
		x += wide + gap
	}
	if len(wides) > 0 {
		rows++
	}
	return places, rows
}

// endAt moves places to the right, so that each row ends at a width.
func endAt(places []linedUp, wides []float32, width float32) []linedUp {
	ends := map[int]float32{}
	for i, p := range places {
		ends[p.row] = max(ends[p.row], p.x+wides[i])
	}
	for i := range places {
		places[i].x += width - ends[places[i].row]
	}
	return places
}
