package find

import (
	"cmp"
	"slices"
)

// cheapestPairs keeps the cheapest of many pairs of chains, of equal ones those
// that came first: a heap with the dearest on top, so that most pairs are turned
// down at one look.
type cheapestPairs struct {
	most int
	seq  int
	heap []rankedPair
}

type rankedPair struct {
	key  int64
	seq  int
	pair chainPair
}

func (a *rankedPair) compare(b *rankedPair) int {
	return cmp.Or(cmp.Compare(a.key, b.key), cmp.Compare(a.seq, b.seq))
}

// wants reports whether a pair of this cost would be kept.
func (c *cheapestPairs) wants(key int64) bool { return len(c.heap) < c.most || key < c.heap[0].key }

// add keeps a pair that is wanted.
func (c *cheapestPairs) add(p chainPair, key int64) {
	c.seq++
	r := rankedPair{key, c.seq, p}
	if len(c.heap) < c.most {
		c.heap = append(c.heap, r)
		c.rise(len(c.heap) - 1)
		return
	}
	c.heap[0] = r
	c.sink(0)
}

func (c *cheapestPairs) rise(i int) {
	for up := (i - 1) / 2; i > 0 && c.heap[up].compare(&c.heap[i]) < 0; up = (i - 1) / 2 {
		c.heap[up], c.heap[i] = c.heap[i], c.heap[up]
		i = up
	}
}

func (c *cheapestPairs) sink(i int) {
	for {
		down := 2*i + 1
		if down >= len(c.heap) {
			return
		}
		if down+1 < len(c.heap) && c.heap[down].compare(&c.heap[down+1]) < 0 {
			down++
		}
		if c.heap[down].compare(&c.heap[i]) < 0 {
			return
		}
		c.heap[down], c.heap[i] = c.heap[i], c.heap[down]
		i = down
	}
}

// inOrder gives the pairs kept, the cheapest first.
func (c *cheapestPairs) inOrder() []chainPair {
	slices.SortFunc(c.heap, func(a, b rankedPair) int { return a.compare(&b) })
	list := make([]chainPair, len(c.heap))
	for i, r := range c.heap {
		list[i] = r.pair
	}
	return list
}
