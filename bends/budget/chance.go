package budget

import (
	"math"
	"sync"
)

// chance that the eased piece keeps all limits, for a covariance of the miss as
// bent.
func (e *easing) chance(cov *square) float64 {
	g, k := e.reduced(cov)
	if k == 0 {
		return e.still()
	}
	return e.over(&g, k, directions(k))
}

// over integrates over lines through the middle.
func (e *easing) over(g *matrix, k int, lines []direction) float64 {
	sum := 0.0
	for d := range lines {
		from, to := e.line(g, &lines[d], k)
		sum += between(k, from, to)
	}
	return min(max(sum/float64(len(lines)), 0), 1)
}

// between is the part of a normal in k dimensions that lies on a line's interval:
// each half of the line stands for half of its direction.
func between(k int, from, to float64) float64 {
	switch {
	case to <= from:
		return 0
	case from <= 0 && to >= 0:
		return (within(k, -from) + within(k, to)) / 2
	}
	return math.Abs(within(k, math.Abs(to))-within(k, math.Abs(from))) / 2
}

// still is the chance when nothing scatters.
func (e *easing) still() float64 {
	for r := 0; r < discs; r += 2 {
		if math.Hypot(e.mean[r], e.mean[r+1]) > 1+noise {
			return 0
		}
	}
	return 1
}

// noise is what rounding may put on a limit.
const noise = 1e-9

// direction in at most as many dimensions as a miss has components.
type direction [components]float64

// matrix is the limits by independent normals of standard deviation 1.
type matrix [limits][components]float64

// reduced gives the limits by as few independent normals as matter, and how many.
func (e *easing) reduced(cov *square) (matrix, int) {
	l := factor(cov)
	var g matrix
	for r := range g {
		for c := range components {
			for k := range components {
				g[r][c] += e.rows[r][k] * l[k][c]
			}
		}
	}
	e.loosen(&g)
	return principal(&g)
}

// never is how many standard deviations away a limit is never met: once in
// three million.
const never = 5

// loosen drops what the legs want where it is never short.
func (e *easing) loosen(g *matrix) {
	for r := wants; r < limits; r++ {
		sum := 0.0
		for _, v := range g[r] {
			sum += v * v
		}
		if e.unit[r] == 0 || sum*never*never < 1 {
			g[r] = [components]float64{}
		}
	}
}

// factor is the lower Cholesky factor of a covariance; what has no variance of
// its own gets no column.
func factor(cov *square) (l square) {
	for c := range components {
		d := cov[c][c]
		for k := range c {
			d -= l[c][k] * l[c][k]
		}
		if d <= cov[c][c]*1e-12 {
			continue
		}
		l[c][c] = math.Sqrt(d)
		for r := c + 1; r < components; r++ {
			v := cov[r][c]
			for k := range c {
				v -= l[r][k] * l[c][k]
			}
			l[r][c] = v / l[c][c]
		}
	}
	return l
}

// matters is the size below which a principal direction is left out: one
// standard deviation of it uses a fiftieth of what is allowed.
const matters = 0.02

// principal turns the normals so that they act one after the other, and drops
// those that do nothing: the one-sided Jacobi method (Hestenes 1958).
func principal(g *matrix) (matrix, int) {
	for range 12 {
		turned := false
		for p := range components - 1 {
			for q := p + 1; q < components; q++ {
				turned = g.square(p, q) || turned
			}
		}
		if !turned {
			break
		}
	}
	var out matrix
	k := 0
	for c := range components {
		if g.column(c, c) < matters*matters {
			continue
		}
		for r := range g {
			out[r][k] = g[r][c]
		}
		k++
	}
	return out, k
}

func (g *matrix) column(p, q int) float64 {
	sum := 0.0
	for r := range g {
		sum += g[r][p] * g[r][q]
	}
	return sum
}

// square turns two columns until they are square to each other.
func (g *matrix) square(p, q int) bool {
	pp, qq, pq := g.column(p, p), g.column(q, q), g.column(p, q)
	if math.Abs(pq) <= 1e-12*math.Sqrt(pp*qq) || pq == 0 {
		return false
	}
	s, c := math.Sincos(math.Atan2(2*pq, pp-qq) / 2)
	for r := range g {
		a, b := g[r][p], g[r][q]
		g[r][p], g[r][q] = c*a+s*b, c*b-s*a
	}
	return true
}

// line gives from where to where along a line all limits are kept; nowhere when
// to is not beyond from.
func (e *easing) line(g *matrix, d *direction, k int) (from, to float64) {
	from, to = math.Inf(-1), math.Inf(1)
	for r := 0; r < discs; r += 2 {
		u, v := 0.0, 0.0
		for c := range k {
			u += g[r][c] * d[c]
			v += g[r+1][c] * d[c]
		}
		enters, leaves := disc(e.mean[r], e.mean[r+1], u, v)
		from, to = max(from, enters), min(to, leaves)
	}
	for r := wants; r < limits; r++ {
		u := 0.0
		for c := range k {
			u += g[r][c] * d[c]
		}
		if u > 0 {
			to = min(to, 1/u)
		} else if u < 0 {
			from = max(from, 1/u)
		}
	}
	return from, to
}

// disc gives where a line from a point enters and leaves the unit disc; nowhere
// when it misses.
func disc(x, y, u, v float64) (from, to float64) {
	a, b, c := u*u+v*v, x*u+y*v, x*x+y*y-1-noise
	root := b*b - a*c
	switch {
	case root < 0, a == 0 && c > 0:
		return math.Inf(1), math.Inf(-1)
	case a == 0:
		return math.Inf(-1), math.Inf(1)
	}
	root = math.Sqrt(root)
	return (-b - root) / a, (-b + root) / a
}

// within is the part of a normal in k dimensions that lies no farther out than
// r: the chi distribution (Abramowitz and Stegun, 26.4).
func within(k int, r float64) float64 {
	if math.IsInf(r, 1) {
		return 1
	}
	h := r * r / 2
	switch k {
	case 1:
		return math.Erf(r / math.Sqrt2)
	case 2:
		return -math.Expm1(-h)
	case 3:
		return math.Erf(r/math.Sqrt2) - math.Sqrt(2/math.Pi)*r*math.Exp(-h)
	case 4:
		return 1 - math.Exp(-h)*(1+h)
	}
	return math.Erf(r/math.Sqrt2) - math.Sqrt(2/math.Pi)*r*math.Exp(-h)*(1+r*r/3)
}

// sets are the lines integrated over, by dimensions, made when first asked for
// and never changed.
var sets [components + 1]struct {
	once sync.Once
	list []direction
}

// lines is how many there are: against a hundred times as many a chance is off
// by less than a point.
var lines = [components + 1]int{0, 1, 32, 64, 192, 256}

func directions(k int) []direction {
	s := &sets[k]
	s.once.Do(func() { s.list = spread(k, lines[k]) })
	return s.list
}

// spread gives n lines spread evenly: the only one there is in one dimension,
// equal angles in two, and in more those of a normal at the points of an
// additive recurrence, which fill a cube evenly (Niederreiter, Random Number
// Generation and Quasi-Monte Carlo Methods, 1992, ch. 3).
func spread(k, n int) []direction {
	list := make([]direction, n)
	for i := range list {
		switch d := &list[i]; k {
		case 1:
			d[0] = 1
		case 2:
			d[1], d[0] = math.Sincos((float64(i) + 0.5) * math.Pi / float64(n))
		default:
			*d = recurrent(k, i)
		}
	}
	return list
}

// recurrent is direction i of a spread in three dimensions or more.
func recurrent(k, i int) (d direction) {
	g := 2.0 // becomes the root of g^(k+1) = g + 1
	for range 60 {
		g = math.Pow(1+g, 1/float64(k+1))
	}
	sum := 0.0
	for c := range k {
		_, u := math.Modf(0.5 + math.Pow(g, -float64(c+1))*float64(i+1))
		d[c] = math.Sqrt2 * math.Erfinv(2*u-1)
		sum += d[c] * d[c]
	}
	for c := range k {
		d[c] /= math.Sqrt(sum)
	}
	return d
}
