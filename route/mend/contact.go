package mend

import (
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/clear"
)

// touchGap is how far apart parts may stand and still be fastened to each other,
// mm: drawings leave out washers and gaskets.
const touchGap = 0.5

// stander is a part as far as fastening goes.
type stander struct {
	name    string
	ports   int
	shapes  []clear.Shape
	lo, hi  mgl64.Vec3
	touches []int
}

// contacts is which parts of a plan touch which.
type contacts []stander

// contactsOf looks at all pairs of parts. The plan says nothing of screws, so what
// touches counts as fastened: a part without ports (a fan) to the larger part
// it touches (its radiator).
func contactsOf(plan route.Plan) contacts {
	all := contacts{}
	for _, p := range plan.PlaceAll() {
		all = append(all, standOf(p))
	}
	for i := range all {
		for j := range i {
			if all[i].meets(&all[j]) {
				all[i].touches = append(all[i].touches, j)
				all[j].touches = append(all[j].touches, i)
			}
		}
	}
	return all
}

func standOf(p route.Placed) stander {
	s := stander{name: p.Part.Name, ports: len(p.Ports), shapes: p.Solids}
	for i, shape := range p.Solids {
		lo, hi := shape.Bounds()
		if i == 0 {
			s.lo, s.hi = lo, hi
		}
		for k := range lo {
			s.lo[k], s.hi[k] = min(s.lo[k], lo[k]), max(s.hi[k], hi[k])
		}
	}
	return s
}

// meets reports whether two parts stand face to face: nearer than touchGap and
// in each other no deeper than parts may.
func (s *stander) meets(t *stander) bool {
	for k := range s.lo {
		if s.lo[k]-t.hi[k] > touchGap || t.lo[k]-s.hi[k] > touchGap {
			return false
		}
	}
	met := false
	for _, a := range s.shapes {
		for _, b := range t.shapes {
			switch gap := clear.Between(a, b).Distance; {
			case gap < -check.PartSlack:
				return false
			case gap <= touchGap:
				met = true
			}
		}
	}
	return met
}

// size is the volume of the box around a part, mm³.
func (s *stander) size() float64 {
	d := s.hi.Sub(s.lo)
	return d[0] * d[1] * d[2]
}

// carries reports whether part i has part j fastened to it.
func (c contacts) carries(i, j int) bool {
	return c[j].ports == 0 && c[j].size() < c[i].size() && slices.Contains(c[i].touches, j)
}

// with gives a part and what is fastened to it.
func (c contacts) with(name string) []string {
	names := []string{name}
	for i := range c {
		for j := range c {
			if c[i].name == name && c.carries(i, j) {
				names = append(names, c[j].name)
			}
		}
	}
	return names
}

// leans reports whether a part touches a larger one, which stays when it moves.
func (c contacts) leans(name string) bool {
	for i := range c {
		for _, j := range c[i].touches {
			if c[i].name == name && c[j].size() > c[i].size() {
				return true
			}
		}
	}
	return false
}
