package find

// entry is one place in the queue: a label, or below 0 a home, −1 − its place.
type entry struct {
	total int64 // cost so far and least cost to come
	cost  int64
	label int32
	seq   int32
}

// frontier is a queue of entries, the most promising first. The first stands by
// itself before a binary heap of the others: mostly what a step opens is gone on
// from at once, and then no heap is stirred.
type frontier struct {
	first entry // where any is true
	any   bool
	rest  []entry
}

func (f *frontier) clear() { f.any, f.rest = false, f.rest[:0] }

func (f *frontier) len() int {
	if f.any {
		return len(f.rest) + 1
	}
	return len(f.rest)
}

// before orders by total, then by the most already spent, then by age: all in
// whole steps, so that no order hangs on a last bit.
func (a *entry) before(b *entry) bool {
	if a.total != b.total {
		return a.total < b.total
	}
	if a.cost != b.cost {
		return a.cost > b.cost
	}
	return a.seq < b.seq
}

func (f *frontier) push(e entry) {
	switch {
	case !f.any && (len(f.rest) == 0 || e.before(&f.rest[0])):
		f.first, f.any = e, true
		return
	case f.any && e.before(&f.first):
		e, f.first = f.first, e
	}
	f.sink(e)
}

// sink puts an entry into the heap.
func (f *frontier) sink(e entry) {
	h := append(f.rest, e)
	i := len(h) - 1
	for i > 0 {
		up := (i - 1) / 2
		if !e.before(&h[up]) {
			break
		}
		h[i] = h[up]
		i = up
	}
	h[i] = e
	f.rest = h
}

// pop takes the first out.
func (f *frontier) pop() entry {
	if f.any {
		f.any = false
		return f.first
	}
	h := f.rest
	first, last := h[0], h[len(h)-1]
	h = h[:len(h)-1]
	f.rest = h
	i := 0
	for {
		down := 2*i + 1
		if down >= len(h) {
			break
		}
		if down+1 < len(h) && h[down+1].before(&h[down]) {
			down++
		}
		if !h[down].before(&last) {
			break
		}
		h[i] = h[down]
		i = down
	}
	if len(h) > 0 {
		h[i] = last
	}
	return first
}
