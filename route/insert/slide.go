package insert

import (
	"math"

	"tubewright/route/clear"
)

// mostLooks ends the measuring along one slide of one pair; what is not shown
// clear by then counts as blocked from there.
const mostLooks = 400

// place is where the piece is on its way out: how far from its finished place,
// and which joints it has left.
type place struct {
	at   vec
	free [2]bool
}

// blocked is what ends a slide.
type blocked struct {
	free float64 // certainly clear up to here, mm
	by   string
}

// slide measures how far the piece can certainly go one way, at most long mm.
func (t *task) slide(p place, way vec, long float64) blocked {
	b := blocked{free: long}
	for e := range t.joints {
		if limit, ok := t.jointLets(p, e, way); !ok && limit < b.free {
			b = blocked{limit, "the sockets"}
		}
	}
	b = t.wallLets(p, way, b)
	for i := range t.limbs {
		if b.free <= noise {
			return b
		}
		b = t.limbGoes(&t.limbs[i], p, way, b)
	}
	return b
}

// jointLets is how far an end still held in its joint can go.
func (t *task) jointLets(p place, e int, way vec) (limit float64, ok bool) {
	j := &t.joints[e]
	if !j.held || p.free[e] {
		return 0, true
	}
	along := way.Dot(j.way)
	gone := p.at.Dot(j.way)
	switch {
	case along > 0 && aside(way, j.way)/along*(j.depth-gone) <= j.give/2:
		return 0, true
	case along < 0 && aside(way, j.way) <= 1e-6:
		return max(0, gone+j.back), false
	}
	return 0, false
}

func aside(v, way vec) float64 { return v.Sub(way.Mul(v.Dot(way))).Len() }

// wallLets stops at the walls of the case, but for its open side.
func (t *task) wallLets(p place, way vec, b blocked) blocked {
	if t.wall == (vec{}) {
		return b
	}
	names := [3][2]string{{"the left wall", "the right wall"}, {"the floor", "the top"}, {"the far wall", ""}}
	for i := range way {
		if way[i] < 0 {
			if limit := (t.lo[i] + p.at[i] + passing) / -way[i]; limit < b.free {
				b = blocked{max(0, limit), names[i][0]}
			}
		}
		if way[i] > 0 && i < 2 {
			if limit := (t.wall[i] - t.hi[i] - p.at[i] + passing) / way[i]; limit < b.free {
				b = blocked{max(0, limit), names[i][1]}
			}
		}
	}
	return b
}

// limbGoes slides one limb past everything near its way.
func (t *task) limbGoes(l *limb, p place, way vec, b blocked) blocked {
	lo, hi := l.lo.Add(p.at), l.hi.Add(p.at)
	for i := range way {
		lo[i] += min(0, way[i]*b.free)
		hi[i] += max(0, way[i]*b.free)
	}
	for k := range t.things {
		o := &t.things[k]
		if !o.near(&lo, &hi) || t.exempt(l, o, p, way) {
			continue
		}
		if free := passes(l.slim, o.shape, p.at, way, b.free); free < b.free {
			b = blocked{free, o.name}
		}
	}
	return b
}

// exempt are pairs that belong together: an end and the body it is still in; an
// end that draws straight out of the part it is seated in.
func (t *task) exempt(l *limb, o *obstacle, p place, way vec) bool {
	if l.end < 0 || o.end != l.end {
		return false
	}
	first := p.at == (vec{}) && way.Dot(t.ways[l.end]) > 1-1e-9
	return first || o.body && !p.free[o.end]
}

// passes is how far a slim shape goes certainly past another.
func passes(a, b clear.Shape, from, way vec, long float64) float64 {
	a = clear.Moved(a, from)
	at, convex := 0.0, isConvex(a) && isConvex(b)
	for range mostLooks {
		now := clear.Moved(a, way.Mul(at))
		if !clear.Farther(now, b, touching) {
			return at
		}
		g := clear.Between(now, b)
		if at == 0 && g.Distance < faces && leavesFace(a, b, way) {
			return long
		}
		step := g.Distance
		if convex {
			slope := g.Out().Dot(way)
			if slope >= 0 {
				return long
			}
			step /= -slope
		}
		if at += step; at >= long {
			return long
		}
	}
	return at
}

// touching is how near a slim shape may come, mm: what is left is a look's noise.
const touching = 1e-3

// slim is a limb less what it may press on things in passing.
func slim(s clear.Shape) clear.Shape {
	switch s := s.(type) {
	case clear.Cylinder:
		way := s.To.Sub(s.From).Normalize().Mul(passing)
		if s.To.Sub(s.From).Len() > 3*passing {
			s.From, s.To = s.From.Add(way), s.To.Sub(way)
		}
		s.Radius -= passing
		return s
	case clear.Rod:
		s.Radius -= passing
		return s
	case clear.Arc:
		s.Radius -= passing
		return s
	}
	panic("insert: a piece is made of cylinders, rods and arcs")
}

// faces is how near two shapes must be for a plane between them to be looked for, mm.
const faces = 1

// leavesFace reports whether a plane square to an axis lies between two shapes
// that the first does not move towards: then it never meets the second.
func leavesFace(a, b clear.Shape, way vec) bool {
	for i := range 3 {
		for _, sign := range [2]float64{1, -1} {
			var u vec
			u[i] = sign
			if way.Dot(u) >= -noise && clear.Along(a, b, u) <= 0 {
				return true
			}
		}
	}
	return false
}

func isConvex(s clear.Shape) bool {
	_, arc := s.(clear.Arc)
	return !arc
}

// next is the place after a slide.
func (t *task) next(p place, way vec, long float64) place {
	p.at = p.at.Add(way.Mul(long))
	for e := range t.joints {
		j := &t.joints[e]
		p.free[e] = p.free[e] || !j.held || p.at.Dot(j.way) >= j.depth-noise
	}
	return p
}

// outAt is how far the piece must slide this way to be out; infinite when this
// way does not lead out.
func (t *task) outAt(p place, way vec) float64 {
	if t.wall != (vec{}) {
		if way[2] < 0.5 {
			return math.Inf(1)
		}
		top := t.wall[2]
		for k := range t.things {
			top = max(top, t.things[k].hi[2])
		}
		return max(0, (top-t.lo[2]-p.at[2])/way[2]) + 1
	}
	best := math.Inf(1)
	for i := range way {
		for k, far := 0, 0.0; ; k++ {
			if k == len(t.things) {
				if math.Abs(way[i]) > 0.5 {
					best = min(best, max(0, far)/math.Abs(way[i])+1)
				}
				break
			}
			if way[i] > 0 {
				far = max(far, t.things[k].hi[i]-t.lo[i]-p.at[i])
			} else {
				far = max(far, t.hi[i]+p.at[i]-t.things[k].lo[i])
			}
		}
	}
	return best
}
