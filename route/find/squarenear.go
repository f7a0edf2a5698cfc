package find

// nearSpare is how much farther than its own gap a wall is kept in mind, mm: a
// corner stands on its lattice lines to within sameLine.
const nearSpare = 1e-4

// nearBy remembers which walls may matter on each line and at each crossing of
// a lattice. Most walls are far from most lines, and a search asks about each
// line once for every crossing on it.
type nearBy struct {
	all   []int32
	lines [3]map[[2]int][]int32
	nodes map[node][]int32
}

// forget empties the memory: the lattice is another.
func (b *nearBy) forget() {
	for i := range b.lines {
		b.lines[i] = map[[2]int][]int32{}
	}
	b.nodes = map[node][]int32{}
}

// allWalls numbers the walls.
func (q *quest) allWalls() []int32 {
	if len(q.near.all) != len(q.walls) {
		q.near.all = make([]int32, len(q.walls))
		for i := range q.near.all {
			q.near.all[i] = int32(i)
		}
	}
	return q.near.all
}

// nearLine lists the walls that the lattice line through a crossing along an
// axis may come too near to, in their order.
func (q *quest) nearLine(n node, axis int) []int32 {
	u, v := (axis+1)%3, (axis+2)%3
	key := [2]int{n[u], n[v]}
	list, known := q.near.lines[axis][key]
	if !known {
		at := q.grid.at(n)
		for i := range q.walls {
			if w := &q.walls[i]; w.reaches(at, u, 0) && w.reaches(at, v, 0) {
				list = append(list, int32(i))
			}
		}
		q.near.lines[axis][key] = list
	}
	return list
}

// nearNode lists the walls that a bend at a crossing may come too near to, in
// their order.
func (q *quest) nearNode(n node) []int32 {
	list, known := q.near.nodes[n]
	if !known {
		at := q.grid.at(n)
		for i := range q.walls {
			w := &q.walls[i]
			if w.reaches(at, 0, q.radius) && w.reaches(at, 1, q.radius) && w.reaches(at, 2, q.radius) {
				list = append(list, int32(i))
			}
		}
		q.near.nodes[n] = list
	}
	return list
}

// reaches reports whether what lies within a distance of a point along an axis
// may come too near to the wall, as far as that axis can tell.
func (w *wall) reaches(at vec, axis int, within float64) bool {
	far := within + w.keep + nearSpare
	return w.lo[axis]-at[axis] < far && at[axis]-w.hi[axis] < far
}
