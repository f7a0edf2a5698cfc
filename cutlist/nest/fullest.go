package nest

import "slices"

// fullest gives a plan that fills bar after bar: each takes the longest piece
// left and then whatever fills it best (minimum bin slack with the longest
// piece fixed: Gupta & Ho 1999; Fleszar & Hindi 2002). Of several kinds of bar
// the one that costs least for what it takes is cut. There may be none: limits.
func (s *search) fullest() ([]load, bool) {
	var plan []load
	r := s.start().rest
	for first := range s.sizes {
		for r.want[first] > 0 {
			p, ok := s.fullestLoad(r, first)
			if !ok {
				return nil, false
			}
			r.cut(p, 1)
			plan = append(plan, p.load())
		}
	}
	return s.cheaper(plan), true
}

func (s *search) fullestLoad(r rest, first int) (best pattern, ok bool) {
	taken := 0
	for b, kind := range s.bars {
		if r.left[b] < 1 || kind.size < s.sizes[first] {
			continue
		}
		p := s.fillAfter(r, first, b)
		size := s.size(p)
		if !ok || mulLess(kind.cost, taken, s.bars[best.bar].cost, size) {
			best, taken, ok = p, size, true
		}
	}
	return best, ok
}

func (t task) size(p pattern) int {
	sum := 0
	for i, piece := range p.pieces {
		sum += t.sizes[piece] * int(p.counts[i])
	}
	return sum
}

// fillAfter fills a bar that holds the first piece as full as a short search can.
func (s *search) fillAfter(r rest, first, b int) pattern {
	r = r.clone()
	r.want[first]--
	room := s.bars[b].size - s.sizes[first]
	k := newKnapsack(s.task, r.want, s.sizes, s.meter, &s.pool.table)
	counts := make([]int, len(k.items))
	if f := k.byDepth(room, 0, fullestSteps, room); len(f.finds) > 0 {
		counts = f.finds[len(f.finds)-1]
	}
	k.items = append(k.items, good{piece: first})
	p := toPattern(b, k, append(slices.Clone(counts), 1))
	return p.merged()
}

// fullestSteps of searching for each bar.
const fullestSteps = 100_000

// merged adds up a size that is listed twice in a row.
func (p pattern) merged() pattern {
	for i := 1; i < len(p.pieces); i++ {
		if p.pieces[i] == p.pieces[i-1] {
			p.counts[i-1] += p.counts[i]
			p.pieces, p.counts = slices.Delete(p.pieces, i, i+1), slices.Delete(p.counts, i, i+1)
		}
	}
	return p
}
