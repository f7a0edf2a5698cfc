package find

import "tubewright/route"

// graspOf is how far aside of a tube the fittings of a class but for its elbows
// may bring a way: extenders before an elbow, and offsets.
func (s *straightener) graspOf(c class) float64 {
	most := 0.0
	for end, elbows := range [2]int{c.first, c.last} {
		if elbows > 0 {
			lifts := s.sides[end].liftsUpTo(mostFittings - elbows)
			most += lifts[len(lifts)-1].total
		}
	}
	return most + float64(c.offsets)*s.widestOffset()
}

// widestOffset is how far aside an offset brings a way at most; one that stands
// before an elbow does so by its length too.
func (s *straightener) widestOffset() float64 {
	most := 0.0
	for _, side := range s.sides {
		for _, fit := range side.kit[route.Offset] {
			most = max(most, fit.Sideways+fit.Length)
		}
	}
	return most
}

// tooFar reports whether the ports stand farther aside of a tube's way than
// elbows of these legs and whatever else the class has can bring together.
func (s *straightener) tooFar(u vec, elbows ...*route.Fitting) bool {
	gap := s.bare[1].end().At.Sub(s.bare[0].end().At)
	reach := s.sideways + sameSpot + s.grasp
	for _, fit := range elbows {
		reach += fit.Legs[0] + fit.Legs[1]
	}
	// sockets give: the tube may lie askew of u by as much as both do together
	reach += (gap.Len() + reach) * 2 * s.degrees * perDegree
	return aside(gap, u).Len() > reach
}
