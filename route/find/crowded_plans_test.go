package find_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/clear"
	"tubewright/route/find"
)

// laidTube is a tube that a crowded plan is built around: a formable path from a
// port to another, and the room it takes.
type laidTube struct {
	from, to   mgl64.Vec3 // the ports' places
	first, end mgl64.Vec3 // the ports' facings
	room       []clear.Shape
	plates     []clear.Shape // what carries the ports
}

const (
	// knownSpare is what the tubes of a crowded plan keep over the gap the plan
	// asks for, mm.
	knownSpare = 0.5
	// plateHalf is half the width of the block behind a port, mm.
	plateHalf = 14.0
)

// crowdedPlan is a case with runs known to have a solution: tubes that keep
// clear of each other are laid first, the plan's ports are put at their ends,
// and blocks are added wherever they keep clear of all tubes.
func crowdedPlan(r *rand.Rand, runs, blocks int) route.Plan {
	return crowdedIn(r, mgl64.Vec3{between(r, 280, 380), between(r, 240, 320), between(r, 180, 280)}, runs, blocks)
}

// crowdedIn is crowdedPlan in a case of a size.
func crowdedIn(r *rand.Rand, size mgl64.Vec3, runs, blocks int) route.Plan {
	plan := route.Defaults()
	plan.Name, plan.Tube = "crowded", refereeTube.Name
	plan.Tubes, plan.Fittings = []route.Tube{refereeTube}, refereeFittings
	plan.Case = size
	var tubes []laidTube
	for tries := 0; len(tubes) < runs && tries < 20000; tries++ {
		if t, ok := anyTube(r, plan); ok && t.keepsClear(tubes, plan.Clear+knownSpare) {
			tubes = append(tubes, t)
		}
	}
	for i, t := range tubes {
		plan.Parts = append(plan.Parts, plated(fmt.Sprintf("a%02d", i), t.from, t.first), plated(fmt.Sprintf("b%02d", i), t.to, t.end))
		plan.Runs = append(plan.Runs, route.Run{
			Name: fmt.Sprintf("run-%02d", i),
			From: route.PortRef{Part: fmt.Sprintf("a%02d", i), Port: "p"}, To: route.PortRef{Part: fmt.Sprintf("b%02d", i), Port: "p"},
		})
	}
	for n := range blocks {
		half := mgl64.Vec3{between(r, 5, 40), between(r, 5, 40), between(r, 5, 40)}
		at := anyPlace(r, plan.Case, 5)
		s := clear.Box{Centre: at, Axes: mgl64.Ident3(), Half: half}
		if (laidTube{room: []clear.Shape{s}}).keepsClear(tubes, plan.Clear+knownSpare) {
			plan.Parts = append(plan.Parts, route.Part{
				Name: fmt.Sprintf("block-%02d", n), At: at, Solids: []route.Solid{{Box: true, From: half.Mul(-1), To: half}},
			})
		}
	}
	return plan
}

// anyTube is a tube of up to four bends along the case's axes or, after a bend
// of 45 degrees, between them; false when it leaves the case or meets itself.
func anyTube(r *rand.Rand, plan route.Plan) (laidTube, bool) {
	t := laidTube{from: anyPlace(r, plan.Case, 30)}
	t.first[r.IntN(3)] = float64(1 - 2*r.IntN(2))
	tube := refereeTube.Tube
	at, way := t.from.Add(t.first.Mul(6)), t.first
	corners := []mgl64.Vec3{at}
	count := 1 + r.IntN(4)
	need, back := tube.StraightEnd, 0.0
	for range count {
		turn := 90.0
		if r.IntN(4) == 0 {
			turn = 45
		}
		set := bends.Setback(tube.Radius, turn)
		at = at.Add(way.Mul(need + back + set + between(r, 0.5, 110)))
		corners = append(corners, at)
		way, need, back = turnedAside(r, way, turn), tube.StraightBetween, set
	}
	at = at.Add(way.Mul(tube.StraightEnd + back + between(r, 0.5, 140)))
	corners = append(corners, at)
	t.to, t.end = at.Add(way.Mul(6)), way.Mul(-1)
	formed, err := bends.Form(tube, bends.Path{Corners: corners})
	return t, err == nil && t.dress(formed, plan)
}

// turnedAside turns a way by an angle toward a direction of the axes square to it.
func turnedAside(r *rand.Rand, way mgl64.Vec3, turn float64) mgl64.Vec3 {
	for {
		var side mgl64.Vec3
		side[r.IntN(3)] = float64(1 - 2*r.IntN(2))
		if side = side.Sub(way.Mul(side.Dot(way))); side.Len() > 0.5 {
			s, c := math.Sincos(turn * math.Pi / 180)
			return way.Mul(c).Add(side.Normalize().Mul(s))
		}
	}
}

// dress works out the room of the tube, its collars and the blocks behind its
// ports; false when they do not fit into the case or together.
func (t *laidTube) dress(f bends.Formed, plan route.Plan) bool {
	pieces := f.Pieces()
	for _, p := range pieces {
		if p.End-p.Start > 1e-6 {
			t.room = append(t.room, find.Swept(p, f.Tube.OD))
		}
	}
	for i, s := range t.room {
		for _, u := range t.room[min(i+3, len(t.room)):] {
			if clear.Between(s, u).Distance < knownSpare {
				return false
			}
		}
	}
	tube := t.room
	for _, e := range []struct{ at, way mgl64.Vec3 }{{t.from, t.first}, {t.to, t.end}} {
		collar := clear.Cylinder{From: e.at, To: e.at.Add(e.way.Mul(20)), Radius: 12}
		plate := plateOf(e.at, e.way)
		t.room, t.plates = append(t.room, collar), append(t.plates, plate)
	}
	return t.joins(tube) && t.inside(plan.Case)
}

// joins reports whether the blocks behind the ports keep out of the tube's way.
func (t *laidTube) joins(tube []clear.Shape) bool {
	last := len(tube) - 1
	for i, s := range tube {
		if i > 0 && clear.Between(s, t.plates[0]).Distance < knownSpare || i < last && clear.Between(s, t.plates[1]).Distance < knownSpare {
			return false
		}
	}
	collars := t.room[len(t.room)-2:]
	return clear.Between(collars[0], collars[1]).Distance > knownSpare &&
		clear.Between(collars[0], t.plates[1]).Distance > knownSpare && clear.Between(collars[1], t.plates[0]).Distance > knownSpare
}

func (t *laidTube) inside(size mgl64.Vec3) bool {
	for _, s := range t.room {
		lo, hi := s.Bounds()
		for i := range 3 {
			if lo[i] < knownSpare || hi[i] > size[i]-knownSpare {
				return false
			}
		}
	}
	return true
}

// keepsClear reports whether a tube and its blocks keep a gap from all others.
func (t laidTube) keepsClear(others []laidTube, gap float64) bool {
	for _, o := range others {
		for _, s := range append(t.room, t.plates...) {
			for _, u := range o.room {
				if !clear.Farther(s, u, gap) {
					return false
				}
			}
		}
		for _, s := range t.room {
			for _, u := range o.plates {
				if !clear.Farther(s, u, gap) {
					return false
				}
			}
		}
	}
	return true
}

// plateOf is the block behind a port, square to its facing.
func plateOf(at, facing mgl64.Vec3) clear.Shape {
	f := route.NewFrame(at, facing)
	return clear.Box{
		Centre: at.Sub(facing.Mul(5)), Axes: mgl64.Mat3FromCols(f.Dir, f.Ref, f.Dir.Cross(f.Ref)), Half: mgl64.Vec3{5, plateHalf, plateHalf},
	}
}

// plated is a part with one port and, where it faces along an axis, a block
// behind it.
func plated(name string, at, facing mgl64.Vec3) route.Part {
	p := route.Part{Name: name, At: at, Ports: []route.Port{{Name: "p", Facing: facing, Thread: "G1/4"}}}
	for i := range 3 {
		if math.Abs(facing[i]) > 1-1e-9 {
			from, to := mgl64.Vec3{-plateHalf, -plateHalf, -plateHalf}, mgl64.Vec3{plateHalf, plateHalf, plateHalf}
			from[i], to[i] = min(0, -10*facing[i]), max(0, -10*facing[i])
			p.Solids = []route.Solid{{Box: true, From: from, To: to}}
		}
	}
	return p
}
