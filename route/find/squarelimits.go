package find

// mostDeveloped is the longest tube between two chains, stop to stop, whose
// blank the longest bar holds, mm; 0 when lengths are open.
func (h *hunt) mostDeveloped(start, end *build) float64 {
	if h.longest == 0 {
		return 0
	}
	none := h.tooLong(shape{turns: []float64{90}}, start, end)
	return max(sameSpot, -none)
}
