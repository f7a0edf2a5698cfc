package nest

// quickBound is a bound on the cost that needs no search: the material, and
// where there is one kind of bar the dual-feasible functions.
func (s *search) quickBound() int {
	if s.lacking() {
		return noPlan
	}
	bound := 0
	if len(s.bars) == 1 && !s.bars[0].offcut {
		bound = s.bars[0].cost * max(s.materialBars(), s.functionBars())
	}
	return bound
}

// lacking reports that all bars together are shorter than the material.
func (t task) lacking() bool {
	need := 0
	for i, size := range t.sizes {
		need += size * t.want[i]
	}
	for _, b := range t.bars {
		if !b.limited {
			return false
		}
		need -= b.size * b.most
	}
	return need > 0
}

// materialBars is the material over the bar, rounded up: the simplest bound.
func (t task) materialBars() int {
	sum := 0
	for i, size := range t.sizes {
		sum += size * t.want[i]
	}
	return ceilDiv(sum, t.bars[0].size)
}

// functionBars is the best bound over two families of dual-feasible functions
// (Fekete & Schepers 2001): a function that never sums to more than 1 over
// pieces that fit one bar bounds the bars by its sum over all pieces. With
// sizes as shares x of the bar:
//
//   - round down: u(x) = x where (k+1)x is whole, else ⌊(k+1)x⌋/k
//   - clear out: 1 above 1−e, x from e to 1−e, 0 below e, for e up to 1/2
//     (the bound L2 of Martello & Toth 1990, 8.3.2)
func (t task) functionBars() int {
	best := 0
	for k := 1; k <= mostRounds; k++ {
		best = max(best, t.roundDown(k))
	}
	for _, e := range t.sizes {
		if 2*e <= t.bars[0].size {
			best = max(best, t.clearOut(e))
		}
	}
	return best
}

// mostRounds of the first family: larger ones come ever nearer the material.
const mostRounds = 100

func (t task) roundDown(k int) int {
	sum, bar := 0, t.bars[0].size // in shares of k·bar
	for i, size := range t.sizes {
		share := k * size
		if (k+1)*size%bar != 0 {
			share = (k + 1) * size / bar * bar
		}
		sum += share * t.want[i]
	}
	return ceilDiv(sum, k*bar)
}

func (t task) clearOut(e int) int {
	sum, bar := 0, t.bars[0].size
	for i, size := range t.sizes {
		switch {
		case size > bar-e:
			sum += bar * t.want[i]
		case size >= e:
			sum += size * t.want[i]
		}
	}
	return ceilDiv(sum, bar)
}
