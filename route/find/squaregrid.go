package find

import (
	"math"
	"slices"
)

// lattice is the coordinates that matter along each axis, in rising order.
type lattice [3][]float64

const (
	// sameLine is how close two coordinates may be and still be one, mm: less
	// than any tube could be told apart by.
	sameLine = 1e-6
	// mostLines bounds the coordinates along one axis.
	mostLines = 40
)

func (l *lattice) add(axis int, x float64) {
	i, found := slices.BinarySearchFunc(l[axis], x, func(have, want float64) int {
		switch {
		case math.Abs(have-want) <= sameLine:
			return 0
		case have < want:
			return -1
		}
		return 1
	})
	if !found && len(l[axis]) < mostLines {
		l[axis] = slices.Insert(l[axis], i, x)
	}
}

func (l *lattice) addPoint(p vec) {
	for i := range 3 {
		l.add(i, p[i])
	}
}

// index finds a coordinate; −1 when it is not there.
func (l *lattice) index(axis int, x float64) int {
	for i, have := range l[axis] {
		if math.Abs(have-x) <= sameLine {
			return i
		}
	}
	return -1
}

// node is a crossing of the lattice.
type node [3]int

func (l *lattice) at(n node) vec { return vec{l[0][n[0]], l[1][n[1]], l[2][n[2]]} }

// find gives the crossing at a point.
func (l *lattice) find(p vec) (node, bool) {
	n := node{l.index(0, p[0]), l.index(1, p[1]), l.index(2, p[2])}
	return n, n[0] >= 0 && n[1] >= 0 && n[2] >= 0
}

// lines fills the lattice with what hangs on the ends, the via points and the case.
func (q *quest) lines() {
	r, jog := q.radius, 2*q.radius+q.between
	for _, e := range []*rayEnd{&q.start, &q.end} {
		q.grid.addPoint(e.ray.at)
		q.endLines(e)
		for i := range 3 {
			q.grid.add(i, e.ray.at[i]+jog)
			q.grid.add(i, e.ray.at[i]-jog)
		}
	}
	for _, v := range q.via {
		q.grid.addPoint(v)
		for i := range 3 {
			for _, d := range []float64{jog, -jog, q.leastEnd + r, -q.leastEnd - r} {
				q.grid.add(i, v[i]+d)
			}
		}
	}
	if q.room.boxed {
		for i := range 3 {
			q.grid.add(i, q.room.lo[i])
			q.grid.add(i, q.room.hi[i])
		}
	}
}

// endLines adds where a ray's first bend can stand.
func (q *quest) endLines(e *rayEnd) {
	if e.axis >= 0 {
		q.grid.addPoint(e.ray.ahead(q.leastEnd + q.radius))
		return
	}
	for _, s := range q.stands(e) {
		q.grid.addPoint(e.ray.ahead(s))
	}
}

// lineUp adds the coordinates at which a tube passes a solid: just clear of
// each face, far enough that a bend round its edge is clear as well, and where
// the bend begins past the edge.
func (q *quest) lineUp(w *wall) {
	for _, d := range q.passing(w) {
		for i := range 3 {
			for _, x := range []float64{w.lo[i] - d, w.hi[i] + d} {
				if !q.room.boxed || x >= q.room.lo[i]-sameLine && x <= q.room.hi[i]+sameLine {
					q.grid.add(i, x)
				}
			}
		}
	}
}

// passing lists the distances of a centreline from a face, for a tube that must
// keep this far away. A bend of radius r round an edge, both of whose legs pass
// at s, comes r − (r−s)·√2 near to it; s is chosen so that this is keep. Round
// things have no such edges.
func (q *quest) passing(w *wall) []float64 {
	list := []float64{w.keep}
	if w.upright && q.radius > w.keep {
		list = append(list, q.radius-(q.radius-w.keep)/math.Sqrt2+sameLine, q.radius)
	}
	return list
}
