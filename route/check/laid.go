package check

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/clear"
	"tubewright/route/find"
)

// laidRun is a run with a way, put together afresh from the names and rolls of
// its fittings and the corners of its tube.
type laidRun struct {
	name     string
	tube     route.Tube
	ends     [2]route.Laid // at From and To
	formed   bends.Formed
	play     bends.Ends
	made     bool      // its tube is there
	elements []element // bodies from the start outward, then from the end, then the tube
}

// element is one solid of a run.
type element struct {
	shape clear.Shape
	box   bounds
	body  bool
	end   int // 0 or 1: the end whose chain or socket it belongs to; −1: neither
	step  int // of a body: its place in the chain
	piece int // of the tube: its piece, straights even, bends odd
	name  string
}

// noEnd marks tube outside both sockets.
const noEnd = -1

// assemble lays a run's chains and tube where they stand, and tells of chains
// that cannot be laid and of a tube the bends refuse.
func (r *referee) assemble(s find.Solved) {
	way, ok := s.Way()
	if !ok {
		return
	}
	_, isMade := s.Run.AsMade()
	run := laidRun{name: s.Run.Name, tube: way.Tube, formed: way.Formed, play: way.Ends, made: isMade}
	for end, ref := range [2]route.PortRef{s.Run.From, s.Run.To} {
		laid, err := r.lay(ref, [2]route.Laid{way.Start, way.End}[end])
		if err != nil {
			r.tellUnlaid(run.name, err)
			return
		}
		run.ends[end] = laid
	}
	if !run.made { // the former took it
		r.reform(&run)
	}
	for end := range run.ends {
		run.addBodies(end)
	}
	run.addTube()
	r.runs = append(r.runs, run)
}

// lay puts a way's chain on the plan's port by names and rolls alone.
func (r *referee) lay(ref route.PortRef, given route.Laid) (route.Laid, error) {
	port, ok := r.port(ref)
	if !ok {
		return route.Laid{}, &route.ChainError{Port: ref, What: "there is no such port"}
	}
	var chain route.Chain
	for _, b := range given.Bodies {
		chain = append(chain, route.Step{Fitting: b.Fitting.Name, Roll: b.Roll, Rolled: true})
	}
	return r.plan.Lay(port, chain)
}

// port is a port where it stands.
func (r *referee) port(ref route.PortRef) (route.PlacedPort, bool) {
	for i := range r.parts {
		for _, q := range r.parts[i].ports {
			if q.Ref == ref {
				return q, true
			}
		}
	}
	return route.PlacedPort{}, false
}

func (l *laidRun) addBodies(end int) {
	on := " on " + l.ends[end].Port.Ref.String()
	for step, b := range l.ends[end].Bodies {
		name := "the " + b.Fitting.Name + on
		if b.Fitting.Kind == route.Socket {
			name = "the collar of the " + b.Fitting.Name + on
		}
		for _, s := range b.Shapes {
			l.elements = append(l.elements, element{shape: s, box: boundsOf(s), body: true, end: end, step: step, name: name})
		}
	}
}

// mouths are how far along the tube its sockets' collars end, from the first stop.
func (l *laidRun) mouths() (first, last float64) {
	in := func(end int) float64 {
		socket := l.ends[end].Socket
		return max(0, socket.Collar.Length-socket.Stop)
	}
	first = min(in(0), l.formed.Developed)
	return first, max(first, l.formed.Developed-in(1))
}

// addTube adds the tube, its first and last straight cut at the sockets' mouths.
// Those two have flat ends; where another piece follows, its round end fills up.
func (l *laidRun) addTube() {
	first, last := l.mouths()
	pieces := l.formed.Pieces()
	for i, p := range pieces {
		if p.Radius > 0 {
			l.addPiece(clear.Arc{Centre: p.Centre, U: p.U, V: p.V, Bend: p.Radius, Turn: p.Turn, Radius: l.tube.OD / 2}, i, noEnd)
			continue
		}
		if i > 0 && i < len(pieces)-1 {
			l.addPiece(clear.Rod{From: p.From, To: p.To, Radius: l.tube.OD / 2}, i, noEnd)
			continue
		}
		cuts := [4]float64{p.Start, p.Start, p.End, p.End}
		if i == 0 {
			cuts[1] = min(first, p.End)
		}
		if i == len(pieces)-1 {
			cuts[2] = max(last, p.Start)
		}
		for k, end := range [3]int{0, noEnd, 1} {
			l.addStretch(p, cuts[k], cuts[k+1], i, end)
		}
	}
}

// addStretch adds part of a straight, if it has a length.
func (l *laidRun) addStretch(p bends.Piece, from, to float64, piece, end int) {
	if to-from <= Rounding {
		return
	}
	a, _ := p.At(from)
	b, _ := p.At(to)
	l.addPiece(clear.Cylinder{From: a, To: b, Radius: l.tube.OD / 2}, piece, end)
}

func (l *laidRun) addPiece(s clear.Shape, piece, end int) {
	l.elements = append(l.elements, element{shape: s, box: boundsOf(s), end: end, piece: piece, name: "the tube"})
}

// called names an element of the run in a sentence.
func (l *laidRun) called(e *element) string {
	if e.body {
		return e.name + " (run " + l.name + ")"
	}
	return "the tube of run " + l.name
}

// owns reports whether a part is at one of the run's ends.
func (l *laidRun) owns(part string) bool {
	return l.ends[0].Port.Ref.Part == part || l.ends[1].Port.Ref.Part == part
}

// seated reports whether an element is meant to be in a part: the first fitting
// stands on it, and the tube in the socket may reach into it.
func (l *laidRun) seated(e *element, part string) bool {
	return e.end != noEnd && l.ends[e.end].Port.Ref.Part == part && (!e.body || e.step == 0)
}

// stop is where the tube's end rests and the way it leaves, at an end.
func (l *laidRun) stop(end int) (at, dir mgl64.Vec3) {
	return l.ends[end].Stop.At, l.ends[end].Stop.Dir
}
