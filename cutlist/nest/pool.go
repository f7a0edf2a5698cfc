package nest

import "slices"

// pattern is a way to fill a kind of bar: how many of which sizes.
type pattern struct {
	bar    int
	pieces []int32 // indices into task.sizes, rising, each once
	counts []int32
}

// pool keeps the patterns seen so far.
type pool struct {
	list  []pattern
	seen  map[string]int
	table table // scratch of the knapsacks
}

func (p *pool) add(q pattern) int {
	key := make([]byte, 0, 4+6*len(q.pieces))
	key = append(key, byte(q.bar), byte(q.bar>>8))
	for i, piece := range q.pieces {
		key = append(key, byte(piece), byte(piece>>8), byte(q.counts[i]), byte(q.counts[i]>>8))
	}
	if i, ok := p.seen[string(key)]; ok {
		return i
	}
	if p.seen == nil {
		p.seen = map[string]int{}
	}
	p.seen[string(key)] = len(p.list)
	p.list = append(p.list, q)
	return len(p.list) - 1
}

// rest is what is still to cut and which bars are left for it.
type rest struct{ want, left []int }

func (r rest) clone() rest { return rest{slices.Clone(r.want), slices.Clone(r.left)} }

// takes reports whether a pattern can be cut n times.
func (r rest) takes(p pattern, n int) bool {
	if r.left[p.bar] < n {
		return false
	}
	for i, piece := range p.pieces {
		if n*int(p.counts[i]) > r.want[piece] {
			return false
		}
	}
	return true
}

// cut takes a pattern off n times.
func (r rest) cut(p pattern, n int) {
	r.left[p.bar] -= n
	for i, piece := range p.pieces {
		r.want[piece] -= n * int(p.counts[i])
	}
}

func (r rest) done() bool {
	return !slices.ContainsFunc(r.want, func(n int) bool { return n > 0 })
}
