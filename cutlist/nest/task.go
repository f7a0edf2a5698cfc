package nest

import (
	"cmp"
	"slices"
)

// task is a job as the search sees it. One kerf is added to every piece and to
// every bar: then n pieces fit a bar exactly when their sum is no more than the
// bar, whatever n is. All lengths are divided by what divides all pieces.
type task struct {
	sizes           []int // of the pieces, falling, all different
	want            []int // how many of each
	bars            []bar
	unit            int // what lengths were divided by
	stocks, sources int // bars of the job: in its stock, in all
	scale           int // cost of one hundredth of money; more than any number of bars, which the rest counts
}

// bar is one kind of bar. Its cost is its price times the task's scale, plus
// one: the cheapest plan then has the fewest bars among those of its price.
type bar struct {
	size, cost int
	length     int  // as the job gives it
	most       int  // never more than there are pieces
	limited    bool // most can bind
	offcut     bool
	from       []source
}

// source says which bars of the job's list stand behind a kind of bar.
type source struct{ index, most int }

// load is what is sawn from one bar: how many of each size.
type load struct {
	bar    int   // index into task.bars
	pieces []int // indices into task.sizes, rising: longest first; one for each piece
}

func newTask(j Job) task {
	t := task{stocks: len(j.Stock), sources: len(j.Stock) + len(j.Offcuts)}
	t.addPieces(j)
	total := t.pieces()
	t.scale = total + 1
	t.addOffcuts(j, total)
	t.addStock(j, total)
	for b, kind := range t.bars {
		if kind.most >= total {
			t.bars[b].most, t.bars[b].limited = total, false
		}
	}
	return t
}

// addPieces takes the sizes and settles what lengths are divided by.
func (t *task) addPieces(j Job) {
	for _, p := range mergePieces(j.Pieces) {
		t.unit = gcd(t.unit, p.Length+j.Kerf)
		t.sizes, t.want = append(t.sizes, p.Length+j.Kerf), append(t.want, p.Count)
	}
	for i := range t.sizes {
		t.sizes[i] /= t.unit
	}
}

func (t *task) addOffcuts(j Job, total int) {
	for i, b := range j.Offcuts {
		most := max(1, b.Most)
		t.addBar(bar{(b.Length + j.Kerf) / t.unit, 1, b.Length, most, true, true, []source{{i, most}}}, total)
	}
}

func (t *task) addStock(j Job, total int) {
	priced := j.Priced()
	for i, b := range j.Stock {
		price, most := b.Price, b.Most
		if !priced {
			price = 1
		}
		if most == 0 {
			most = total
		}
		t.addBar(bar{(b.Length + j.Kerf) / t.unit, price*t.scale + 1, b.Length, most, b.Most > 0, false, []source{{i, most}}}, total)
	}
}

// addBar takes a bar that holds at least one piece; bars of one length and cost
// are one kind.
func (t *task) addBar(b bar, total int) {
	if b.size < t.sizes[len(t.sizes)-1] {
		return
	}
	for i, have := range t.bars {
		if have.length == b.length && have.cost == b.cost && have.offcut == b.offcut {
			t.bars[i].most = min(total, have.most+b.most)
			t.bars[i].from = append(have.from, b.from...)
			return
		}
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
	used := make([]int, len(t.bars))
	for _, l := range plan {
		b := t.bars[l.bar]
		p := Pattern{Count: 1, Offcut: b.offcut, Bar: b.source(used[l.bar])}
		used[l.bar]++
		for _, i := range l.pieces {
			p.Pieces = append(p.Pieces, kinds[i].Length)
		}
		p.Left = j.leftOf(p)
		r.Patterns = append(r.Patterns, p)
		r.count(j, p)
	}
	slices.SortStableFunc(r.Patterns, j.sawingOrder)
	r.Patterns = mergePatterns(r.Patterns)
	return r
}

// source gives the job's bar to take for the nth of a kind, the shortest listed
// first.
func (b bar) source(n int) int {
	for _, f := range b.from {
		if n < f.most {
			return f.index
		}
		n -= f.most
	}
	panic("nest: more bars of a kind than there are")
}

func (r *Result) count(j Job, p Pattern) {
	r.Bars++
	if p.Offcut {
		return
	}
	r.Bought++
	if j.Priced() {
		r.Cost += j.Stock[p.Bar].Price
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
