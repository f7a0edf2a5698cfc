package check

import (
	"fmt"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// touch is two things nearer than is asked, at their worst place.
type touch struct {
	a, b  *element // b is nil for a part
	gap   clear.Gap
	need  float64
	found bool
}

// see measures two shapes and keeps them when they lack more than what is known.
func (t *touch) see(a, b *element, shape clear.Shape, box *bounds, need float64) {
	least := need - Rounding
	if t.found {
		least = min(least, need+t.gap.Distance-t.need-sameMove)
	}
	if !a.box.within(box, max(0, least)) {
		return
	}
	if g := clear.Between(a.shape, shape); g.Distance < least {
		*t = touch{a, b, g, need, true}
	}
}

// lack is by how much the gap is too small.
func (t *touch) lack() float64 { return t.need - t.gap.Distance }

// away is the shift that moves the second of the two far enough.
func (t *touch) away() mgl64.Vec3 { return t.gap.Out().Mul(-t.lack()) }

func (t *touch) at() mgl64.Vec3 { return t.gap.A.Add(t.gap.B).Mul(0.5) }

// stands says how one thing stands to another.
func (r *referee) stands(t *touch, what, other string) string {
	if t.gap.Distance < 0 {
		return fmt.Sprintf("%s is %s inside %s.", capital(what), r.length(-t.gap.Distance), other)
	}
	return fmt.Sprintf("%s stands %s from %s, %s less than the %s asked.",
		capital(what), r.length(t.gap.Distance), other, r.length(t.lack()), r.length(t.need))
}

// checkRunsAndParts tells of runs too near to parts.
func (r *referee) checkRunsAndParts() {
	for i := range r.runs {
		for j := range r.parts {
			run := &r.runs[i]
			if t := r.runToPart(run, &r.parts[j]); t.found {
				r.tellRunPart(run, j, &t)
			}
		}
	}
}

func (r *referee) runToPart(run *laidRun, part *standPart) (worst touch) {
	need := r.plan.Clear
	if run.owns(part.name) {
		need = 0
	}
	for i := range run.elements {
		e := &run.elements[i]
		if run.seated(e, part.name) || !e.box.within(&part.box, max(need, Rounding)) {
			continue
		}
		for k, s := range part.shapes {
			worst.see(e, nil, s, &part.boxes[k], need)
		}
	}
	return worst
}

func (r *referee) tellRunPart(run *laidRun, at int, t *touch) {
	part := &r.parts[at]
	move := &Move{part.name, t.away(), r.free(at, t.away())}
	fix := fmt.Sprintf("Move %s %s, or lead run %s round it with a via point.", part.name, r.shift(t.away()), run.name)
	switch {
	case run.owns(part.name):
		move = nil
		fix = fmt.Sprintf("Bring the tube out from %s with an extender, or lead run %s round it %s by a via point.",
			part.name, run.name, r.shift(t.away().Mul(-1)))
	case t.a.body:
		fix = fmt.Sprintf("Move %s %s, or choose other fittings on %s.", part.name, r.shift(t.away()), run.ends[t.a.end].Port.Ref)
	}
	f := Finding{
		Code: TubeHitsPart, Runs: []string{run.name}, Parts: []string{part.name}, Measure: t.gap.Distance, Unit: "mm",
		What: r.stands(t, run.called(t.a), part.name), Fix: fix, Move: move,
	}
	r.tell(f.at(t.at()))
}

// checkRuns tells of runs too near to each other and to themselves.
func (r *referee) checkRuns() {
	for i := range r.runs {
		if t := r.runs[i].toItself(); t.found {
			r.tellRuns(&r.runs[i], &r.runs[i], &t)
		}
		for j := i + 1; j < len(r.runs); j++ {
			if t := r.runs[i].toRun(&r.runs[j], r.plan.Clear); t.found {
				r.tellRuns(&r.runs[i], &r.runs[j], &t)
			}
		}
	}
}

func (l *laidRun) toRun(m *laidRun, need float64) (worst touch) {
	for i := range l.elements {
		for j := range m.elements {
			a, b := &l.elements[i], &m.elements[j]
			worst.see(a, b, b.shape, &b.box, need)
		}
	}
	return worst
}

func (l *laidRun) toItself() (worst touch) {
	last := 2 * len(l.formed.Bends) // the last piece
	for i := range l.elements {
		for j := i + 1; j < len(l.elements); j++ {
			if a, b := &l.elements[i], &l.elements[j]; strangers(a, b, last) {
				worst.see(a, b, b.shape, &b.box, 0)
			}
		}
	}
	return worst
}

// strangers reports whether two elements of one run must keep apart: bodies of
// the two ends, a chain and the tube beyond its first straight, and straights
// with another between them.
func strangers(a, b *element, last int) bool {
	switch {
	case a.body && b.body:
		return a.end != b.end
	case a.body:
		return b.piece != a.end*last
	}
	return a.piece%2 == 0 && b.piece%2 == 0 && b.piece-a.piece > 2
}

// sharePort reports whether two runs have an end on one port.
func sharePort(l, m *laidRun) bool {
	for _, a := range l.ends {
		for _, b := range m.ends {
			if l != m && a.Port.Ref == b.Port.Ref {
				return true
			}
		}
	}
	return false
}

func (r *referee) tellRuns(l, m *laidRun, t *touch) {
	f := Finding{Code: TubeHitsTube, Runs: []string{l.name, m.name}, Measure: t.gap.Distance, Unit: "mm"}
	if t.a.body || t.b.body {
		f.Code = CollarHits
	}
	f.Fix = fmt.Sprintf("Lead run %s %s with a via point or other fittings, or run %s the other way.",
		m.name, r.shift(t.away()), l.name)
	if sharePort(l, m) {
		f.Fix = "Give one of the two another port: they cannot both stand on one."
	}
	other := m.called(t.b)
	if l == m {
		f.Runs = f.Runs[:1]
		f.Fix = fmt.Sprintf("Give run %s another way, or a via point that leads it %s.", l.name, r.shift(t.away()))
		other = "another stretch of it"
		if t.b.body || t.a.body {
			other = t.b.name
		}
	}
	f.What = r.stands(t, l.called(t.a), other)
	r.tell(f.at(t.at()))
}
