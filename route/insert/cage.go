package insert

import (
	"math"

	"tubewright/route/clear"
)

// cages are half the sides of the boxes of slides that are tried, mm.
var cages = [...]float64{1.5, 3, 6, 9, 11}

const (
	// leastPatch is half the side of the smallest patch of a cage's surface that
	// is looked at, in half sides of the cage.
	leastPatch = 1.0 / 16
	// mostPatches bounds the looks at one cage.
	mostPatches = 1500
	// unsure is how much less deep than measured two shapes may stand, mm: the
	// error of depths of package clear, with room to spare.
	unsure = 0.01
)

// wall is what holds the piece at a place outside its finished one; by is empty
// for the sockets.
type wall struct {
	depth float64 // how far the piece must move, at least, to be free of it, mm
	by    string
}

// cage is a proof that no path of slides leads out.
type cage struct {
	proven  bool
	thin    wall // the thinnest of what was met, of things that stand in the way
	sockets bool // the sockets alone hold it
}

// caged tries to prove a cage around the finished place: by the sockets alone
// first.
func (t *task) caged() cage {
	for _, h := range cages {
		if c := t.cagedIn(h, nil); c.proven {
			c.sockets = true
			return c
		}
	}
	for _, h := range cages {
		if c := t.cagedIn(h, t.nearby(h)); c.proven {
			return c
		}
	}
	return cage{}
}

// patch is a square of a cage's surface.
type patch struct {
	at   vec
	half float64
	axis int
}

func (t *task) cagedIn(h float64, near []pair) cage {
	c := cage{proven: true, thin: wall{math.Inf(1), ""}}
	var open []patch
	for axis := range 3 {
		for _, sign := range [2]float64{1, -1} {
			var at vec
			at[axis] = sign * h
			open = append(open, patch{at, h, axis})
		}
	}
	for looks := 0; len(open) > 0; looks++ {
		p := open[len(open)-1]
		open = open[:len(open)-1]
		reach := p.half * math.Sqrt2
		w := t.holds(p.at, reach, near)
		if w.depth > reach {
			c.note(w)
			continue
		}
		if w.depth <= 0 || p.half <= leastPatch*h || looks > mostPatches || t.ended() { // at 0 the place is free
			return cage{}
		}
		open = p.quarters(open)
	}
	return c
}

// note keeps the thinnest wall.
func (c *cage) note(w wall) {
	if w.by != "" && w.depth < c.thin.depth {
		c.thin = w
	}
}

func (p patch) quarters(open []patch) []patch {
	q := p
	q.half /= 2
	i, j := (p.axis+1)%3, (p.axis+2)%3
	for _, a := range [2]float64{-1, 1} {
		for _, b := range [2]float64{-1, 1} {
			q.at = p.at
			q.at[i] += a * q.half
			q.at[j] += b * q.half
			open = append(open, q)
		}
	}
	return open
}

// pair is a limb and a thing it may meet in a cage.
type pair struct{ limb, thing int }

// nearby are the pairs that can meet in a cage. Those that overlap in the
// finished place belong together, or are told by the checks.
func (t *task) nearby(h float64) (list []pair) {
	list = []pair{}
	grow := vec{h, h, h}
	for i := range t.limbs {
		l := &t.limbs[i]
		lo, hi := l.lo.Sub(grow), l.hi.Add(grow)
		for k := range t.things {
			o := &t.things[k]
			if o.body && o.end == l.end || !o.near(&lo, &hi) || clear.Between(l.shape, o.shape).Distance < -passing {
				continue
			}
			list = append(list, pair{i, k})
		}
	}
	return list
}

// holds is what keeps the piece from being within reach of a place: the first
// thing found that is deep enough, else the deepest.
func (t *task) holds(at vec, reach float64, near []pair) (best wall) {
	for e := range t.joints {
		best.depth = max(best.depth, t.jointHolds(e, at))
	}
	if near == nil {
		return best
	}
	if d := t.wallHolds(at); d > best.depth {
		best = wall{d, "the case"}
	}
	for _, p := range near {
		if best.depth > reach {
			return best
		}
		l, o := &t.limbs[p.limb], &t.things[p.thing]
		lo, hi := l.lo.Add(at), l.hi.Add(at)
		if !o.near(&lo, &hi) {
			continue
		}
		if d := -clear.Between(clear.Moved(l.shape, at), o.shape).Distance - passing - unsure; d > best.depth {
			best = wall{d, o.name}
		}
	}
	return best
}

// jointHolds is how far a place is from every place where an end may be that is
// still held: in its bore, out of it, or wholly beside it. What the sockets' give
// lets the piece tilt is allowed for: aside in full, and along the way as far as
// the other end lies aside of it.
func (t *task) jointHolds(e int, at vec) float64 {
	j := &t.joints[e]
	if !j.held {
		return 0
	}
	along, lat := at.Dot(j.way), aside(at, j.way)
	out := j.depth - along - t.slack[e]
	bore := math.Hypot(max(0, lat-j.give-t.loose), max(0, -j.back-along-t.slack[e]))
	return max(0, min(out, bore))
}

// wallHolds is how far the piece stands past a wall of the case but for the open side.
func (t *task) wallHolds(at vec) (deep float64) {
	if t.wall == (vec{}) {
		return 0
	}
	for i := range at {
		deep = max(deep, -(t.lo[i] + at[i]))
		if i < 2 {
			deep = max(deep, t.hi[i]+at[i]-t.wall[i])
		}
	}
	return deep - passing
}
