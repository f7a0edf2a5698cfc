package nest

import "math"

// simplex is a linear program of the kind column generation needs: least Σ c·x
// over columns x ≥ 0 so that each row's sum is its right side. It keeps the
// inverse of the basis as a full square (revised simplex method, Dantzig & Orden
// 1954; Chvátal, Linear Programming, chapter 7).
//
// Products are rounded before they are added (float64(a*b)), so that no
// processor fuses the two and every machine takes the same path.
type simplex struct {
	rows    int
	right   []float64
	inverse []float64 // rows × rows
	basis   []sparse
	value   []float64 // of the basic columns
	price   []float64 // dual value of each row
	pivots  int       // since the inverse was made afresh
	dir     []float64 // scratch: the entering column in terms of the basis
	filled  []int32   // scratch: where the pivot row is not 0
}

// sparse is a sparse column of the program.
type sparse struct {
	cost    float64
	row     []int32
	val     []float64
	pattern int // index of the pattern it stands for; below 0: none
}

// newSimplex starts from columns that have a single entry, one for each row in
// turn, so that the inverse is a diagonal.
func newSimplex(right []float64, start []sparse) *simplex {
	n := len(right)
	s := &simplex{
		rows: n, right: right, inverse: make([]float64, n*n), basis: start,
		value: make([]float64, n), price: make([]float64, n), dir: make([]float64, n),
	}
	for i, c := range start {
		s.inverse[i*n+i] = 1 / c.val[0]
	}
	s.refresh()
	return s
}

// refresh computes values and prices from the inverse.
func (s *simplex) refresh() {
	clear(s.price)
	for i := range s.rows {
		row := s.inverse[i*s.rows : (i+1)*s.rows]
		sum := 0.0
		for j, v := range row {
			sum += float64(v * s.right[j])
		}
		s.value[i] = max(0, sum)
		if c := s.basis[i].cost; c != 0 {
			for j, v := range row {
				s.price[j] += float64(c * v)
			}
		}
	}
}

// reduced is what one unit of a column saves, as a cost: below 0 is a gain.
func (s *simplex) reduced(c sparse) float64 {
	cost := c.cost
	for k, r := range c.row {
		cost -= float64(s.price[r] * c.val[k])
	}
	return cost
}

// enter brings a column into the basis. It reports false when the column
// cannot enter: the program would be without a bound, or the pivot too small.
func (s *simplex) enter(c sparse) bool {
	s.direction(c)
	out := s.leaving()
	if out < 0 {
		return false
	}
	s.pivot(out, c)
	if s.pivots++; s.pivots > max(100, s.rows) {
		s.remake()
	}
	return true
}

func (s *simplex) direction(c sparse) {
	for i := range s.rows {
		sum := 0.0
		row := s.inverse[i*s.rows : (i+1)*s.rows]
		for k, r := range c.row {
			sum += float64(row[r] * c.val[k])
		}
		s.dir[i] = sum
	}
}

// leaving is the ratio test: the basic sparse that falls to 0 first; among
// those that tie, the one with the largest pivot.
func (s *simplex) leaving() int {
	out, least := -1, math.Inf(1)
	for i, d := range s.dir {
		if d < tiny {
			continue
		}
		ratio := s.value[i] / d
		if ratio < least-tiny || ratio < least+tiny && (out < 0 || d > s.dir[out]) {
			out, least = i, min(least, ratio)
		}
	}
	return out
}

// pivot puts a column in the place of a basic one and brings inverse, values
// and prices up to date.
func (s *simplex) pivot(out int, c sparse) {
	n := s.rows
	rc := s.reduced(c)
	by := 1 / s.dir[out]
	step := s.value[out] * by
	pivotRow := s.scaled(out, by)
	for i, d := range s.dir {
		if i == out || d == 0 {
			continue
		}
		row := s.inverse[i*n : (i+1)*n]
		if 2*len(s.filled) < n {
			for _, j := range s.filled {
				row[j] -= float64(d * pivotRow[j])
			}
		} else {
			subtract(row, pivotRow, d)
		}
		s.value[i] = max(0, s.value[i]-float64(d*step))
	}
	for j, p := range pivotRow {
		s.price[j] += float64(rc * p)
	}
	s.value[out], s.basis[out] = step, c
}

// scaled multiplies a row of the inverse and notes which of its places are filled.
func (s *simplex) scaled(out int, by float64) []float64 {
	row := s.inverse[out*s.rows : (out+1)*s.rows]
	s.filled = s.filled[:0]
	for j := range row {
		if row[j] *= by; row[j] != 0 {
			s.filled = append(s.filled, int32(j))
		}
	}
	return row
}

// remake inverts the basis afresh (Gauss-Jordan with row pivoting), so that
// rounding noise does not pile up. Should the basis look singular the old
// inverse stays.
func (s *simplex) remake() {
	n := s.rows
	s.pivots = 0
	work := make([]float64, n*n)
	fresh := make([]float64, n*n)
	for j, c := range s.basis {
		for k, r := range c.row {
			work[int(r)*n+j] = c.val[k]
		}
	}
	for i := range n {
		fresh[i*n+i] = 1
	}
	for col := range n {
		if !eliminate(work, fresh, n, col) {
			return
		}
	}
	s.inverse = fresh
	s.refresh()
}

func subtract(row, from []float64, times float64) {
	for j, v := range from {
		row[j] -= float64(times * v)
	}
}

// total is the cost of the present basis.
func (s *simplex) total() float64 {
	sum := 0.0
	for i, c := range s.basis {
		sum += float64(c.cost * s.value[i])
	}
	return sum
}
