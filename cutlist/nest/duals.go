package nest

import "math/bits"

// takeBound keeps the best bound that dual values prove; worth is what no load
// of a bar exceeds. Values are shrunk by θ ≤ 1 until no load of an unlimited
// bar is worth more than the bar costs (Farley 1990).
func (g *master) takeBound(values, worth []int) {
	num, den := 1, 1
	for b, kind := range g.bars {
		if cost := kind.cost * g.unit; !kind.limited && worth[b] > cost && mulLess(cost, den, num, worth[b]) {
			num, den = cost, worth[b]
		}
	}
	d := duals{unit: g.unit, values: make([]int, len(values)), over: make([]int, len(g.bars))}
	for i, v := range values {
		d.values[i] = mulDiv(v, num, den, false)
	}
	for b, kind := range g.bars {
		if g.r.left[b] > 0 {
			d.over[b] = max(0, mulDiv(worth[b], num, den, true)-kind.cost*g.unit)
		}
	}
	if bound := d.bound(g.r); bound >= g.result.bound {
		g.result.bound, g.result.duals = bound, d
	}
}

// duals prove a lower bound for any rest whose bars are among those they were
// made for: a plan costs at least what its pieces are worth, less what loads of
// limited bars may be worth beyond their cost:
//
//	Σ want·value − Σ left·over
//
// All in whole numbers, rounded to the safe side.
type duals struct {
	unit   int   // fixed point: one unit of cost
	values []int // of each size
	over   []int // of each kind of bar: 0 for unlimited ones
}

// fixedBits of fixed point hold the dearest bar's cost; with at most 2^14 pieces
// and prices of up to mostLacking times that cost, sums stay below 2^63.
const fixedBits = 40

// newDuals proves nothing yet.
func newDuals(t task) duals {
	dear := 1
	for _, b := range t.bars {
		dear = max(dear, b.cost)
	}
	unit := 1 << max(0, fixedBits-bits.Len(uint(dear)))
	return duals{unit, make([]int, len(t.sizes)), make([]int, len(t.bars))}
}

func (d duals) bound(r rest) int {
	sum, _ := d.sum(r)
	return ceilDiv(sum, d.unit)
}

// sum is the bound in fixed point; below 0 it proves nothing, but what a load
// changes of it still counts. It reports false where it leaves the range.
func (d duals) sum(r rest) (int, bool) {
	sum := 0
	for i, n := range r.want {
		sum += n * d.values[i]
	}
	for b, n := range r.left {
		if n > 0 && d.over[b] > 0 {
			if d.over[b] > mostSum/n || sum < -mostSum {
				return 0, false
			}
			sum -= d.over[b] * n
		}
	}
	return sum, true
}

// mostSum keeps sums of fixed-point values well inside 64 bits.
const mostSum = 1 << 60

// mulDiv is a·num/den without overflow on the way, rounded down or up; all are
// 0 or more and num ≤ den.
func mulDiv(a, num, den int, up bool) int {
	hi, lo := bits.Mul64(uint64(a), uint64(num))
	q, r := bits.Div64(hi, lo, uint64(den))
	if up && r > 0 {
		q++
	}
	return int(q)
}

// mulLess reports a·b < c·d without overflow.
func mulLess(a, b, c, d int) bool {
	h1, l1 := bits.Mul64(uint64(a), uint64(b))
	h2, l2 := bits.Mul64(uint64(c), uint64(d))
	return h1 < h2 || h1 == h2 && l1 < l2
}

func ceilDiv(a, b int) int {
	if a <= 0 {
		return 0
	}
	return (a + b - 1) / b
}
