package find

import (
	"math"
	"reflect"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// looked is where a search asked whether something stands: boxes in the case's
// frame, gaps included. Where none of them is touched by what has moved, the
// same search goes the same way again.
type looked struct {
	boxes []bounds
	full  bool // too many to keep: count it as everywhere
}

// bounds is a box of space along the case's axes.
type bounds struct{ lo, hi vec }

const (
	// mostBoxes bounds the boxes kept of one run's search: a few megabytes.
	mostBoxes = 1 << 16
	// lookSpare is how much farther than the gap asked for a look is taken to
	// reach, mm: far beyond what any measure of a gap is rounded by (margin,
	// turnSag).
	lookSpare = 0.25
)

// at remembers a look at what stands within a gap of a box; nil remembers nothing.
func (l *looked) at(lo, hi vec, gap float64) {
	if l == nil || l.full {
		return
	}
	if len(l.boxes) == mostBoxes {
		l.full, l.boxes = true, nil
		return
	}
	for i := range lo {
		lo[i], hi[i] = lo[i]-gap-lookSpare, hi[i]+gap+lookSpare
	}
	l.boxes = append(l.boxes, bounds{lo, hi})
}

// touched reports whether some look reached one of these boxes.
func (l *looked) touched(changed []bounds) bool {
	return l.full || slices.ContainsFunc(changed, func(c bounds) bool {
		return slices.ContainsFunc(l.boxes, func(b bounds) bool { return b.meets(&c) })
	})
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

// moved is what differs between two scenes that are otherwise the same.
type moved struct {
	from  *past
	parts []bool   // of each part
	boxes []bounds // what its solids take up in both
}

// movedFrom compares a past with a scene; false when more than the place of
// parts differs.
func movedFrom(p *past, sc *scene) (moved, bool) {
	m := moved{from: p, parts: make([]bool, len(sc.placed))}
	if len(p.scene.placed) != len(sc.placed) || !slices.Equal(p.scene.first, sc.first) || !sc.sameBut(p.scene) {
		return m, false
	}
	for i := range sc.placed {
		if reflect.DeepEqual(sc.placed[i], p.scene.placed[i]) {
			continue
		}
		m.parts[i] = true
		m.boxes = addBoxes(addBoxes(m.boxes, sc.solidsOf(i)), p.scene.solidsOf(i))
	}
	return m, true
}

func addBoxes(list []bounds, solids []solid) []bounds {
	for i := range solids {
		list = append(list, bounds{solids[i].lo, solids[i].hi})
	}
	return list
}

// carry takes up the list of a run from before some parts moved, when its search
// looked nowhere near them and neither of its ends is on one of them: it would
// find the same. Its home is searched again only if a brief search asks for it.
func (t *table) carry(i int, reserved []solid) bool {
	run := t.plan.Runs[i]
	_, a, ok := t.port(run.From)
	_, b, good := t.port(run.To)
	if !ok || !good {
		return false
	}
	for n := len(t.moves) - 1; n >= 0; n-- {
		m := &t.moves[n]
		if m.parts[a] || m.parts[b] {
			continue
		}
		for k := range m.from.runs {
			if r := &m.from.runs[k]; r.looked != nil && sameRun(r.run, run) && m.passes(r, reserved) {
				t.rows[i].asked = []asked{{request{others: reserved, below: anyCost}, r.listed, nil}}
				t.rows[i].looked, t.rows[i].homeless = r.looked, true
				return true
			}
		}
	}
	return false
}

// passes reports whether nothing that moved, nor what other runs' ports need now,
// touches what a run's search looked at.
func (m *moved) passes(r *pastRun, reserved []solid) bool {
	if len(reserved) != len(r.reserved) {
		return false
	}
	boxes := slices.Clip(m.boxes)
	for n := range reserved {
		if reserved[n] != r.reserved[n] {
			boxes = addBoxes(addBoxes(boxes, reserved[n:n+1]), r.reserved[n:n+1])
		}
	}
	return !r.looked.touched(boxes)
}
