package nest

// table is the best value for every room, row by row; a row takes 1, 2, 4, ...
// copies of one item at once (binary splitting, Martello & Toth 1990, 3.2).
type table struct {
	best []int
	took []bool
}

// byTable is exact and takes steps in proportion to the bar's size.
func (k *knapsack) byTable(size, over int) filling {
	rows := k.split(size)
	if !k.meter.spend(len(rows) * (size + 1)) {
		return filling{most: over}
	}
	k.table.clear(size+1, len(rows))
	for r, row := range rows {
		k.table.add(r, row.size, row.value)
	}
	value := k.table.best[size]
	if value <= over {
		return filling{most: over, exact: true}
	}
	return filling{most: value, finds: [][]int{k.trace(rows, size)}, exact: true}
}

// trace reads the best load of a bar out of the table.
func (k *knapsack) trace(rows []good, size int) []int {
	counts := make([]int, len(k.items))
	room := size
	for r := len(rows) - 1; r >= 0; r-- {
		if k.table.took[r*(size+1)+room] {
			counts[rows[r].piece] += rows[r].most
			room -= rows[r].size
		}
	}
	return counts
}

// split gives the rows; piece is the item's place and most its copies in a row.
func (k *knapsack) split(size int) []good {
	var rows []good
	for i, g := range k.items {
		left := min(g.most, size/g.size)
		for n := 1; left > 0; n *= 2 {
			n = min(n, left)
			rows = append(rows, good{piece: i, size: n * g.size, value: n * g.value, most: n})
			left -= n
		}
	}
	return rows
}

func (t *table) clear(width, rows int) {
	if cap(t.best) < width {
		t.best = make([]int, width)
	}
	t.best = t.best[:width]
	clear(t.best)
	if cap(t.took) < width*rows {
		t.took = make([]bool, width*rows)
	}
	t.took = t.took[:width*rows]
	clear(t.took)
}

func (t *table) add(r, size, value int) {
	took := t.took[r*len(t.best) : (r+1)*len(t.best)]
	for room := len(t.best) - 1; room >= size; room-- {
		if with := t.best[room-size] + value; with > t.best[room] {
			t.best[room], took[room] = with, true
		}
	}
}
