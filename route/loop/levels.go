package loop

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/clear"
	"tubewright/route/find"
)

// Reach is how far from the lowest or highest place of a loop an opening may be
// and still drain or vent it, mm: about two port spacings, what tilting the
// machine by hand makes good (common practice).
const Reach = 30

// Level is an end of a loop's height: its lowest or highest place and the
// opening nearest in height.
type Level struct {
	At      mgl64.Vec3 // on a tube's centreline or at a port in use
	Where   string     // "pump.out" or the run's name
	Opening string     // "res.fill", or "the ball-valve on pump.out"; empty: there is none
	Off     float64    // from the place to the opening, mm up or down; 0 or less: the opening lies beyond
}

// Served reports whether the loop can be opened at this level.
func (l Level) Served() bool { return l.Opening != "" && l.Off <= Reach }

// Levels gives the lowest and the highest place of a loop, the first of places
// equally high: of runs in the loop's order, ports before tubes. Openings are ports
// that no run uses, tees and valves. Runs without a way count with their ports.
func Levels(plan route.Plan, sol find.Solution, l Loop) (low, high Level) {
	low, high = Level{At: mgl64.Vec3{0, math.Inf(1), 0}}, Level{At: mgl64.Vec3{0, math.Inf(-1), 0}}
	see := func(at mgl64.Vec3, where string) {
		if at[1] < low.At[1]-sameHeight {
			low = Level{At: at, Where: where}
		}
		if at[1] > high.At[1]+sameHeight {
			high = Level{At: at, Where: where}
		}
	}
	for _, name := range l.Runs {
		seeRun(plan, sol, name, see)
	}
	for _, o := range openings(plan, sol, l) {
		low.offer(o, o.at[1]-low.At[1])
		high.offer(o, high.At[1]-o.at[1])
	}
	return low, high
}

// seeRun shows the ports of a run and the lowest and highest places of its tube.
func seeRun(plan route.Plan, sol find.Solution, name string, see func(mgl64.Vec3, string)) {
	run, _ := plan.FindRun(name)
	for _, ref := range []route.PortRef{run.From, run.To} {
		if p, ok := plan.FindPort(ref); ok {
			see(p.Frame.At, ref.String())
		}
	}
	if way, ok := wayOf(sol, name); ok {
		for _, piece := range way.Formed.Pieces() {
			seePiece(piece, name, see)
		}
	}
}

func seePiece(p bends.Piece, name string, see func(mgl64.Vec3, string)) {
	see(p.From, name)
	see(p.To, name)
	if p.Radius > 0 {
		lo, hi := clear.Arc{Centre: p.Centre, U: p.U, V: p.V, Bend: p.Radius, Turn: p.Turn}.Bounds()
		middle := lo.Add(hi).Mul(0.5)
		see(mgl64.Vec3{middle[0], lo[1], middle[2]}, name)
		see(mgl64.Vec3{middle[0], hi[1], middle[2]}, name)
	}
}

func wayOf(sol find.Solution, run string) (find.Way, bool) {
	i := slices.IndexFunc(sol.Runs, func(s find.Solved) bool { return s.Run.Name == run })
	if i < 0 {
		return find.Way{}, false
	}
	return sol.Runs[i].Way()
}

type opening struct {
	at   mgl64.Vec3
	name string
}

// sameHeight keeps the first of two places or openings equally high: rounding, mm.
const sameHeight = 1e-6

// offer takes an opening off a level, the nearest, the first of equals.
func (l *Level) offer(o opening, off float64) {
	if l.Opening == "" || off < l.Off-sameHeight {
		l.Opening, l.Off = o.name, off
	}
}

// openings lists where a loop can be opened, spare ports first.
func openings(plan route.Plan, sol find.Solution, l Loop) (list []opening) {
	for _, ref := range l.Spare {
		if p, ok := plan.FindPort(ref); ok {
			list = append(list, opening{p.Frame.At, ref.String()})
		}
	}
	for _, name := range l.Runs {
		if way, ok := wayOf(sol, name); ok {
			list = append(list, taps(way.Start)...)
			list = append(list, taps(way.End)...)
		}
	}
	return list
}

// taps lists the tees and valves of a chain.
func taps(laid route.Laid) (list []opening) {
	for _, b := range laid.Bodies {
		if b.Fitting.Kind == route.Tee || b.Fitting.Kind == route.Valve {
			list = append(list, opening{b.From.Ahead(b.Fitting.Length / 2), "the " + b.Fitting.Name + " on " + laid.Port.Ref.String()})
		}
	}
	return list
}
