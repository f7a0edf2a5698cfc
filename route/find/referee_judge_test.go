package find_test

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/find"
)

const (
	// lengthWithin is what the program promises of lengths, mm.
	lengthWithin = 0.01
	// gapWithin is the rounding that checks tolerate in a gap, mm.
	gapWithin = 0.001
	// spotWithin is float64's noise in a place, mm.
	spotWithin = 1e-6
	// wayWithin is the same of a direction, degrees: the arc cosine of a cosine
	// near 1 is good to half its digits.
	wayWithin = 1e-5
)

// judged is a way as the referee sees it.
type judged struct {
	find.Way
	run        route.Run
	plan       route.Plan
	start, end chainLaid
	path       []footprint
	nets       [2][]mgl64.Vec3 // over the fittings of start and end
	conflict   bool            // the solution says that it comes too near to another run
	faults     []string
}

func judge(plan route.Plan, run route.Run, w find.Way) *judged {
	radii := make([]float64, len(w.Formed.Bends))
	for i, b := range w.Formed.Bends {
		radii[i] = b.Radius
	}
	j := &judged{
		Way: w, run: run, plan: plan, path: walk(w.Formed.Corners, radii),
		start: layChain(plan, run.From, w.Start.Bodies), end: layChain(plan, run.To, w.End.Bodies),
	}
	j.nets = [2][]mgl64.Vec3{netOf(j.start.bodies), netOf(j.end.bodies)}
	j.start.ball(j.nets[0])
	j.end.ball(j.nets[1])
	j.shape()
	j.ends()
	j.parts()
	j.self()
	j.turning()
	return j
}

func (j *judged) fault(format string, args ...any) {
	j.faults = append(j.faults, fmt.Sprintf("%s by %q: ", j.run.Name, j.Name)+fmt.Sprintf(format, args...))
}

// shape checks lengths and radii against the tube's own needs.
func (j *judged) shape() {
	f, last := j.Formed, j.path[len(j.path)-1]
	if !(math.Abs(f.Developed-last.s) <= lengthWithin) {
		j.fault("is %.4f mm long, walked %.4f", f.Developed, last.s)
	}
	if r := tightest(j.path); !(r >= j.Tube.LeastRadius-lengthWithin) {
		j.fault("has a radius of %.3f, the tube's least is %.3f", r, j.Tube.LeastRadius)
	}
	if len(f.Bends) > 0 && j.Tube.Radius == 0 {
		j.fault("bends a tube that cannot be bent")
	}
	for n := range f.Straights {
		need := j.Tube.StraightBetween
		if n == 0 || n == len(f.Bends) {
			need = j.Tube.StraightEnd
		}
		if got := j.straight(n); !(got >= need-spotWithin) {
			j.fault("straight %d is %.4f long, needs %.4f", n+1, got, need)
		}
	}
}

// straight is how long straight n is along the walk; a bend that starts before
// the one in front has ended shows as walking backwards.
func (j *judged) straight(n int) float64 {
	var from, to footprint
	found := false
	for _, p := range j.path {
		if p.straight == n {
			if !found {
				from, found = p, true
			}
			to = p
		}
	}
	way := j.Formed.Corners[n+1].Sub(j.Formed.Corners[n]).Normalize()
	return to.at.Sub(from.at).Dot(way)
}

// ends checks that the tube ends at the stops and leaves them in line. A bent
// tube must be exact; a straight one may use what its sockets give.
func (j *judged) ends() {
	c := j.Formed.Corners
	for _, e := range []struct {
		name     string
		stop     stand
		at, next mgl64.Vec3
	}{{"start", j.start.stop, c[0], c[1]}, {"end", j.end.stop, c[len(c)-1], c[len(c)-2]}} {
		if miss := e.at.Sub(place(e.stop)).Len(); !(miss <= spotWithin) {
			j.fault("misses the stop at its %s by %v mm", e.name, miss)
		}
		if miss := angle(e.next.Sub(e.at), ahead(e.stop)); len(j.Formed.Bends) > 0 && !(miss <= wayWithin+j.Miss.Degrees) {
			j.fault("leaves the stop at its %s askew by %v degrees", e.name, miss)
		}
	}
	a, b := j.Start.Socket.Give, j.End.Socket.Give
	if j.Miss.Degrees > max(a.Degrees, b.Degrees)+wayWithin || j.Miss.Sideways > max(a.Sideways, b.Sideways)+spotWithin {
		j.fault("asks its sockets to give %+v", j.Miss)
	}
	if len(j.Formed.Bends) == 0 {
		j.inLine(a, b)
	}
}

// inLine checks that two stops lie in line within the give of both sockets.
func (j *judged) inLine(a, b route.Give) {
	out, back := ahead(j.start.stop), ahead(j.end.stop).Mul(-1)
	if askew := angle(out, back); !(askew <= a.Degrees+b.Degrees+wayWithin) {
		j.fault("joins stops askew by %v degrees", askew)
	}
	way := out.Add(back).Normalize()
	w := place(j.end.stop).Sub(place(j.start.stop))
	// The line may lie along either stop's way, so allow what half the askewness
	// moves it aside over its length.
	allow := a.Sideways + b.Sideways + w.Len()*math.Sin(rad(angle(out, back)/2)) + spotWithin
	if aside := w.Sub(way.Mul(w.Dot(way))).Len(); !(aside <= allow) || w.Dot(way) <= 0 {
		j.fault("joins stops %v mm out of line", aside)
	}
}

func angle(a, b mgl64.Vec3) float64 {
	return math.Acos(max(-1, min(1, a.Normalize().Dot(b.Normalize())))) * 180 / math.Pi
}

// parts checks tube and fittings against every part and the case. The tube is a
// row of balls, so it bulges by its radius where it leaves a socket, as the
// rounded rods of the program's own check do.
func (j *judged) parts() {
	solids, od := obstacles(j.plan), j.Tube.OD/2
	for _, p := range j.path {
		for _, o := range solids {
			if need, asked := j.tubeNeed(o.part, p.s); asked && !o.farther(p.at, need+od) {
				j.gap("the tube", o.part, o.distance(p.at)-od, need)
			}
		}
		j.gap("the tube", "the case", inCase(j.plan, p.at)-od, 0)
	}
	j.chainAgainst(solids, j.run.From.Part, j.start)
	j.chainAgainst(solids, j.run.To.Part, j.end)
}

// tubeNeed is how far the tube must keep from a part s mm along; nothing is asked
// inside the socket on the part itself.
func (j *judged) tubeNeed(part string, s float64) (need float64, asked bool) {
	atStart, atEnd := part == j.run.From.Part, part == j.run.To.Part
	last := j.path[len(j.path)-1].s
	switch {
	case !atStart && !atEnd:
		return j.plan.Clear, true
	case atStart && s < j.start.mouth, atEnd && s > last-j.end.mouth:
		return 0, false
	}
	return 0, true
}

func (j *judged) chainAgainst(solids []obstacle, own string, chain chainLaid) {
	for i, body := range chain.bodies {
		name := fmt.Sprintf("fitting %d on %s", i+1, own)
		for _, p := range netOf([][]stick{body}) {
			for _, o := range solids {
				switch {
				case o.farther(p, j.plan.Clear):
				case o.part != own:
					j.gap(name, o.part, o.distance(p), j.plan.Clear)
				case i > 0: // the first stands on its part
					j.gap(name, o.part, o.distance(p), 0)
				}
			}
			j.gap(name, "the case", inCase(j.plan, p), 0)
		}
	}
}

func (j *judged) gap(what, to string, got, need float64) {
	if !(got >= need-gapWithin) {
		j.fault("%s stands %.4f mm from %s, needs %v", what, got, to, need)
	}
}

// self checks a run against itself.
func (j *judged) self() {
	for _, p := range j.path {
		if p.straight != 0 {
			j.gap("the tube", "its own start", j.start.nearest(p.at, j.Tube.OD)-j.Tube.OD/2, 0)
		}
		if p.straight != len(j.Formed.Bends) {
			j.gap("the tube", "its own end", j.end.nearest(p.at, j.Tube.OD)-j.Tube.OD/2, 0)
		}
		for _, q := range j.path {
			if p.straight >= 0 && q.straight >= p.straight+2 {
				j.gap("the tube", "its own other straight", q.at.Sub(p.at).Len(), j.Tube.OD)
			}
		}
	}
	for _, p := range j.nets[0] {
		j.gap("the start", "its own end", j.end.nearest(p, 1), 0)
	}
}

// against checks two runs against each other.
func (j *judged) against(k *judged) {
	radii := j.Tube.OD/2 + k.Tube.OD/2
	for _, p := range j.path {
		for _, q := range k.path {
			if d := p.at.Sub(q.at); d.Dot(d) < (radii+j.plan.Clear)*(radii+j.plan.Clear) {
				j.gap("the tube", k.run.Name, d.Len()-radii, j.plan.Clear)
			}
		}
	}
	j.bodiesAgainst(k)
	k.bodiesAgainst(j)
}

// bodiesAgainst checks one's fittings against all of the other.
func (j *judged) bodiesAgainst(k *judged) {
	far := j.plan.Clear + 1 + k.Tube.OD/2
	for i, mine := range []chainLaid{j.start, j.end} {
		for _, q := range k.path {
			j.gap("a fitting", k.run.Name, mine.nearest(q.at, far)-k.Tube.OD/2, j.plan.Clear)
		}
		for _, p := range j.nets[i] {
			j.gap("a fitting", "a fitting of "+k.run.Name, min(k.start.nearest(p, far), k.end.nearest(p, far)), j.plan.Clear)
		}
	}
}

// nearest is from a point to the nearest fitting of a chain; one whose ball is
// all farther than this counts as infinitely far.
func (c chainLaid) nearest(p mgl64.Vec3, than float64) float64 {
	least := math.Inf(1)
	if d, r := p.Sub(c.centre), c.reach+than; d.Dot(d) > r*r {
		return least
	}
	for _, body := range c.bodies {
		for _, s := range body {
			least = min(least, s.distance(p))
		}
	}
	return least
}

func netOf(bodies [][]stick) (net []mgl64.Vec3) {
	for _, body := range bodies {
		for _, s := range body {
			net = append(net, s.points()...)
		}
	}
	return net
}
