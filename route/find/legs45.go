package find

import (
	"cmp"
	"math"
	"slices"

	"tubewright/bends"
)

const (
	// jogPlaces is how many places along the way are offered for a slanting leg;
	// they cost the same and differ in what stands in their way.
	jogPlaces = 5
	// jogPlacesMore is the same for each of several slanting legs.
	jogPlacesMore = 3
	// mostSlants bounds the ideas made of one square route.
	mostSlants = 15
	// slantRoutes is how many routes of a search, the cheapest, are made into such.
	slantRoutes = 2
)

// slantsOf makes ideas with legs at 45 degrees of the cheapest square routes.
func (h *hunt) slantsOf(start, end *build, routes []found) {
	list := slices.Clone(routes)
	slices.SortStableFunc(list, func(a, b found) int { return cmp.Compare(a.cost, b.cost) })
	for _, f := range list[:min(len(list), slantRoutes)] {
		h.slants(start, end, f.corners)
	}
}

// slants makes ideas of a square route with legs at 45 degrees: where the way
// goes aside by two right angles, one slanting leg does the same with two half
// ones and less tube; and one right angle may be cut by a slanting leg. Corners
// that the plan names stay.
func (h *hunt) slants(start, end *build, corners []vec) {
	s := &slanting{hunt: h, start: start, end: end}
	i := idea{start: start, end: end, corners: corners}
	path := i.path()
	places := jogPlaces
	if s.jogs(path) > 1 {
		places = jogPlacesMore
	}
	s.slant(path, 1, places)
	for n := 1; n < len(path)-1; n++ {
		s.chamfer(path, n)
	}
}

// slanting is the making of ideas from one route.
type slanting struct {
	*hunt
	start, end *build
	made       int
}

// offerPath offers a path as an idea.
func (s *slanting) offerPath(path []vec) {
	s.made++
	s.offer(s.start, s.end, Miss{}, path[1:len(path)-1])
}

// jogs counts the places where a path goes aside and on as before.
func (s *slanting) jogs(path []vec) int {
	count := 0
	for n := 1; n+2 < len(path); n++ {
		if _, _, ok := s.jog(path, n); ok {
			count++
		}
	}
	return count
}

// slant offers every choice of slanting legs from a corner on.
func (s *slanting) slant(path []vec, from, places int) {
	for n := from; n+2 < len(path); n++ {
		lo, hi, ok := s.jog(path, n)
		if !ok {
			continue
		}
		for k := range places {
			if s.made == mostSlants {
				return
			}
			cut := s.slanted(path, n, amid(lo, hi, k, places))
			s.offerPath(cut)
			if places == jogPlacesMore {
				s.slant(cut, n+2, places)
			}
		}
	}
}

// amid is the k-th of some places between two, the middle first and then by
// turns to either side.
func amid(lo, hi float64, k, places int) float64 {
	step := float64((k+1)/2) / float64(places-1)
	if k%2 == 1 {
		step = -step
	}
	return lo + (hi-lo)*(0.5+step)
}

// jog finds how far along the way the first corner of a slanting leg may stand,
// counted from a path's corner, in place of that corner and the next; false when
// the path does not go aside there by right angles, a corner is one that the plan
// names, or there is no room for the leg.
func (s *slanting) jog(path []vec, n int) (lo, hi float64, ok bool) {
	in, before, _ := legOf(path[n-1], path[n])
	aside, over, _ := legOf(path[n], path[n+1])
	out, after, _ := legOf(path[n+1], path[n+2])
	if math.Abs(in.Dot(aside)) > square || in.Dot(out) < 1-square || s.named(path[n]) || s.named(path[n+1]) {
		return 0, 0, false
	}
	half := bends.Setback(s.tube.Radius, 45)
	if over*math.Sqrt2-2*half < s.tube.StraightBetween {
		return 0, 0, false
	}
	lo = s.needs45(path, n-1) + half - before
	hi = after - over - half - s.needs45(path, n+2)
	return lo, hi, lo <= hi
}

// needs45 is what a path keeps of the legs at one of its points beside the bend
// of another leg: its own bend and the straight between, or the end's straight.
func (s *slanting) needs45(path []vec, n int) float64 {
	if n == 0 || n == len(path)-1 {
		return s.tube.StraightEnd
	}
	in, _, _ := legOf(path[n-1], path[n])
	out, _, _ := legOf(path[n], path[n+1])
	return s.tube.StraightBetween + bends.Setback(s.tube.Radius, degreesBetween(in, out))
}

// named reports whether the plan names a corner.
func (s *slanting) named(corner vec) bool {
	return slices.ContainsFunc(s.run.Via, func(v vec) bool { return v.Sub(corner).Len() <= onRay })
}

// slanted puts a slanting leg in place of a corner and the next, its first end
// moved along the way.
func (s *slanting) slanted(path []vec, n int, by float64) []vec {
	way, _, _ := legOf(path[n-1], path[n])
	over := path[n+1].Sub(path[n]).Len()
	cut := slices.Clone(path)
	cut[n], cut[n+1] = path[n].Add(way.Mul(by)), path[n+1].Add(way.Mul(by+over))
	return cut
}

// chamfer offers one right angle cut by a slanting leg, as long as there is room
// for and half as long.
func (s *slanting) chamfer(path []vec, n int) {
	in, before, _ := legOf(path[n-1], path[n])
	out, after, _ := legOf(path[n], path[n+1])
	if math.Abs(in.Dot(out)) > square || s.named(path[n]) {
		return
	}
	half := bends.Setback(s.tube.Radius, 45)
	most := min(before-s.needs45(path, n-1), after-s.needs45(path, n+1)) - half
	least := (s.tube.StraightBetween + 2*half) / math.Sqrt2
	for _, cut := range []float64{most, (most + least) / 2} {
		if most >= least {
			s.offerPath(slices.Concat(path[:n], []vec{path[n].Sub(in.Mul(cut)), path[n].Add(out.Mul(cut))}, path[n+1:]))
		}
	}
}
