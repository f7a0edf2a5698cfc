package clear

import "math"

// queue gives tiles back in the order of their bounds: a binary heap.
type queue struct {
	tiles []tile
	bound []float64
}

func (q *queue) push(t tile, bound float64) {
	q.tiles, q.bound = append(q.tiles, t), append(q.bound, bound)
	for i := len(q.tiles) - 1; i > 0 && q.bound[i] < q.bound[(i-1)/2]; i = (i - 1) / 2 {
		q.swap(i, (i-1)/2)
	}
}

// pop takes the tile of the least bound out; an empty queue gives an infinite one.
func (q *queue) pop() (tile, float64) {
	n := len(q.tiles) - 1
	if n < 0 {
		return tile{}, math.Inf(1)
	}
	t, bound := q.tiles[0], q.bound[0]
	q.swap(0, n)
	q.tiles, q.bound = q.tiles[:n], q.bound[:n]
	for i := 0; ; {
		least := i
		for _, c := range [2]int{2*i + 1, 2*i + 2} {
			if c < n && q.bound[c] < q.bound[least] {
				least = c
			}
		}
		if least == i {
			return t, bound
		}
		q.swap(i, least)
		i = least
	}
}

func (q *queue) swap(i, j int) {
	q.tiles[i], q.tiles[j] = q.tiles[j], q.tiles[i]
	q.bound[i], q.bound[j] = q.bound[j], q.bound[i]
}
