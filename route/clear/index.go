package clear

import (
	"cmp"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// Index finds shapes near a place: a tree of bounding boxes, each split in
// half along its longest side. The zero value holds nothing. It is not written
// to after [NewIndex], so many may ask at once.
type Index struct {
	nodes []node
	items []item
}

// leafSize is how many shapes a leaf holds: fewer cost more in boxes than they save.
const leafSize = 4

type node struct {
	lo, hi   mgl64.Vec3
	from, to int // items of a leaf; an inner node has to = 0
	right    int // the left child follows its parent
}

type item struct {
	lo, hi mgl64.Vec3
	shape  int
}

// NewIndex makes an index over shapes. Shapes are told apart by their place in the list.
func NewIndex(shapes []Shape) *Index {
	x := &Index{items: make([]item, len(shapes))}
	for i, s := range shapes {
		lo, hi := s.Bounds()
		x.items[i] = item{lo, hi, i}
	}
	if len(shapes) > 0 {
		x.build(0, len(shapes))
	}
	return x
}

// build adds the node over items from..to and those below it.
func (x *Index) build(from, to int) {
	at := len(x.nodes)
	n := node{lo: x.items[from].lo, hi: x.items[from].hi}
	for _, it := range x.items[from+1 : to] {
		n.lo, n.hi = around(n.lo, n.hi, it.lo, it.hi)
	}
	x.nodes = append(x.nodes, n)
	if to-from <= leafSize {
		x.nodes[at].from, x.nodes[at].to = from, to
		return
	}
	axis := longest(n.hi.Sub(n.lo))
	slices.SortFunc(x.items[from:to], func(a, b item) int {
		return cmp.Or(cmp.Compare(a.lo[axis]+a.hi[axis], b.lo[axis]+b.hi[axis]), cmp.Compare(a.shape, b.shape))
	})
	middle := (from + to) / 2
	x.build(from, middle)
	x.nodes[at].right = len(x.nodes)
	x.build(middle, to)
}

func longest(v mgl64.Vec3) int {
	axis := 0
	for i := range v {
		if v[i] > v[axis] {
			axis = i
		}
	}
	return axis
}

func around(alo, ahi, blo, bhi mgl64.Vec3) (lo, hi mgl64.Vec3) {
	for i := range alo {
		lo[i], hi[i] = min(alo[i], blo[i]), max(ahi[i], bhi[i])
	}
	return lo, hi
}

func overlap(alo, ahi, blo, bhi *mgl64.Vec3) bool {
	return alo[0] <= bhi[0] && blo[0] <= ahi[0] &&
		alo[1] <= bhi[1] && blo[1] <= ahi[1] &&
		alo[2] <= bhi[2] && blo[2] <= ahi[2]
}

// Near calls visit with each shape whose bounding box meets the box from lo to
// hi, until visit says false. The order hangs on the shapes alone. It reports
// whether all were visited.
func (x *Index) Near(lo, hi mgl64.Vec3, visit func(i int) bool) bool {
	return len(x.nodes) == 0 || x.near(0, &lo, &hi, visit)
}

func (x *Index) near(at int, lo, hi *mgl64.Vec3, visit func(i int) bool) bool {
	n := &x.nodes[at]
	if !overlap(&n.lo, &n.hi, lo, hi) {
		return true
	}
	if n.to == 0 {
		return x.near(at+1, lo, hi, visit) && x.near(n.right, lo, hi, visit)
	}
	for i := n.from; i < n.to; i++ {
		if it := &x.items[i]; overlap(&it.lo, &it.hi, lo, hi) && !visit(it.shape) {
			return false
		}
	}
	return true
}
