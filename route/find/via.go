package find

// viaWays offers paths whose corners are the run's via points in order, joined
// to both rays by at most one corner of their own at each end.
func (h *hunt) viaWays(start, end *build) {
	via := h.run.Via
	for _, lead := range h.leadIns(start.ray(), via[0]) {
		for _, tail := range h.leadIns(end.ray(), via[len(via)-1]) {
			corners := append(append(append([]vec{}, lead...), via...), tail...)
			h.offer(start, end, Miss{}, corners)
		}
	}
}

// leadIns lists the corners that may lead from a ray to a point: none when it
// lies ahead on the ray, else one that turns square, by half a right angle, back
// past the point, or as near to the stop as can be.
func (h *hunt) leadIns(r ray, to vec) [][]vec {
	w := to.Sub(r.at)
	if w.Dot(r.dir) > 0 && aside(w, r.dir).Len() <= onRay {
		return [][]vec{nil}
	}
	var list [][]vec
	for _, turn := range []float64{90, 45, 135, 120} {
		if s, ok := cornerFor(r, to, turn); ok {
			list = append(list, []vec{r.ahead(s)})
		}
	}
	if s := h.again(r, to); s > 0 {
		list = append(list, []vec{r.ahead(s)})
	}
	return list
}

// onRay is how far beside a ray a via point may stand and still be on it, mm:
// the hundredth to which the program promises its geometry. Plans write via
// points rounded to a tenth or so of the place they mean.
const onRay = 0.01
