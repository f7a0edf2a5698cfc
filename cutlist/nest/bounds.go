package nest

// quickBound proves a bound on the cost that needs no search: the material, and
// where there is one kind of bar the dual-feasible functions.
func (s *search) quickBound() {
	if s.lacking() {
		s.raise(noPlan)
		return
	}
	if len(s.bars) == 1 && !s.bars[0].offcut {
		d := s.functionDuals()
		s.prove(d.bound(s.start().rest), s.leaf(d))
	}
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

// functionDuals is the best bound over two families of dual-feasible functions
// (Fekete & Schepers 2001), as dual values: a function that never sums to more
// than 1 over pieces that fit one bar bounds the bars by its sum over all
// pieces. With sizes as shares x of the bar:
//
//   - round down: u(x) = x where (k+1)x is whole, else ⌊(k+1)x⌋/k
//   - clear out: 1 above 1−e, x from e to 1−e, 0 below e, for e up to 1/2
//     (the bound L2 of Martello & Toth 1990, 8.3.2)
//
// The material alone is the second with e = 0; of equal bounds it is taken.
func (t task) functionDuals() duals {
	best := t.clearOut(0)
	better := func(f shares) {
		if t.barsBy(f) > t.barsBy(best) {
			best = f
		}
	}
	for k := 1; k <= mostRounds; k++ {
		better(t.roundDown(k))
	}
	for _, e := range t.sizes {
		if 2*e <= t.bars[0].size {
			better(t.clearOut(e))
		}
	}
	return t.priced(best)
}

// shares are what a dual-feasible function gives each size, of the whole.
type shares struct {
	of    []int
	whole int
}

// barsBy is the bound on the bars that shares prove.
func (t task) barsBy(f shares) int {
	sum := 0
	for i, n := range t.want {
		sum += f.of[i] * n
	}
	return ceilDiv(sum, f.whole)
}

// priced turns shares of the bar into its cost.
func (t task) priced(f shares) duals {
	d := newDuals(t)
	for i, share := range f.of {
		d.values[i] = mulDiv(t.bars[0].cost*d.unit, share, f.whole, false)
	}
	return d
}

// mostRounds of the first family: larger ones come ever nearer the material.
const mostRounds = 100

func (t task) roundDown(k int) shares {
	bar := t.bars[0].size
	f := shares{make([]int, len(t.sizes)), k * bar}
	for i, size := range t.sizes {
		if f.of[i] = k * size; (k+1)*size%bar != 0 {
			f.of[i] = (k + 1) * size / bar * bar
		}
	}
	return f
}

func (t task) clearOut(e int) shares {
	bar := t.bars[0].size
	f := shares{make([]int, len(t.sizes)), bar}
	for i, size := range t.sizes {
		switch {
		case size > bar-e:
			f.of[i] = bar
		case size >= e:
			f.of[i] = size
		}
	}
	return f
}
