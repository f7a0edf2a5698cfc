package nest

import (
	"cmp"
	"math/bits"
	"slices"
)

// pricer looks for the loads of a bar that are worth most: a bounded knapsack
// problem with pieces that must be kept apart and a least filling, in whole
// numbers, so that its answer is exact.
//
// A table holds for each room, rounded down to a grid, the most that pieces from
// a place on can be worth, where keeping apart does not count (Martello & Toth
// 1990, chapter 3). A depth-first search that never goes where the table shows
// no gain finds the loads; where the grid is the unit of length itself and
// nothing is kept apart it walks straight to them.
type pricer struct {
	meter  *meter
	goods  []ware  // longest first
	banned []int16 // for each good, how many taken ones must be kept apart from it
	width  int     // of the table's rows
	shift  uint    // a grid is 1<<shift wide
	table  []int   // (goods+1) × width

	waste       int // a load that leaves more is ruled out
	lim         int // only loads worth more are sought
	steps       int
	taken, best []int32
	found       bool
}

// good is one kind of piece with its value.
type ware struct {
	kind  int32
	size  int
	value int
	most  int
	apart []int32 // places of goods not to be with; itself: no two
}

const (
	// widest row of a table with a place for each unit of length. Where bars are
	// longer, rows have at most wide places for each good.
	widest = 1 << 14
	wide   = 1 << 11
	narrow = 1 << 8
	// nowhere is worth less than anything.
	nowhere = -1 << 61
)

// gridFor is a grid neither so wide that the search wanders nor so narrow that
// the table is slow.
func (p *pricer) gridFor(size int) uint {
	most := widest
	if size >= widest {
		most = max(narrow, min(wide, 16*len(p.goods)))
	}
	return uint(max(0, bits.Len(uint(size))-bits.Len(uint(most))+1))
}

// set takes the goods for bars up to a size, of which no more than waste may be left.
func (p *pricer) set(size, waste int) {
	p.waste = waste
	p.shift = p.gridFor(size)
	p.width = size>>p.shift + 1
	need := (len(p.goods) + 1) * p.width
	if cap(p.table) < need {
		p.table = make([]int, need)
	}
	p.table = p.table[:need]
	p.banned = slices.Grow(p.banned[:0], len(p.goods))[:len(p.goods)]
	clear(p.banned)
	p.base(size)
	for i := len(p.goods) - 1; i >= 0; i-- {
		p.row(i, size)
	}
}

// base is what nothing more is worth: 0 where the room left may be wasted. On a
// grid a piece may seem shorter by up to the grid, so that more seems left.
func (p *pricer) base(size int) {
	most := size
	if n := len(p.goods); n > 0 && p.waste < size {
		most = p.waste + size/p.goods[n-1].size*(1<<p.shift-1)
	}
	row := p.line(len(p.goods))
	for r := range row {
		if row[r] = 0; r<<p.shift > most {
			row[r] = nowhere
		}
	}
}

func (p *pricer) line(i int) []int { return p.table[i*p.width : (i+1)*p.width] }

// row takes copies of a good 1, 2, 4, ... at once (binary splitting).
func (p *pricer) row(i, size int) {
	g, to := p.goods[i], p.line(i)
	from := p.line(i + 1)
	copy(to, from)
	left := min(g.most, size/g.size)
	for n := 1; left > 0; n *= 2 {
		n = min(n, left)
		left -= n
		p.meter.steps += p.width
		take(to, from, n*g.size>>p.shift, n*g.value)
		from = to
	}
}

// take writes to each place of a row the better of leaving and taking what is
// so long and so much worth. The rows may be one.
func take(to, from []int, size, value int) {
	size = min(size, len(to))
	with := from[:len(to)-size]
	for r := len(with) - 1; r >= 0; r-- {
		to[r+size] = max(from[r+size], with[r]+value)
	}
	copy(to[:size], from[:size])
}

// prospect is a good with the most that loads are worth of which it is the longest.
type prospect struct{ good, most int }

// loads lists loads worth more than over, at most one for each longest piece
// and so many in all, and what no load is worth more than. The meter may stop it.
func (p *pricer) loads(size, over, most int, steps int, found func(value int)) (worth int) {
	if len(p.goods) == 0 {
		return max(0, over)
	}
	var list []prospect
	for i, g := range p.goods {
		if g.size <= size && g.most > 0 {
			if best := g.value + p.ahead(p.next(i, 1), size-g.size); best > over {
				list = append(list, prospect{i, best})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b prospect) int { return cmp.Compare(b.most, a.most) })
	worth = over
	p.steps = steps
	for k, q := range list {
		if q.most <= worth && k > 0 && most <= 0 {
			break
		}
		if most <= 0 {
			return max(worth, q.most)
		}
		value, ok := p.hunt(q, size, over)
		if !ok {
			worth = max(worth, q.most)
		}
		if p.found {
			most--
			worth = max(worth, value)
			found(value)
		}
	}
	return worth
}

// next is the place to go on from after n of a good.
func (p *pricer) next(i, n int) int {
	if n < p.goods[i].most {
		return i
	}
	return i + 1
}

func (p *pricer) ahead(i, room int) int { return p.table[i*p.width+room>>p.shift] }

// hunt looks for the best load that begins with a good. It first asks for one
// that is all the table promises, then for any.
func (p *pricer) hunt(q prospect, size, over int) (value int, exact bool) {
	p.found = false
	g := p.goods[q.good]
	for _, lim := range [2]int{max(over, q.most-1-(q.most-over)>>promise), over} {
		p.lim = lim
		p.taken = append(p.taken[:0], int32(q.good))
		p.keepApart(q.good, 1)
		exact = p.search(q.good, 1, size-g.size, g.value)
		p.keepApart(q.good, -1)
		if !exact || p.found {
			break
		}
	}
	return p.lim, exact
}

// promise is the share (a power of two) of what the table promises beyond the
// limit that a first find may lack.
const promise = 5

// search goes on from place i, where n of it are taken already.
func (p *pricer) search(i, n, room, value int) bool {
	if value > p.lim && room <= p.waste {
		p.lim, p.found = value, true
		p.best = append(p.best[:0], p.taken...)
	}
	for ; i < len(p.goods); i, n = i+1, 0 {
		if p.steps--; p.steps < 0 {
			return false
		}
		if value+p.ahead(i, room) <= p.lim {
			return true
		}
		g := &p.goods[i]
		if g.size > room || p.banned[i] > 0 || n >= g.most {
			continue
		}
		on := i
		if n+1 >= g.most {
			on++
		}
		if value+g.value+p.ahead(on, room-g.size) <= p.lim {
			continue
		}
		p.taken = append(p.taken, int32(i))
		p.keepApart(i, 1)
		ok := p.search(i, n+1, room-g.size, value+g.value)
		p.keepApart(i, -1)
		p.taken = p.taken[:len(p.taken)-1]
		if !ok {
			return false
		}
	}
	return true
}

func (p *pricer) keepApart(i int, by int16) {
	for _, k := range p.goods[i].apart {
		p.banned[k] += by
	}
}
