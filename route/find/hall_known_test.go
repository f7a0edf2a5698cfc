package find_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/clear"
)

// hallKnown is a hall whose runs are known to go together: tubes from its left to
// its right wall that jog up or down and to or fro are laid first, its ports stand
// at their ends, and blocks are added where they keep clear of all tubes.
func hallKnown(seed uint64, runs, parts int, size mgl64.Vec3) route.Plan {
	r := rand.New(rand.NewPCG(seed, 16))
	plan := route.Defaults()
	plan.Name, plan.Tube, plan.Case = "hall known", refereeTube.Name, size
	plan.Tubes, plan.Fittings = []route.Tube{refereeTube}, refereeFittings
	var tubes []laidTube
	for tries := 0; len(tubes) < runs && tries < mostHallTries; tries++ {
		if t, ok := hallTube(r, plan); ok && t.mayKeepClear(tubes, plan.Clear+knownSpare) && t.keepsClear(tubes, plan.Clear+knownSpare) {
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
	for tries := 0; len(plan.Parts) < parts && tries < 200000; tries++ {
		half := mgl64.Vec3{between(r, 3, 20), between(r, 3, 20), between(r, 3, 20)}
		at := mgl64.Vec3{between(r, 110, size[0]-110), between(r, 20, size[1]-20), between(r, 20, size[2]-20)}
		s := clear.Box{Centre: at, Axes: mgl64.Ident3(), Half: half}
		if (laidTube{room: []clear.Shape{s}}).keepsClear(tubes, plan.Clear+knownSpare) {
			plan.Parts = append(plan.Parts, route.Part{
				Name: fmt.Sprintf("block-%03d", len(plan.Parts)), At: at, Solids: []route.Solid{{Box: true, From: half.Mul(-1), To: half}},
			})
		}
	}
	return plan
}

// mostHallTries bounds the tubes that are tried for a hall.
const mostHallTries = 60000

// mayKeepClear is keepsClear of the straights by their bounds alone, which along
// the axes are the straights but for their roundness.
func (t laidTube) mayKeepClear(others []laidTube, gap float64) bool {
	const round = 0.3 * 8 // what the corners of the bounds of a tube stick out, mm
	var lo, hi []mgl64.Vec3
	for i := 0; i < len(t.room); i += 2 {
		l, h := t.room[i].Bounds()
		lo, hi = append(lo, l), append(hi, h)
	}
	for _, o := range others {
		for k := 0; k < len(o.room); k += 2 {
			l, h := o.room[k].Bounds()
			for i := range lo {
				if near := gap - 2*round; l.Sub(hi[i])[0] < near && l.Sub(hi[i])[1] < near && l.Sub(hi[i])[2] < near &&
					lo[i].Sub(h)[0] < near && lo[i].Sub(h)[1] < near && lo[i].Sub(h)[2] < near {
					return false
				}
			}
		}
	}
	return true
}

// hallTube is a tube from a place on the left wall of a hall to its right wall: at
// two places along it it jogs across, one of the jogs along y and one along z.
func hallTube(r *rand.Rand, plan route.Plan) (laidTube, bool) {
	size, tube := plan.Case, refereeTube.Tube
	t := laidTube{from: mgl64.Vec3{25, between(r, 16, size[1]-16), between(r, 16, size[2]-16)}, first: mgl64.Vec3{1, 0, 0}, end: mgl64.Vec3{-1, 0, 0}}
	least := 2*tube.Radius + tube.StraightBetween
	x := []float64{between(r, 110, size[0]/2-60), between(r, size[0]/2+60, size[0]-110)}
	axis := 1 + r.IntN(2)
	at := t.from.Add(t.first.Mul(6))
	corners := []mgl64.Vec3{at}
	for n, x := range x {
		way := axis
		if n == 1 {
			way = 3 - axis
		}
		at[0] = x
		corners = append(corners, at)
		room := [2]float64{at[way] - 16 - least, size[way] - 16 - least - at[way]}
		side := r.IntN(2)
		if room[side] < 0 {
			side = 1 - side
		}
		at[way] += float64(2*side-1) * (least + max(0, room[side])*r.Float64())
		corners = append(corners, at)
	}
	at[0] = size[0] - 31
	corners = append(corners, at)
	t.to = at.Add(mgl64.Vec3{6, 0, 0})
	formed, err := bends.Form(tube, bends.Path{Corners: corners})
	return t, err == nil && t.dress(formed, plan)
}

// TestHallKnown: a hall whose runs are known to go together is solved, as the
// referee sees it.
func TestHallKnown(t *testing.T) {
	for seed := range uint64(2) {
		plan := hallKnown(seed, 10, 40, mgl64.Vec3{800, 320, 280})
		sol := solved(t, plan)
		if len(plan.Runs) < 10 || len(plan.Parts) < 40 {
			t.Errorf("seed %d: only %d runs, %d parts", seed, len(plan.Runs), len(plan.Parts))
		}
		if why := conflicts(plan, sol); why != "" {
			t.Errorf("seed %d: %s", seed, why)
		}
	}
}
