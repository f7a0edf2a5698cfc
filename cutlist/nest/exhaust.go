package nest

import (
	"cmp"
	"encoding/binary"
	"slices"
)

// exhaust tries every plan that could be cheaper than the best. The longest
// piece left must lie on some bar, so every load that holds it is tried there,
// full ones only: a piece moved onto a bar from a later one costs nothing
// (branching on bin completions: Martello & Toth 1990, 8.5; Fukunaga & Korf
// 2007). When the search comes to its end the best plan is proven.
func (s *search) exhaust(st state) {
	e := exhaustion{search: s, seen: map[string]int{}}
	if e.from(st) && !s.meter.over {
		s.tried()
	}
}

// tried takes the best plan for proven because everything was tried. What was
// proven before helps whoever tries it again.
func (s *search) tried() {
	if s.tree != nil && s.tree.Leaf != nil {
		s.filters = []Dual{*s.tree.Leaf}
	}
	s.reached, s.tree = s.limit, nil
	s.raise(s.limit)
}

type exhaustion struct {
	*search
	seen map[string]int // rests looked through to the end, with the least spent before
}

const (
	// mostSeen bounds the memory of rests.
	mostSeen = 1 << 18
	// mostLoads bounds how many loads are tried for one bar; with more the
	// search is not exhaustive.
	mostLoads = 1 << 15
)

// from looks through all that follows a state and reports whether it came to
// the end. How far sums are out of order of cost does not matter: a rest seen
// with no more spent was searched under a limit at least as high.
func (e *exhaustion) from(st state) bool {
	if st.done() {
		e.finish(st)
		return true
	}
	key := restKey(st.rest)
	if spent, ok := e.seen[key]; ok && spent <= st.spent {
		return true
	}
	x := e.relax(st)
	if st.spent+x.bound > e.cutoff {
		return true
	}
	if e.meter.over {
		return false
	}
	if st.picks == nil {
		e.prove(x.bound, e.leaf(x.duals))
	}
	st.near = x.near
	whole, _ := e.fixWhole(st, x)
	e.finish(whole)
	all := e.branch(st, x)
	if all && len(e.seen) < mostSeen {
		e.seen[key] = st.spent
	}
	return all
}

func (e *exhaustion) branch(st state, x relaxed) bool {
	loads, all := e.loadsFor(st, x.duals)
	for _, l := range loads {
		if e.closed() {
			return true
		}
		next := e.with(st, l.pattern, 1)
		if next.spent+x.duals.bound(next.rest) > e.cutoff {
			continue
		}
		if all = e.from(next) && all; e.meter.over {
			return false
		}
	}
	return all
}

func restKey(r rest) string {
	key := make([]byte, 0, 2*(len(r.want)+len(r.left)))
	for _, n := range r.want {
		key = binary.LittleEndian.AppendUint16(key, uint16(n))
	}
	for _, n := range r.left {
		key = binary.LittleEndian.AppendUint16(key, uint16(n))
	}
	return string(key)
}

// fullLoad is a load that holds the longest piece left and to which nothing can
// be added.
type fullLoad struct {
	pattern
	lost int // what choosing it adds to the proven bound, fixed point
}

// loadsFor lists the loads for the next bar, those that lose least first, and
// whether these are all.
func (e *exhaustion) loadsFor(st state, d duals) ([]fullLoad, bool) {
	first := slices.IndexFunc(st.want, func(n int) bool { return n > 0 })
	f := filler{exhaustion: e, st: st, duals: d, counts: make([]int, len(st.want)), first: first, all: true}
	f.rates = e.rates(f.duals)
	gap := e.gap(st, f.duals)
	for b, left := range st.left {
		if left > 0 && e.bars[b].size >= e.sizes[first] {
			f.bar, f.cost = b, e.bars[b].cost*f.duals.unit+f.duals.over[b]
			f.least = f.cost - gap
			f.counts[first] = 1
			f.fill(first, e.bars[b].size-e.sizes[first], f.duals.values[first])
		}
	}
	slices.SortStableFunc(f.list, func(a, b fullLoad) int { return cmp.Compare(a.lost, b.lost) })
	return f.list, f.all
}

// gap is how much a load may lose, fixed point, before the bound of what follows
// passes the cutoff.
func (e *exhaustion) gap(st state, d duals) int {
	sum, ok := d.sum(st.rest)
	room := min(e.cutoff-st.spent, mostSum/d.unit)
	if !ok || room < 0 {
		return 2 * mostSum
	}
	return room*d.unit - sum
}

// rates gives for each size the most value per size from it on.
func (e *exhaustion) rates(d duals) []float64 {
	rates := make([]float64, len(e.sizes)+1)
	for i := len(e.sizes) - 1; i >= 0; i-- {
		rates[i] = max(rates[i+1], float64(d.values[i])/float64(e.sizes[i]))
	}
	return rates
}

// filler lists the full loads of one kind of bar.
type filler struct {
	*exhaustion
	st     state
	duals  duals
	counts []int
	first  int
	bar    int
	cost   int       // of the bar with its limit's value, fixed point
	least  int       // a load worth less loses too much
	rates  []float64 // most value per size from a size on
	list   []fullLoad
	all    bool
}

// fill adds pieces from size i on, most of each first.
func (f *filler) fill(i, room, worth int) {
	if !f.meter.spend(20) || len(f.list) >= mostLoads {
		f.all = false
		return
	}
	if float64(worth)+float64(float64(room)*f.rates[i]*safely) < float64(f.least) {
		return
	}
	if i == len(f.counts) {
		f.take(room, worth)
		return
	}
	base := f.counts[i] // the longest piece itself
	n := min(f.st.want[i]-base, room/f.sizes[i])
	for k := n; k >= 0; k-- {
		f.counts[i] = base + k
		f.fill(i+1, room-k*f.sizes[i], worth+k*f.duals.values[i])
	}
	f.counts[i] = base
}

func (f *filler) take(room, worth int) {
	if f.meter.spend(10 * len(f.counts)); worth < f.least || f.dominated(room) {
		return
	}
	p := pattern{bar: f.bar}
	for i, n := range f.counts {
		if n > 0 {
			p.pieces, p.counts = append(p.pieces, int32(i)), append(p.counts, int32(n))
		}
	}
	f.list = append(f.list, fullLoad{p, f.cost - worth})
}

// dominated reports that another load is no worse: a piece can be added, or a
// longer one taken in place of one or two of the load's, which then go where
// the longer one was; or the whole fits a cheaper bar that is never short.
// The longest piece stays. (Martello & Toth 1990, 8.4, with sets of up to two.)
func (f *filler) dominated(room int) bool {
	for _, kind := range f.bars {
		if !kind.limited && kind.cost < f.bars[f.bar].cost && kind.size >= f.bars[f.bar].size-room {
			return true
		}
	}
	if f.longer(0, room) {
		return true
	}
	for i, n := range f.counts {
		if i == f.first {
			n--
		}
		if n > 0 && (f.longer(f.sizes[i], room) || f.pairLonger(i, n, room)) {
			return true
		}
	}
	return false
}

func (f *filler) pairLonger(i, n, room int) bool {
	for k := i; k < len(f.counts); k++ {
		if m := f.counts[k]; (k > i && m > 0 || k == i && n > 1) && f.longer(f.sizes[i]+f.sizes[k], room) {
			return true
		}
	}
	return false
}

// longer reports whether a piece not in the load is longer than so much, by no
// more than the room.
func (f *filler) longer(than, room int) bool {
	for i := len(f.sizes) - 1; i >= f.first && f.sizes[i] <= than+room; i-- {
		if f.sizes[i] > than && f.counts[i] < f.st.want[i] {
			return true
		}
	}
	return false
}
