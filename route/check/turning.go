package check

import (
	"fmt"

	"tubewright/route"
	"tubewright/route/clear"
)

// A fixed elbow or offset is one piece: to screw it in, all of it that lies off
// the axis of its thread goes round, several times. A rotary one has a thread that
// turns inside its body, and what is round about its own axis needs no more room
// than it takes (common practice).

// turnLook is how finely a fitting is turned to see what it meets, degrees: what
// reaches 40 mm from the axis moves 1.4 mm between two looks, and between them a
// body of radius 10 reaches no more than 0.03 mm beyond both. That is less than
// PartSlack, which is what it may press on in passing.
const turnLook = 2

// turned is a fitting at the roll at which it is deepest in something.
type turned struct {
	gap  clear.Gap
	roll float64
	what string // what it meets, as a sentence names it
	part string // the part it meets; "" for a wall or its own chain
}

// worse keeps the deeper of two; the first on a tie.
func (t turned) worse(u turned) turned {
	if u.gap.Distance < t.gap.Distance-sameMove {
		return u
	}
	return t
}

// checkTurning tells of fittings that cannot be screwed in for want of room.
func (r *referee) checkTurning() {
	for i := range r.runs {
		for end := range r.runs[i].ends {
			for step, b := range r.runs[i].ends[end].Bodies {
				fixed := (b.Fitting.Kind == route.Elbow || b.Fitting.Kind == route.Offset) && !b.Fitting.Rotary
				if !fixed {
					continue
				}
				if t := r.roundAbout(&r.runs[i], end, step); t.gap.Distance < -PartSlack {
					r.tellTurning(&r.runs[i], end, step, t)
				}
			}
		}
	}
}

// roundAbout turns a fitting all the way round where it stands.
func (r *referee) roundAbout(run *laidRun, end, step int) (worst turned) {
	body := run.ends[end].Bodies[step]
	for roll := 0.0; roll < 360; roll += turnLook {
		shapes := route.Room(body.From, &body.Fitting, roll)
		arm := shapes[len(shapes)-1] // what comes before it is round about the axis, or inside it
		worst = worst.worse(r.armMeets(arm, roll)).worse(run.armMeets(arm, roll, end, step))
	}
	return worst
}

// armMeets is the part or wall an arm is deepest in.
func (r *referee) armMeets(arm clear.Shape, roll float64) (worst turned) {
	box := boundsOf(arm)
	for i := range r.parts {
		p := &r.parts[i]
		if !box.within(&p.box, 0) {
			continue
		}
		for _, s := range p.shapes {
			worst = worst.worse(turned{clear.Between(arm, s), roll, p.name, p.name})
		}
	}
	if s, _ := r.beyond(box); s.past > 0 {
		at := onWall(box, s)
		worst = worst.worse(turned{clear.Gap{Distance: -s.past, A: at, B: at}, roll, "the " + s.name() + " of the case", ""})
	}
	return worst
}

// armMeets is the fitting of its own chain an arm is deepest in: of those there
// when it is screwed in all but the one it stands on.
func (l *laidRun) armMeets(arm clear.Shape, roll float64, end, step int) (worst turned) {
	for i := range l.elements {
		if e := &l.elements[i]; e.body && e.end == end && e.step < step-1 {
			worst = worst.worse(turned{clear.Between(arm, e.shape), roll, e.name, ""})
		}
	}
	return worst
}

func (r *referee) tellTurning(run *laidRun, end, step int, t turned) {
	port := run.ends[end].Port.Ref
	f := Finding{
		Code: CannotScrewIn, Runs: []string{run.name}, Measure: t.gap.Distance, Unit: "mm",
		What: fmt.Sprintf("The %s on %s (run %s) has no room to turn while it is screwed in: at a roll of %.0f° it is %s inside %s.",
			run.ends[end].Bodies[step].Fitting.Name, port, run.name, t.roll, r.length(-t.gap.Distance), t.what),
		Fix: "Take a rotary one, or put an extender under it.",
	}
	if t.part != "" && t.part != port.Part {
		f.Parts = []string{t.part}
		f.Fix = fmt.Sprintf("Take a rotary one, put an extender under it, or move %s out of its way.", t.part)
	}
	r.tell(f.at(t.gap.A.Add(t.gap.B).Mul(0.5)))
}
