package find

// entry is one place in the queue: a label, or below 0 a home, −1 − its place.
type entry struct {
	total int64 // cost so far and least cost to come
	cost  int64
	label int32
	seq   int32
}

// frontier is a binary heap of entries, the most promising first.
type frontier []entry

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
	h := append(*f, e)
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
	*f = h
}

func (f *frontier) pop() entry {
	h := *f
	first, last := h[0], h[len(h)-1]
	h = h[:len(h)-1]
	*f = h
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
