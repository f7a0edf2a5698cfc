package nest

import "math"

// program is a linear program of the kind column generation needs: least Σ c·x
// over columns x ≥ 0 so that each row's sum is its right side. It keeps the
// inverse of the basis as a full square (revised simplex method, Dantzig & Orden
// 1954; Chvátal, Linear Programming, 1983, chapter 7; both from memory).
//
// Costs of columns may change between pivots, and rows may be added: the basis
// stays one. So one program serves a whole tree of nodes.
//
// Products are rounded before they are added (float64(a*b)), so that no
// processor fuses the two and every machine takes the same path.
type program struct {
	rows    int
	gain    float64 // least reduced cost worth a pivot
	right   []float64
	inverse []float64 // wide × wide, of which rows × rows are used
	wide    int
	basis   []*column
	value   []float64 // of the basic columns
	price   []float64 // dual value of each row
	pivots  int       // since the inverse was made afresh
	dir     []float64 // scratch: the entering column in terms of the basis
	filled  []int32   // scratch: where the pivot row is not 0
}

// column is a sparse column of the program.
type column struct {
	cost  float64
	row   []int32
	val   []float64
	basic bool

	pattern int // of the pool, where the relaxation takes its loads from; below 0: none

	full   float64 // cost where the column may be used
	bar    int     // kind of bar; below 0: no load
	kinds  []int32 // of piece in the load, rising
	counts []int32
	dead   bool // not to be used any more
}

const (
	// tiny is the least pivot: smaller ones blow up rounding noise.
	tiny = 1e-9
	// gain is the least reduced cost worth a pivot, where the dearest bar costs 1.
	gain = 1e-9
	// fineGain is that where costs differ by little: by one bar in price.
	fineGain = 1e-11
)

// addRow adds a row whose only entry is in a new basic column.
func (p *program) addRow(right float64, c *column) {
	if p.rows == p.wide {
		p.widen(max(16, 2*p.wide))
	}
	n := p.rows
	p.rows++
	p.inverse[n*p.wide+n] = 1 / c.val[0]
	p.right, p.value = append(p.right, right), append(p.value, right/c.val[0])
	p.price, p.dir = append(p.price, c.cost/c.val[0]), append(p.dir, 0)
	p.basis, c.basic = append(p.basis, c), true
}

// widen makes place for more rows.
func (p *program) widen(wide int) {
	inverse := make([]float64, wide*wide)
	for i := range p.rows {
		copy(inverse[i*wide:], p.line(i))
	}
	p.inverse, p.wide = inverse, wide
}

// refresh computes values and prices from the inverse.
func (p *program) refresh() {
	for i := range p.rows {
		sum := 0.0
		for j, v := range p.line(i) {
			sum += float64(v * p.right[j])
		}
		p.value[i] = max(0, sum)
	}
	p.reprice()
}

// reprice computes the prices after costs have changed.
func (p *program) reprice() {
	clear(p.price)
	for i, c := range p.basis {
		if c.cost != 0 {
			add(p.price, p.line(i), c.cost)
		}
	}
}

func (p *program) line(i int) []float64 { return p.inverse[i*p.wide : i*p.wide+p.rows] }

// reduced is what one unit of a column saves, as a cost: below 0 is a gain.
func (p *program) reduced(c *column) float64 {
	cost := c.cost
	for k, r := range c.row {
		cost -= float64(p.price[r] * c.val[k])
	}
	return cost
}

// enter brings a column into the basis. It reports false when the column
// cannot enter: the program would be without a bound, or the pivot too small.
func (p *program) enter(c *column) bool {
	p.direction(c)
	out := p.leaving()
	if out < 0 {
		return false
	}
	p.pivot(out, c)
	if p.pivots++; p.pivots > max(100, p.rows) {
		p.remake()
	}
	return true
}

func (p *program) direction(c *column) {
	clear(p.dir)
	for k, r := range c.row {
		v := c.val[k]
		at := int(r)
		for i := range p.dir {
			p.dir[i] += float64(p.inverse[at] * v)
			at += p.wide
		}
	}
}

// leaving is the ratio test: the basic column that falls to 0 first; among
// those that tie, the one with the largest pivot.
func (p *program) leaving() int {
	out, least := -1, math.Inf(1)
	for i, d := range p.dir {
		if d < tiny {
			continue
		}
		ratio := p.value[i] / d
		if ratio < least-tiny || ratio < least+tiny && (out < 0 || d > p.dir[out]) {
			out, least = i, min(least, ratio)
		}
	}
	return out
}

// pivot puts a column in the place of a basic one and brings inverse, values
// and prices up to date.
func (p *program) pivot(out int, c *column) {
	rc := p.reduced(c)
	by := 1 / p.dir[out]
	step := p.value[out] * by
	row := p.scaled(out, by)
	sparse := 2*len(p.filled) < p.rows
	for i, d := range p.dir {
		if i == out || d == 0 {
			continue
		}
		line := p.line(i)
		if sparse {
			for _, j := range p.filled {
				line[j] -= float64(d * row[j])
			}
		} else {
			add(line, row, -d)
		}
		p.value[i] = max(0, p.value[i]-float64(d*step))
	}
	add(p.price, row, rc)
	p.value[out] = step
	p.basis[out].basic, c.basic = false, true
	p.basis[out] = c
}

// scaled multiplies a row of the inverse and notes which of its places are filled.
func (p *program) scaled(out int, by float64) []float64 {
	row := p.line(out)
	p.filled = p.filled[:0]
	for j := range row {
		if row[j] *= by; row[j] != 0 {
			p.filled = append(p.filled, int32(j))
		}
	}
	return row
}

// remake inverts the basis afresh (Gauss-Jordan with row pivoting), so that
// rounding noise does not pile up. Should the basis look singular the old
// inverse stays.
func (p *program) remake() {
	n := p.rows
	p.pivots = 0
	work, fresh := make([]float64, n*n), make([]float64, n*n)
	for j, c := range p.basis {
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
	for i := range n {
		copy(p.line(i), fresh[i*n:(i+1)*n])
	}
	p.refresh()
}

func eliminate(work, fresh []float64, n, col int) bool {
	best := col
	for i := col + 1; i < n; i++ {
		if math.Abs(work[i*n+col]) > math.Abs(work[best*n+col]) {
			best = i
		}
	}
	if math.Abs(work[best*n+col]) < tiny {
		return false
	}
	swapRows(work, n, col, best)
	swapRows(fresh, n, col, best)
	by := 1 / work[col*n+col]
	w, f := work[col*n:(col+1)*n], fresh[col*n:(col+1)*n]
	for j := range n {
		w[j] *= by
		f[j] *= by
	}
	for i := range n {
		if d := work[i*n+col]; i != col && d != 0 {
			add(work[i*n+col:(i+1)*n], w[col:], -d)
			add(fresh[i*n:(i+1)*n], f, -d)
		}
	}
	return true
}

// add adds a multiple of a row to another of the same length.
func add(row, other []float64, times float64) {
	other = other[:len(row)]
	for j := range row {
		row[j] += float64(times * other[j])
	}
}

func swapRows(m []float64, n, a, b int) {
	if a == b {
		return
	}
	for j := range n {
		m[a*n+j], m[b*n+j] = m[b*n+j], m[a*n+j]
	}
}

// total is the cost of the present basis.
func (p *program) total() float64 {
	sum := 0.0
	for i, c := range p.basis {
		sum += float64(c.cost * p.value[i])
	}
	return sum
}
