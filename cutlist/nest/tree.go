package nest

import (
	"math"
	"slices"
)

// tree is a branch and price search: a plan no heavier than aim, or the proof
// that there is none. One linear program serves all nodes, which differ by what
// its columns cost: those a node forbids cost too much.
//
// Relaxation: Gilmore & Gomory, A linear programming approach to the
// cutting-stock problem, Operations Research 9 (1961) and 11 (1963). Branching
// on two pieces in one bar or not: Ryan & Foster, An integer programming
// approach to scheduling, in Wren (ed.), 1981; for pieces wanted more than once
// by a union of one of each: R. F. F. da Silva & R. C. S. Schouery, Solving
// cutting stock problems via an extended Ryan-Foster branching scheme and fast
// column generation, arXiv 2308.03595 (2023). All from memory.
type tree struct {
	*search
	lp             *program
	known, gainers []*column
	lack           []*column // for each row: what is missing of it
	kinds          []kind
	limits         []int     // row of each kind of bar; below 0: none
	right          []float64 // of the rows, not nudged
	exact          []bool    // rows that may not be passed
	centre         []float64 // prices of the best bound of this node
	centreSum      int       // that bound, fixed point
	idle           []int32   // rows of no union at present
	pricer         pricer
	aim            int
	parted         int // pairs kept apart
	waste          int // most that a load may leave; single kind of bar only
	unit           int
	dear           float64
	mark           []int32 // scratch: counts of a column
	prices         []float64
	times          []float64 // of the basic columns, for right sides that are not nudged
	begun          int       // steps of the meter at first
	smooth         bool      // there is a centre
}

// kind is one kind of piece: a size of the task or a union of two.
type kind struct {
	size, count int
	rows        []int32 // of the program in which a piece of it counts
	apart       []int32
	a, b        int32 // a union's parts
	own         bool  // the last row is its own
}

const (
	// nudge moves right sides apart so that pivots make progress (Charnes 1952,
	// perturbation); values it disturbs are only guides, bounds use true demands.
	nudge = 1e-6
	// lackCost is what a missing piece costs in dearest bars, mostLacking the most
	// it is raised to; aboveShare is how much more than its share of the material it
	// costs at first. No bound rests on them.
	lackCost    = 8
	mostLacking = 128
	aboveShare  = 1.01
)

func (s *search) newTree() *tree {
	t := &tree{search: s, lp: &program{gain: gain}, limits: slices.Repeat([]int{-1}, len(s.bars)), waste: math.MaxInt, begun: s.meter.steps}
	t.pricer.meter = s.meter
	for _, b := range s.bars {
		t.dear = max(t.dear, float64(b.cost))
	}
	t.dear = max(t.dear, 1)
	t.unit = newDuals(s.task).unit
	if len(s.bars) > 1 {
		t.lp.gain = fineGain
	}
	t.addPieces()
	t.addLimits()
	return t
}

// addPieces makes a row for each size, with what is missing in it at little more
// than its share of the material at first: so the prices start near where they
// end, and only what is worth more pulls them away (du Merle et al., Stabilized
// column generation, Discrete Mathematics 194 (1999), the idea). dearer raises it.
func (t *tree) addPieces() {
	for i, size := range t.sizes {
		share := float64(lackCost)
		for _, b := range t.bars {
			if b.cost > 0 && b.size >= size {
				share = min(share, float64(b.cost)/t.dear*float64(size)/float64(b.size))
			}
		}
		t.kinds = append(t.kinds, kind{size: size, count: t.want[i], rows: []int32{int32(i)}})
		t.newRow(float64(t.want[i]), min(lackCost, share*aboveShare), false)
	}
}

// nudged is how far a right side is moved.
func (t *tree) nudged() float64 {
	return float64(nudge * (0.5 + float64((t.lp.rows*2654435761)%1024)/1024))
}

// newRow adds a row with columns for what is missing and what is too much.
func (t *tree) newRow(right, cost float64, exact bool) {
	at := []int32{int32(t.lp.rows)}
	lack := &column{cost: cost, full: cost, row: at, val: []float64{1}, bar: -1}
	t.lp.addRow(right+t.nudged(), lack)
	t.right = append(t.right, right)
	t.lack = append(t.lack, lack)
	t.known = append(t.known, lack)
	if !exact {
		t.known = append(t.known, &column{row: at, val: []float64{-1}, bar: -1})
	}
	t.exact = append(t.exact, exact)
}

func (t *tree) addLimits() {
	for b, kind := range t.bars {
		if kind.limited {
			t.limits[b] = t.lp.rows
			spare := &column{row: []int32{int32(t.lp.rows)}, val: []float64{1}, bar: -1}
			t.lp.addRow(float64(kind.most), spare)
			t.right = append(t.right, float64(kind.most))
			t.lack, t.exact = append(t.lack, nil), append(t.exact, true)
			t.known = append(t.known, spare)
		}
	}
}

// load makes the column of a load.
func (t *tree) load(bar int, kinds, counts []int32) *column {
	c := &column{bar: bar, kinds: kinds, counts: counts, full: float64(t.bars[bar].cost) / t.dear}
	c.cost = c.full
	for i, k := range kinds {
		for _, r := range t.kinds[k].rows {
			c.fill(r, float64(counts[i]))
		}
	}
	if r := t.limits[bar]; r >= 0 {
		c.fill(int32(r), 1)
	}
	return c
}

func (c *column) fill(row int32, val float64) {
	if i := slices.Index(c.row, row); i >= 0 {
		c.val[i] += val
		return
	}
	c.row, c.val = append(c.row, row), append(c.val, val)
}
