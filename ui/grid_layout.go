package ui

// gridColumns shares a width among columns: each gets what it wants, and the
// first takes what is left or gives up what is missing.
func gridColumns(width, gap float32, wants []float32) []float32 {
	out := append([]float32(nil), wants...)
	if len(out) == 0 {
		return out
	}
	left := width - gap*float32(len(out)-1)
	for _, w := range out[1:] {
		left -= w
	}
	out[0] = max(0, left)
	return out
}
