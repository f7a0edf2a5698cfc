package nest_test

import (
	"math/bits"
	"slices"

	"tubewright/cutlist/nest"
)

// table finds the best plan of a small job by a table over all parts of the
// order: best[s] is the least cost, then bars, then the longest remnant, of
// cutting just the pieces of s. It is exact because it leaves nothing out:
//
//   - a row s from unlimited stock alone: the longest piece of s lies on some
//     bar, and every load with that piece is tried there on every such bar;
//   - then one bar after another of those there are few of: it is left, or holds
//     any load at all that fits.
//
// Cost and bars add up; of plans equal in both, the longest remnant of the whole
// is the longer of the two parts', so the best parts make the best whole.
type table struct {
	job     nest.Job
	lengths []int // longest first
	counts  []int
	step    []int  // of a row for one piece of a length
	shift   []int  // of a length's count in packed form
	guards  uint64 // the bit above each count
	packed  []uint64
	first   []int // the longest piece of a row
	best    []verdict
}

// tableLoad is what one bar may hold.
type tableLoad struct {
	step   int
	packed uint64
	first  int
	left   int // worth keeping, else 0
}

// mostRows bounds the table.
const mostRows = 1 << 15

const nowhere = 1 << 50 // uncut: no plan

// bestByTable gives the best plan's figures; false: the job is too large, or its
// pieces do not all fit.
func bestByTable(job nest.Job) (verdict, bool) {
	t := table{job: job}
	if !t.setUp() {
		return verdict{}, false
	}
	t.fromUnlimited()
	for _, b := range job.Stock {
		for range min(b.Most, t.pieces()) {
			t.oneBar(b, t.price(b))
		}
	}
	for _, b := range job.Offcuts {
		for range min(max(1, b.Most), t.pieces()) {
			t.oneBar(b, 0)
		}
	}
	v := t.best[len(t.best)-1]
	return v, v.uncut == 0
}

func (t *table) price(b nest.Bar) int {
	if t.job.Priced() {
		return b.Price
	}
	return 1
}

func (t *table) pieces() int { return countPieces(t.job.Pieces) }

func (t *table) setUp() bool {
	counts := map[int]int{}
	for _, p := range t.job.Pieces {
		counts[p.Length] += p.Count
	}
	for length := range counts {
		t.lengths = append(t.lengths, length)
	}
	slices.SortFunc(t.lengths, func(a, b int) int { return b - a })
	rows, bit := 1, 0
	for _, length := range t.lengths {
		n := counts[length]
		t.counts, t.step, t.shift = append(t.counts, n), append(t.step, rows), append(t.shift, bit)
		rows *= n + 1
		bit += bits.Len(uint(n)) + 1
		if rows > mostRows || bit > 64 {
			return false
		}
		t.guards |= 1 << (bit - 1)
	}
	t.packed, t.first, t.best = make([]uint64, rows), make([]int, rows), make([]verdict, rows)
	for s := range rows {
		t.first[s] = len(t.lengths)
		for i, step := range t.step {
			n := s / step % (t.counts[i] + 1)
			t.packed[s] |= uint64(n) << t.shift[i]
			if n > 0 {
				t.first[s] = min(t.first[s], i)
			}
		}
		t.best[s] = verdict{uncut: nowhere}
	}
	t.best[0] = verdict{}
	return true
}

// loads lists every load that fits a bar, the empty one left out.
func (t *table) loads(b nest.Bar) (list []tableLoad) {
	var add func(i, room int, l tableLoad)
	add = func(i, room int, l tableLoad) {
		if i == len(t.lengths) {
			if l.step > 0 {
				if l.left = max(0, room-t.job.Kerf); l.left < t.job.KeepOver {
					l.left = 0
				}
				list = append(list, l)
			}
			return
		}
		add(i+1, room, l)
		for n := 1; n <= t.counts[i] && n*(t.lengths[i]+t.job.Kerf) <= room; n++ {
			more := l
			if l.step == 0 {
				more.first = i
			}
			more.step += n * t.step[i]
			more.packed |= uint64(n) << t.shift[i]
			add(i+1, room-n*(t.lengths[i]+t.job.Kerf), more)
		}
	}
	add(0, b.Length+t.job.Kerf, tableLoad{})
	return list
}

// within reports whether a row holds all that a load does.
func (t *table) within(l *tableLoad, row int) bool {
	return ((t.packed[row]|t.guards)-l.packed)&t.guards == t.guards
}

func (v verdict) with(price, left int) verdict {
	return verdict{v.uncut, v.cost + price, v.bars + 1, max(v.remnant, left)}
}

// fromUnlimited fills the table with what stock without limit can do.
func (t *table) fromUnlimited() {
	byFirst := make([][]pricedLoad, len(t.lengths)+1)
	for _, b := range t.job.Stock {
		if b.Most == 0 {
			for _, l := range t.loads(b) {
				byFirst[l.first] = append(byFirst[l.first], pricedLoad{l, t.price(b)})
			}
		}
	}
	for s := 1; s < len(t.best); s++ {
		best := t.best[s]
		for i := range byFirst[t.first[s]] {
			l := &byFirst[t.first[s]][i]
			if t.within(&l.tableLoad, s) {
				if v := t.best[s-l.step].with(l.price, l.left); v.better(best) {
					best = v
				}
			}
		}
		t.best[s] = best
	}
}

type pricedLoad struct {
	tableLoad
	price int
}

// oneBar adds a bar that there is once: from the largest row down, so that the
// rows it looks at do not hold it yet.
func (t *table) oneBar(b nest.Bar, price int) {
	loads := t.loads(b)
	for s := len(t.best) - 1; s > 0; s-- {
		best := t.best[s]
		for i := range loads {
			if l := &loads[i]; l.step <= s && t.within(l, s) {
				if v := t.best[s-l.step].with(price, l.left); v.better(best) {
					best = v
				}
			}
		}
		t.best[s] = best
	}
}
