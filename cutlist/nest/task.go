package nest

import (
	"cmp"
	"slices"
)

// task is a job as the search sees it. One kerf is added to every piece and to
// every bar: then n pieces fit a bar exactly when their sum is no more than the
// bar, whatever n is. All lengths are divided by what divides all pieces.
type task struct {
	sizes []int // of the pieces, falling, all different
	want  []int // how many of each
	bars  []bar
	scale int // cost of one hundredth of money; what is left of it counts bars
}

// bar is one kind of bar. Its cost is its price times the task's scale, plus
// one: the cheapest plan then has the fewest bars among those of its price.
type bar struct {
	size, cost int
	most       int  // never more than there are pieces
	limited    bool // most can bind
	offcut     bool
	index      int // in the job's list
}

// load is what is sawn from one bar: how many of each size.
type load struct {
	bar    int   // index into task.bars
	pieces []int // indices into task.sizes, rising: longest first; one for each piece
}

func newTask(j Job) task {
	t := task{scale: maxPieces}
	unit, total := 0, 0
	for _, p := range mergePieces(j.Pieces) {
		unit = gcd(unit, p.Length+j.Kerf)
		t.sizes, t.want = append(t.sizes, p.Length+j.Kerf), append(t.want, p.Count)
		total += p.Count
	}
	for i := range t.sizes {
		t.sizes[i] /= unit
	}
	priced := j.Priced()
	for i, b := range j.Offcuts {
		t.addBar(bar{(b.Length + j.Kerf) / unit, 1, max(1, b.Most), true, true, i}, total)
	}
	for i, b := range j.Stock {
		price := b.Price
		if !priced {
			price = 1
		}
		t.addBar(bar{(b.Length + j.Kerf) / unit, price*t.scale + 1, b.Most, b.Most > 0, false, i}, total)
	}
	return t
}

// addBar takes a bar that holds at least one piece.
func (t *task) addBar(b bar, total int) {
	if b.size < t.sizes[len(t.sizes)-1] {
		return
	}
	if !b.limited || b.most >= total {
		b.most, b.limited = total, false
	}
	t.bars = append(t.bars, b)
}

func (t task) pieces() int {
	n := 0
	for _, w := range t.want {
		n += w
	}
	return n
}

func (t task) used(l load) int {
	sum := 0
	for _, p := range l.pieces {
		sum += t.sizes[p]
	}
	return sum
}

func (t task) cost(plan []load) int {
	sum := 0
	for _, l := range plan {
		sum += t.bars[l.bar].cost
	}
	return sum
}

// left gives for each kind of bar how many a plan leaves.
func (t task) left(plan []load) []int {
	left := make([]int, len(t.bars))
	for i, b := range t.bars {
		left[i] = b.most
	}
	for _, l := range plan {
		left[l.bar]--
	}
	return left
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// result writes a plan in the job's own terms.
func (j Job) result(t task, plan []load) Result {
	r := Result{}
	kinds := mergePieces(j.Pieces)
	for _, l := range plan {
		b := t.bars[l.bar]
		p := Pattern{Count: 1, Offcut: b.offcut, Bar: b.index}
		for _, i := range l.pieces {
			p.Pieces = append(p.Pieces, kinds[i].Length)
		}
		p.Left = j.leftOf(p)
		r.Patterns = append(r.Patterns, p)
		r.count(j, b)
	}
	slices.SortStableFunc(r.Patterns, j.sawingOrder)
	r.Patterns = mergePatterns(r.Patterns)
	return r
}

func (r *Result) count(j Job, b bar) {
	r.Bars++
	if b.offcut {
		return
	}
	r.Bought++
	if j.Priced() {
		r.Cost += j.Stock[b.index].Price
	} else {
		r.Cost++
	}
}

func (j Job) leftOf(p Pattern) int {
	left := j.Length(p)
	for _, l := range p.Pieces {
		left -= l + j.Kerf
	}
	return max(0, left)
}

// sawingOrder puts offcuts first, then the bar with the longest pieces, then
// the shorter bar.
func (j Job) sawingOrder(a, b Pattern) int {
	if a.Offcut != b.Offcut {
		if a.Offcut {
			return -1
		}
		return 1
	}
	return cmp.Or(slices.Compare(b.Pieces, a.Pieces), cmp.Compare(j.Length(a), j.Length(b)), cmp.Compare(a.Bar, b.Bar))
}

func mergePatterns(sorted []Pattern) []Pattern {
	merged := sorted[:0]
	for _, p := range sorted {
		n := len(merged)
		if n > 0 && merged[n-1].Bar == p.Bar && merged[n-1].Offcut == p.Offcut && slices.Equal(merged[n-1].Pieces, p.Pieces) {
			merged[n-1].Count++
		} else {
			merged = append(merged, p)
		}
	}
	return merged
}
