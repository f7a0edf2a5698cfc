package find

import "math"

// oneBend offers one bend where the lines of the two rays meet, or pass so near
// that the sockets' give takes up the rest.
func (h *hunt) oneBend(start, end *build) {
	a, b := start.ray(), end.ray()
	s, t, gap, ok := closest(a, b)
	if !ok || s <= 0 || t <= 0 {
		return
	}
	corner := a.ahead(s)
	if gap <= sameSpot {
		h.offer(start, end, Miss{}, []vec{corner})
		return
	}
	g := giveOf(start.socket(), end.socket())
	askew := math.Atan2(gap/2, min(s, t)) / perDegree
	if m, ok := g.share(gap, askew, askew); ok {
		h.offer(start, end, m, []vec{corner.Add(b.ahead(t)).Mul(0.5)})
	}
}
