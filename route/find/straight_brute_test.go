package find_test

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// The second opinion on straights: every pair of chains, every roll in steps,
// then polished. It shares nothing with the search but route.Frame.

const (
	// rollStep is how finely rolls are stepped before they are polished, degrees.
	rollStep = 6.0
	// trulyWithin is how true two ways out are brought where their turns allow,
	// degrees.
	trulyWithin = 1e-4
	// lineWithin is how far from the sockets' give rounding may take a way, mm.
	lineWithin = 1e-4
)

// link is one fitting of a chain under trial.
type link struct {
	fit  *route.Fitting
	roll float64
}

// pairOf is a chain for each end, without sockets.
type pairOf struct {
	chains [2][]*route.Fitting
	price  float64
	count  int
}

// everyChain lists every row of up to three fittings, by how many they are.
func everyChain(fits []route.Fitting) (list [4][][]*route.Fitting) {
	list[0] = [][]*route.Fitting{nil}
	for n := 1; n < len(list); n++ {
		for _, chain := range list[n-1] {
			for i := range fits {
				if f := &fits[i]; f.Kind != route.Socket {
					list[n] = append(list[n], append(slices.Clip(chain), f))
				}
			}
		}
	}
	return list
}

// newPair is a pair of chains; false for one that does not count as sensible.
func newPair(a, b []*route.Fitting) (pairOf, bool) {
	p := pairOf{chains: [2][]*route.Fitting{a, b}, count: len(a) + len(b)}
	for _, chain := range p.chains {
		for _, f := range chain {
			p.price += f.Price
		}
	}
	return p, p.sensible()
}

func (p *pairOf) cost(w route.Weigh) float64 { return w.Fitting*float64(p.count) + w.Price*p.price }

// sensible is the bound the program states: at most two elbows and two offsets,
// and not more than one offset before an elbow.
func (p *pairOf) sensible() bool {
	elbows, offsets, before := 0, 0, 0
	for _, chain := range p.chains {
		seen := 0
		for _, f := range chain {
			switch f.Kind {
			case route.Elbow:
				elbows, before, seen = elbows+1, before+seen, 0
			case route.Offset:
				offsets, seen = offsets+1, seen+1
			}
		}
	}
	return elbows <= 2 && offsets <= 2 && before <= 1
}

// joint is two ports to be joined, with what may stand on them.
type joint struct {
	plan         route.Plan
	ports        [2]route.Frame
	sockets      []*route.Fitting
	weigh        route.Weigh
	chains       [4][][]*route.Fitting  // by how many fittings they have
	aims         map[string][][]float64 // see directions
	best         float64
	leastSockets float64 // cost of the cheapest two
	with         string  // what the best is made of
}

// most is the most that a pair of sockets gives.
func (j *joint) most() (sideways, degrees float64) {
	for _, s := range j.sockets {
		sideways, degrees = max(sideways, 2*s.Give.Sideways), max(degrees, 2*s.Give.Degrees)
	}
	return sideways, degrees
}

// ends lays both chains at their rolls.
func (j *joint) ends(a, b []link) (p, q route.Frame) {
	return along(j.ports[0], a), along(j.ports[1], b)
}

func along(f route.Frame, chain []link) route.Frame {
	for _, l := range chain {
		f = f.Past(l.fit, l.roll)
	}
	return f
}

// askewness is how far two ways out are from facing each other, degrees.
func askewness(p, q mgl64.Vec3) float64 {
	return 2 * math.Asin(min(1, p.Add(q).Len()/2)) * 180 / math.Pi
}

// beside is how far two ends stand aside of each other, seen along the mean of
// their ways out, and how far apart along it.
func beside(p, q route.Frame) (aside mgl64.Vec3, ahead float64) {
	u := p.Dir.Sub(q.Dir).Normalize()
	w := q.At.Sub(p.At)
	return w.Sub(u.Mul(w.Dot(u))), w.Dot(u)
}

// fitted reports whether a straight tube joins two ends within the give of two
// sockets: along the mean of their ways, or along either.
func fitted(p, q route.Frame, s, r *route.Fitting) bool {
	w := q.At.Sub(p.At)
	for _, u := range []mgl64.Vec3{p.Dir.Sub(q.Dir).Normalize(), p.Dir, q.Dir.Mul(-1)} {
		if askewness(p.Dir, u.Mul(-1)) <= s.Give.Degrees+trulyWithin && askewness(q.Dir, u) <= r.Give.Degrees+trulyWithin &&
			w.Dot(u) > 0 && w.Sub(u.Mul(w.Dot(u))).Len() <= s.Give.Sideways+r.Give.Sideways+lineWithin {
			return true
		}
	}
	return false
}

// trial is one pair of chains with its rolls.
type trial struct {
	*joint
	links [2][]link
	free  []*link // rotary ones: elbows first
	turns int     // how many of free are elbows
}

func (j *joint) trial(p *pairOf) *trial {
	t := &trial{joint: j}
	for e, chain := range p.chains {
		for _, f := range chain {
			t.links[e] = append(t.links[e], link{fit: f})
		}
	}
	for _, kind := range []route.FittingKind{route.Elbow, route.Offset} {
		for e := range t.links {
			for i := range t.links[e] {
				if l := &t.links[e][i]; l.fit.Kind == kind && l.fit.Rotary {
					t.free = append(t.free, l)
				}
			}
		}
		if kind == route.Elbow {
			t.turns = len(t.free)
		}
	}
	return t
}

// residual is what keeps the pair from lying true: the ways out first, by far
// the heavier, then what stands aside.
func (t *trial) residual(place bool) [6]float64 {
	p, q := t.ends(t.links[0], t.links[1])
	const heavy = 1e3 // mm for a radian: no give aside is bought with a tilt
	d := p.Dir.Add(q.Dir).Mul(heavy)
	r := [6]float64{d[0], d[1], d[2]}
	if place {
		a, _ := beside(p, q)
		r[3], r[4], r[5] = a[0], a[1], a[2]
	}
	return r
}

func square(r [6]float64) float64 {
	sum := 0.0
	for _, x := range r {
		sum += x * x
	}
	return sum
}

// polish brings the first n free rolls downhill on the residual, by damped
// least squares with slopes taken by small differences.
func (t *trial) polish(n int, place bool) {
	damp := 1e-3
	at := t.residual(place)
	for range 60 {
		var rows [4][6]float64
		for i := range n {
			const h = 1e-4 // degrees
			t.free[i].roll += h
			up := t.residual(place)
			t.free[i].roll -= h
			for k := range up {
				rows[i][k] = (up[k] - at[k]) / h
			}
		}
		var m [4][5]float64
		for i := range n {
			for k := range n {
				m[i][k] = inner(rows[i], rows[k])
			}
			m[i][i] = m[i][i]*(1+damp) + 1e-12
			m[i][4] = -inner(rows[i], at)
		}
		step := solve(&m, n)
		was := square(at)
		t.shift(step, n, 1)
		now := t.residual(place)
		if square(now) <= was {
			at, damp = now, max(damp/4, 1e-12)
			if was-square(now) < 1e-14 {
				return
			}
		} else {
			t.shift(step, n, -1)
			if damp *= 8; damp > 1e9 {
				return
			}
		}
	}
}

func (t *trial) shift(step [4]float64, n int, by float64) {
	for i := range n {
		t.free[i].roll += by * step[i]
	}
}

func inner(a, b [6]float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

// solve is Gauss's elimination with the largest pivot first.
func solve(m *[4][5]float64, n int) (x [4]float64) {
	for c := range n {
		best := c
		for r := c + 1; r < n; r++ {
			if math.Abs(m[r][c]) > math.Abs(m[best][c]) {
				best = r
			}
		}
		m[c], m[best] = m[best], m[c]
		for r := range n {
			if r != c {
				f := m[r][c] / m[c][c]
				for k := c; k < 5; k++ {
					m[r][k] -= f * m[c][k]
				}
			}
		}
	}
	for i := range n {
		x[i] = m[i][4] / m[i][i]
	}
	return x
}
