package find

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// looked is what a search asked of what stands around its run. Where all of it is
// answered as before once something has moved, the same search goes the same way
// again. What was asked of the guard is asked again only of what has moved, and a
// square search that looked near it is searched again by itself: it is a small
// part of a run's search.
type looked struct {
	boxes  []bounds // in which anything that moves counts, gaps included
	asks   []ask    // the guard's
	quests []inquiry
	count  int
	full   bool // too much to keep: count it as everywhere
}

// bounds is a box of space along the case's axes.
type bounds struct{ lo, hi vec }

// ask is a question of the guard's: does something come too near to a limb?
type ask struct {
	limb limb
	runs bool // of other runs; else of the parts
	hit  bool // the answer
}

// inquiry is a square search and what came of it.
type inquiry struct {
	asker         *hunt // without a scene
	frame         axes
	start, end    *build
	best          int64
	before, after effort
	got           []found // in the frame
	looked        looked
}

const (
	// mostLookedAt bounds what is kept of one run's search: a few megabytes.
	mostLookedAt = 1 << 16
	// askSize is how many boxes a question of the guard's takes the room of.
	askSize = 2
	// lookSpare is how much farther than the gap asked for a look is taken to
	// reach, mm: far beyond what any measure of a gap is rounded by (margin,
	// turnSag).
	lookSpare = 0.25
)

// grows counts one thing more; false when nothing more is kept.
func (l *looked) grows(by int) bool {
	if l == nil || l.full {
		return false
	}
	if l.count += by; l.count > mostLookedAt {
		*l = looked{full: true}
	}
	return !l.full
}

// at remembers a look at what stands within a gap of a box; nil remembers nothing.
func (l *looked) at(lo, hi vec, gap float64) {
	if l.grows(1) {
		l.boxes = append(l.boxes, wider(lo, hi, gap+lookSpare))
	}
}

// asked remembers a question of the guard's.
func (l *looked) asked(limb *limb, runs, hit bool) {
	if l.grows(askSize) {
		l.asks = append(l.asks, ask{*limb, runs, hit})
	}
}

// inquired remembers a square search.
func (l *looked) inquired(i *inquiry) {
	if l.grows(i.looked.count+1) && i.looked.full {
		*l = looked{full: true}
	}
	if l != nil && !l.full {
		l.quests = append(l.quests, *i)
	}
}

// wider is a box and so much more on every side.
func wider(lo, hi vec, more float64) bounds {
	for i := range lo {
		lo[i], hi[i] = lo[i]-more, hi[i]+more
	}
	return bounds{lo, hi}
}

func (b *bounds) meets(c *bounds) bool {
	for i := range b.lo {
		if b.lo[i] > c.hi[i] || c.lo[i] > b.hi[i] {
			return false
		}
	}
	return true
}

// look remembers that a quest asks what stands near a stretch between two points
// of its frame, with so much room on every side.
func (q *quest) look(p, r vec, room float64) {
	if q.looked == nil {
		return
	}
	if q.frame == worldAxes() {
		for i := range p {
			p[i], r[i] = min(p[i], r[i])-room, max(p[i], r[i])+room
		}
		q.looked.at(p, r, q.keep)
		return
	}
	mid, half := p.Add(r).Mul(0.5), vec{}
	for i := range half {
		half[i] = math.Abs(p[i]-r[i])/2 + room
	}
	mid = q.frame.out(mid)
	out := mgl64.Mat3(q.frame).Transpose()
	var reach vec
	for i := range reach {
		for j := range half {
			reach[i] += math.Abs(out.At(i, j)) * half[j]
		}
	}
	q.looked.at(mid.Sub(reach), mid.Add(reach), q.keep)
}

// lookAlong is look for a stretch of a lattice line.
func (q *quest) lookAlong(n node, axis int, from, to float64) {
	if q.looked == nil {
		return
	}
	p := q.grid.at(n)
	r := p
	p[axis], r[axis] = from, to
	q.look(p, r, 0)
}

// lookStep is lookAlong, once, for the step that leaves a crossing.
func (q *quest) lookStep(l *line, seen *[2]uint64, n node, d int, from, to float64) {
	bit := uint64(1) << n[d>>1]
	if q.looked == nil || seen[d&1]&bit != 0 {
		return
	}
	seen[d&1] |= bit
	q.lookAlong(n, d>>1, from, to)
}
