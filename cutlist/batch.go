package cutlist

import (
	"math"
	"slices"
	"strconv"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

const (
	// sameLength is how far two straights or radii may differ and still be one
	// template's, mm; sameAngle the same of turns and rolls, degrees: a tenth of
	// what a saw and a former keep.
	sameLength = 0.05
	sameAngle  = 0.05
)

// Template is tubes that one jig serves: the same shape, read from either end.
type Template struct {
	Letter   string   // of its first tube
	Runs     []string // in the plan's order
	Reversed []bool   // of each run: its end B is the template's end A
	MirrorOf string   // letter of the template it is the mirror image of; empty: of none
	Each     int      // pieces of it for one machine
	Pieces   int      // to make, all machines and spares, less those that are there
	Tube     Tube     // the first of its tubes
}

// Batch groups the tubes by shape, in the plan's order. Two tubes are the same
// when they are of one kind of tube, cut to the same length, and their straights,
// turns, rolls and radii agree from either end; mirror images when only the signs
// of all rolls differ. A tube that is bent in one plane is its own mirror image:
// turned over it is the same.
func (l List) Batch() []Template {
	var list []Template
	for _, t := range l.Tubes {
		i := slices.IndexFunc(list, func(m Template) bool { same, _ := sameShape(m.Tube, t, 1); return same })
		if i < 0 {
			i = len(list)
			list = append(list, Template{Letter: t.Letter, Tube: t, MirrorOf: mirrorIn(list, t)})
		}
		_, turned := sameShape(list[i].Tube, t, 1)
		list[i].Runs, list[i].Reversed = append(list[i].Runs, t.Run), append(list[i].Reversed, turned)
	}
	for i := range list {
		list[i].count(l)
	}
	return list
}

// mirrorIn is the letter of the first template that a tube mirrors.
func mirrorIn(list []Template, t Tube) string {
	for _, m := range list {
		if same, _ := sameShape(m.Tube, t, -1); same && m.MirrorOf == "" {
			return m.Letter
		}
	}
	return ""
}

// count works out how many pieces a template is for.
func (m *Template) count(l List) {
	m.Each = len(m.Runs)
	for _, b := range l.Bars {
		for _, p := range b.Pieces {
			if slices.Contains(m.Runs, p.Run) {
				m.Pieces++
			}
		}
	}
}

// sameShape reports whether two tubes have one shape, the rolls of the second
// taken with a sign, and whether only when it is read from its other end.
func sameShape(a, b Tube, sign float64) (same, turned bool) {
	if a.Way.Tube.Name != b.Way.Tube.Name || math.Abs(a.Cut.Aim-b.Cut.Aim) > sameLength {
		return false, false
	}
	if sameBench(a.Bench, b.Bench, sign) {
		return true, false
	}
	same = sameBench(a.Bench, backward(b.Bench), sign)
	return same, same
}

// backward is a bench table read from end B. A roll is the torsion between two
// bends, and keeps its sign from either end; it then stands with the bend before.
func backward(b bends.Bench) bends.Bench {
	n := len(b.Bends)
	r := bends.Bench{Straights: slices.Clone(b.Straights), Bends: make([]bends.BenchBend, n)}
	slices.Reverse(r.Straights)
	for i := range b.Bends {
		r.Bends[i] = b.Bends[n-1-i]
		r.Bends[i].Roll = 0
		if i > 0 {
			r.Bends[i].Roll = b.Bends[n-i].Roll
		}
	}
	return r
}

func sameBench(a, b bends.Bench, sign float64) bool {
	if len(a.Bends) != len(b.Bends) {
		return false
	}
	for i, s := range a.Straights {
		if math.Abs(s-b.Straights[i]) > sameLength {
			return false
		}
	}
	for i, x := range a.Bends {
		y := b.Bends[i]
		if math.Abs(x.Radius-y.Radius) > sameLength || math.Abs(x.Turn-y.Turn) > sameAngle || rollsApart(x.Roll, sign*y.Roll) > sameAngle {
			return false
		}
	}
	return true
}

// rollsApart is how far two rolls differ, 180 and −180 being one.
func rollsApart(a, b float64) float64 { return math.Abs(math.Remainder(a-b, 360)) }

// Check is one line of the first article's check: what to measure on the first
// piece, what it should be and how far it may be off.
type Check struct {
	What         string
	Nominal      float64
	Below, Above float64 // how far under and over it may be, 0 or more
	Unit         string  // "mm" or "deg"
}

// FirstArticle lists what to check on the first piece of a tube, at the bench
// before the rest are made: the finished length against the sockets' window; the
// legs to the backs of the bends and the span between the middles of its ends
// against what both sockets give sideways; turns and rolls against what both give
// in degrees. Each holds while the others are true; together they may add up, so
// the dry fit decides. The span is in the tube's own frame: along the first leg,
// then square to it in the plane of the first bend, then square to both.
func (t Tube) FirstArticle() (list []Check) {
	a, b := t.Way.Start.Socket.Give, t.Way.End.Socket.Give
	aside, askew := a.Sideways+b.Sideways, a.Degrees+b.Degrees
	list = append(list, Check{"finished length", t.Cut.Aim, max(0, t.Cut.Aim-t.Cut.Shortest), max(0, t.Cut.Longest-t.Cut.Aim), "mm"})
	n := len(t.Bench.Bends)
	if n == 0 {
		return list
	}
	even := func(what string, v, off float64, unit string) { list = append(list, Check{what, v, off, off, unit}) }
	even("end A to the back of bend 1", t.Bench.Bends[0].Back.Before, aside, "mm")
	for i, bend := range t.Bench.Bends {
		what := "back of bend " + strconv.Itoa(i+1) + " to the back of bend " + strconv.Itoa(i+2)
		if i == n-1 {
			what = "back of bend " + strconv.Itoa(i+1) + " to end B"
		}
		even(what, bend.Back.After, aside, "mm")
	}
	for i, bend := range t.Bench.Bends {
		even("turn of bend "+strconv.Itoa(i+1), bend.Turn, askew, "deg")
	}
	for i, bend := range t.Bench.Bends[1:] {
		even("roll from bend "+strconv.Itoa(i+1)+" to bend "+strconv.Itoa(i+2), bend.Roll, askew, "deg")
	}
	for i, v := range t.span() {
		even("span "+[...]string{"along the first leg", "across, in the plane of bend 1", "across, out of that plane"}[i], v, aside, "mm")
	}
	return list
}

// span is from the middle of end A to that of end B of the tube cut to its aim,
// in its own frame.
func (t Tube) span() mgl64.Vec3 {
	f := t.Way.Formed
	c := f.Corners
	n := len(c)
	along := c[1].Sub(c[0]).Normalize()
	next := c[2].Sub(c[1])
	across := next.Sub(along.Mul(next.Dot(along))).Normalize()
	from := c[0].Add(along.Mul(t.Way.Ends.SeatGap[0]))
	to := c[n-1].Add(c[n-2].Sub(c[n-1]).Normalize().Mul(t.Way.Ends.SeatGap[1]))
	d := to.Sub(from)
	return mgl64.Vec3{d.Dot(along), d.Dot(across), d.Dot(along.Cross(across))}
}

type jsonTemplate struct {
	Letter   string      `json:"letter"`
	Runs     []string    `json:"runs"`
	Reversed []bool      `json:"reversed"`
	MirrorOf string      `json:"mirror_of,omitempty"`
	Each     int         `json:"each"`
	Pieces   int         `json:"pieces"`
	Checks   []jsonCheck `json:"checks"`
}

type jsonCheck struct {
	What    string `json:"what"`
	Nominal number `json:"nominal"`
	Below   number `json:"below"`
	Above   number `json:"above"`
	Unit    string `json:"unit"`
}

// batchJSON writes the batch of a plan for more than one machine.
func (l List) batchJSON() []jsonTemplate {
	if l.Plan.Build <= 1 || len(l.Tubes) == 0 {
		return nil
	}
	return each(l.Batch(), func(m Template) jsonTemplate {
		return jsonTemplate{m.Letter, full(m.Runs), m.Reversed, m.MirrorOf, m.Each, m.Pieces, each(m.Tube.FirstArticle(), func(c Check) jsonCheck {
			return jsonCheck{c.What, number(c.Nominal), number(c.Below), number(c.Above), c.Unit}
		})}
	})
}
