package find

import (
	"tubewright/route"
)

// give is what both sockets together take up.
type give struct {
	sideways [2]float64 // mm
	degrees  [2]float64
}

func giveOf(a, b *route.Fitting) give {
	return give{[2]float64{a.Give.Sideways, b.Give.Sideways}, [2]float64{a.Give.Degrees, b.Give.Degrees}}
}

// fits reports whether a straight tube can join two rays, and what the sockets
// must give. The tube may lie along either ray or along their mean; what is
// then left sideways is shared by both sockets in proportion to their give. A
// tube is never let lie askew merely to close a sideways miss.
func (g give) fits(a, b ray) (Miss, bool) {
	best, found := Miss{}, false
	for _, u := range tubeWays(a.dir, b.dir) {
		w := b.at.Sub(a.at)
		if w.Dot(u) <= 0 {
			continue
		}
		m, ok := g.share(aside(w, u).Len(), degreesBetween(u, a.dir), degreesBetween(u, b.dir.Mul(-1)))
		if ok && (!found || m.Degrees < best.Degrees-sameWay) {
			best, found = m, true
		}
	}
	return best, found
}

// tubeWays are the directions a straight tube may take between two rays.
func tubeWays(a, b vec) []vec {
	if a.Add(b).Len() <= sameWay {
		return []vec{a}
	}
	mean, ok := unit(a.Sub(b))
	if !ok {
		return nil
	}
	return []vec{mean, a, b.Mul(-1)}
}

// share splits a sideways miss between the sockets.
func (g give) share(sideways, first, second float64) (Miss, bool) {
	sum := g.sideways[0] + g.sideways[1]
	m := Miss{Degrees: max(first, second)}
	if sum > 0 {
		m.Sideways = sideways * max(g.sideways[0], g.sideways[1]) / sum
	}
	ok := sideways <= sum+sameSpot && first <= g.degrees[0]+sameWay && second <= g.degrees[1]+sameWay
	if sideways <= sameSpot {
		m.Sideways = 0
	}
	return m, ok
}

// line offers a straight tube between two chains when they stand in line.
func (h *hunt) line(start, end *build) {
	if m, ok := giveOf(start.socket(), end.socket()).fits(start.ray(), end.ray()); ok {
		h.offer(start, end, m, nil)
	}
}
