package find

import "math/bits"

// nearSpare is how much farther than its own gap a wall is kept in mind, mm: a
// corner stands on its lattice lines to within sameLine.
const nearSpare = 1e-4

// nearBits knows which walls may matter at each line of the lattice: one bit a
// wall. What may matter along a straight, or at a corner, is then what may
// matter at all of its lines.
type nearBits struct {
	words    int
	straight [3][]uint64 // of each line in turn: walls that a tube in it may come too near to
	bend     [3][]uint64 // the same of a bend at it
	both     []uint64    // room for an answer
}

// build finds out which walls reach each line.
func (b *nearBits) build(q *quest) {
	b.words = (len(q.walls) + 63) / 64
	b.both = sized(b.both, b.words)
	q.halt.did(len(q.walls) / 2)
	for axis := range 3 {
		b.straight[axis] = sized(b.straight[axis], b.words*len(q.grid[axis]))
		b.bend[axis] = sized(b.bend[axis], b.words*len(q.grid[axis]))
		clear(b.straight[axis])
		clear(b.bend[axis])
	}
	for i := range q.walls {
		for axis := range 3 {
			b.mark(q, axis, i)
		}
	}
}

// mark sets the bits of one wall along one axis. The lines it reaches lie side by
// side.
func (b *nearBits) mark(q *quest, axis, i int) {
	w := &q.walls[i]
	word, bit := i/64, uint64(1)<<(i%64)
	grid := q.grid[axis]
	reach := w.keep + nearSpare
	from := firstBeyond(grid, w.lo[axis]-reach-q.radius)
	for j := from; j < len(grid) && grid[j] < w.hi[axis]+reach+q.radius; j++ {
		b.bend[axis][j*b.words+word] |= bit
		if grid[j] > w.lo[axis]-reach && grid[j] < w.hi[axis]+reach {
			b.straight[axis][j*b.words+word] |= bit
		}
	}
}

// firstBeyond is the first of rising numbers that is greater than x.
func firstBeyond(list []float64, x float64) int {
	lo, hi := 0, len(list)
	for lo < hi {
		if mid := int(uint(lo+hi) >> 1); list[mid] > x {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return lo
}

// firstNotBelow is the first of rising numbers that is not less than x.
func firstNotBelow(list []float64, x float64) int {
	lo, hi := 0, len(list)
	for lo < hi {
		if mid := int(uint(lo+hi) >> 1); list[mid] >= x {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return lo
}

// along gives the walls that the line through a crossing along an axis may come
// too near to. The answer stands until the next question.
func (b *nearBits) along(n node, axis int) []uint64 {
	u, v := (axis+1)%3, (axis+2)%3
	p, q := b.straight[u][n[u]*b.words:], b.straight[v][n[v]*b.words:]
	for i := range b.both {
		b.both[i] = p[i] & q[i]
	}
	return b.both
}

// around gives the walls that a bend at a crossing may come too near to.
func (b *nearBits) around(n node) []uint64 {
	p, q, r := b.bend[0][n[0]*b.words:], b.bend[1][n[1]*b.words:], b.bend[2][n[2]*b.words:]
	for i := range b.both {
		b.both[i] = p[i] & q[i] & r[i]
	}
	return b.both
}

// nextBit takes the lowest bit out of a word and gives its number.
func nextBit(word *uint64) int {
	i := bits.TrailingZeros64(*word)
	*word &= *word - 1
	return i
}
