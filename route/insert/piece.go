package insert

import (
	"context"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/clear"
	"tubewright/route/find"
)

type vec = mgl64.Vec3

// solid is a shape with the box around it.
type solid struct {
	shape  clear.Shape
	lo, hi vec
}

func solidOf(s clear.Shape) solid {
	lo, hi := s.Bounds()
	return solid{s, lo, hi}
}

func (s *solid) near(lo, hi *vec) bool {
	for i := range lo {
		if s.lo[i] > hi[i] || lo[i] > s.hi[i] {
			return false
		}
	}
	return true
}

// limb is a solid of the piece; end is the socket it sits in, −1 for none.
type limb struct {
	solid
	end  int
	slim clear.Shape // less what it may press on things in passing
}

// obstacle is what stands still.
type obstacle struct {
	solid
	name string
	end  int  // the end whose port's part, or whose fittings, it is; −1: neither
	body bool // the body of a socket that stays, around the tube's end
}

// run is one run of the machine.
type run struct {
	name   string
	way    find.Way
	solids []solid // where it stands
}

// machine is a solved plan.
type machine struct {
	plan  route.Plan
	opt   Options
	parts []obstacle // of parts; name is the part's
	runs  []run
	known map[string]Result
	ended func() bool // nobody waits for the answer any more
}

func newMachine(ctx context.Context, plan route.Plan, sol find.Solution, o Options) *machine {
	m := &machine{plan: plan, opt: o, known: map[string]Result{}, ended: func() bool { return ctx.Err() != nil }}
	for _, placed := range plan.PlaceAll() {
		for _, s := range placed.Solids {
			m.parts = append(m.parts, obstacle{solid: solidOf(s), name: placed.Part.Name, end: -1})
		}
	}
	for _, s := range sol.Runs {
		if way, ok := s.Way(); ok {
			m.runs = append(m.runs, newRun(s.Run.Name, way))
		}
	}
	return m
}

func newRun(name string, w find.Way) run {
	r := run{name: name, way: w}
	for _, laid := range [2]route.Laid{w.Start, w.End} {
		for _, b := range laid.Bodies {
			for _, s := range b.Shapes {
				r.solids = append(r.solids, solidOf(s))
			}
		}
	}
	for _, l := range tubeOf(&w) {
		r.solids = append(r.solids, l.solid)
	}
	return r
}

func ends(w *find.Way) [2]*route.Laid { return [2]*route.Laid{&w.Start, &w.End} }

// tubeOf is the tube cut to its aim; the stretches inside its sockets belong to
// them.
func tubeOf(w *find.Way) (list []limb) {
	pieces, radius := w.Formed.Pieces(), w.Tube.OD/2
	in := [2]float64{}
	for e, laid := range ends(w) {
		in[e] = max(0, laid.Socket.Collar.Length-laid.Socket.Stop)
	}
	last := w.Formed.Developed
	gap := w.Ends.SeatGap
	for i, p := range pieces {
		if p.Radius > 0 {
			list = append(list, limb{solid: solidOf(clear.Arc{Centre: p.Centre, U: p.U, V: p.V, Bend: p.Radius, Turn: p.Turn, Radius: radius}), end: -1})
			continue
		}
		from, to := p.Start, p.End
		if i == 0 {
			to0 := min(in[0], p.End)
			list = appendStretch(list, p, gap[0], to0, radius, 0)
			from = to0
		}
		if i == len(pieces)-1 {
			to = max(from, last-in[1])
			list = appendStretch(list, p, to, last-gap[1], radius, 1)
		}
		list = appendStretch(list, p, from, to, radius, -1)
	}
	return list
}

// shortest is a stretch not worth a shape, mm.
const shortest = 1e-3

func appendStretch(list []limb, p bends.Piece, from, to, radius float64, end int) []limb {
	if to-from <= shortest {
		return list
	}
	a, _ := p.At(from)
	b, _ := p.At(to)
	return append(list, limb{solid: solidOf(clear.Cylinder{From: a, To: b, Radius: radius}), end: end})
}

// joint is an end that can move only along its port's way until it is out.
type joint struct {
	held  bool
	way   vec     // out of the port
	depth float64 // to be out, mm
	back  float64 // how far it can still be pushed in, mm
	give  float64 // aside, mm
}

// task is one piece to take out of its place, with what stays on the ports.
type task struct {
	limbs  []limb
	lo, hi vec // around the limbs
	things []obstacle
	joints [2]joint
	off    [2]bool
	ways   [2]vec
	wall   vec // the case; zero: none
	at     [2]vec
	spin   bool       // the piece is straight
	loose  float64    // how far the sockets' give lets the far end swing, mm
	slack  [2]float64 // how much of that is along an end's way
	ended  func() bool
}

// task puts the piece of a run together, with these sockets unscrewed and those
// other runs in place.
func (m *machine) task(i int, off [2]bool, in func(int) bool) *task {
	r := &m.runs[i]
	t := &task{limbs: tubeOf(&r.way), off: off, wall: m.plan.Case, ended: m.ended, spin: len(r.way.Formed.Bends) == 0}
	t.things = append(t.things, m.parts...)
	for k := range m.runs {
		if k != i && in(k) {
			for _, s := range m.runs[k].solids {
				t.things = append(t.things, obstacle{solid: s, name: "run " + m.runs[k].name, end: -1})
			}
		}
	}
	for e, laid := range ends(&r.way) {
		t.ways[e], t.at[e] = laid.Stop.Dir, laid.Stop.At
		for k := range t.things {
			if t.things[k].name == laid.Port.Ref.Part {
				t.things[k].end = e
			}
		}
		m.putEnd(t, &r.way, e)
	}
	for k := range m.parts {
		t.things[k].name = "part " + t.things[k].name
	}
	t.tilt(&r.way)
	t.slimmed()
	t.lo, t.hi = t.limbs[0].lo, t.limbs[0].hi
	for _, l := range t.limbs[1:] {
		for x := range t.lo {
			t.lo[x], t.hi[x] = min(t.lo[x], l.lo[x]), max(t.hi[x], l.hi[x])
		}
	}
	return t
}

// tilt works out what the sockets' give lets the piece swing.
func (t *task) tilt(w *find.Way) {
	angle := (ends(w)[0].Socket.Give.Degrees + ends(w)[1].Socket.Give.Degrees) * perDegree
	across := t.at[1].Sub(t.at[0])
	t.loose = across.Len() * angle
	for e := range t.slack {
		t.slack[e] = aside(across, t.ways[e])*angle + ends(w)[1-e].Socket.Give.Sideways*aside(t.ways[1-e], t.ways[e])
	}
}

const perDegree = 0.017453292519943295

// putEnd adds one end: fittings that stay, and the socket on the port or on the tube.
func (m *machine) putEnd(t *task, w *find.Way, e int) {
	laid := ends(w)[e]
	s, n := laid.Socket, len(laid.Bodies)
	gap := w.Ends.SeatGap[e]
	on := " on " + laid.Port.Ref.String()
	for _, b := range laid.Bodies[:n-1] {
		for _, shape := range b.Shapes {
			t.things = append(t.things, obstacle{solidOf(shape), "the " + b.Fitting.Name + on, e, false})
		}
	}
	last := laid.Bodies[n-1]
	if t.off[e] {
		for _, shape := range last.Shapes {
			t.limbs = append(t.limbs, limb{solid: solidOf(shape), end: e})
		}
		if m.opt.Thread > gap {
			t.joints[e] = joint{true, last.From.Dir, m.opt.Thread - gap, gap, s.Give.Sideways}
		}
		return
	}
	t.joints[e] = joint{true, last.From.Dir, s.Insertion.Full - gap, gap, s.Give.Sideways}
	mouth := min(s.Stop+s.Insertion.Full, max(s.Collar.Length, s.Stop))
	t.things = append(t.things, obstacle{
		solidOf(clear.Cylinder{From: last.From.At, To: last.From.Ahead(mouth), Radius: s.Collar.OD / 2}),
		"the " + s.Name + on, e, true,
	})
	leg := w.Formed.Straights[e*len(w.Formed.Bends)]
	at := max(0, min(s.Insertion.Full, leg-s.Collar.Length))
	if s.Collar.Length > 0 {
		t.limbs = append(t.limbs, limb{solid: solidOf(clear.Cylinder{
			From: laid.Stop.Ahead(at), To: laid.Stop.Ahead(at + s.Collar.Length), Radius: s.Collar.OD / 2,
		}), end: e})
	}
}

func (t *task) slimmed() {
	for i := range t.limbs {
		t.limbs[i].slim = slim(t.limbs[i].shape)
	}
}
