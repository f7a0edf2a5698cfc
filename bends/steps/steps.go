// Package steps puts the work on one tube in order: what to saw, mark, slide on,
// heat, bend, trim and join, one numbered step after the other, and in which
// order the bends can be made at all.
//
// What decides the order is room. While a bend is made the tube needs bare
// straight stock on both sides of it, more where it is held and less where it is
// drawn round ([Tool]). A collar is a ring that slides on straights and cannot
// pass a bend. It goes on over its own end when the straight then at that end
// holds it and, behind it, the depth the end is pushed in; where the finished
// leg is too short for that it goes on before that end's bend is made, and
// stands on the leg and the trim while the bend is made (common practice).
//
// Lengths are millimetres, angles degrees. End A is the tube's first stop, B its
// last. The package knows no plan and no paper. Limits: it takes the bench to be
// large enough for every leg to swing, and it looks at one tube at a time.
package steps

import "tubewright/bends"

// Job is one tube to make.
type Job struct {
	Tube     bends.Formed
	Cut      bends.Cut
	Bench    bends.Bench
	Material string    // "petg", "acrylic", "copper", "glass", ...
	Collars  [2]Collar // of ends A and B
	Tool     Tool
	Units    Units // how lengths are written
}

// Collar is the ring that goes round one end of the tube. Its zero value is none.
type Collar struct {
	Length    float64 // along the tube, mm
	Insertion float64 // how deep its socket takes the tube when fully home, mm
}

// needs is the straight a collar wants at its end to go on, mm.
func (c Collar) needs() float64 { return c.Length + c.Insertion }

// Tool is the bare straight a bender or former needs on each side of the bend it
// makes, mm: where the tube is held, and where it is drawn round. The zero value
// takes the tube's StraightBetween for both.
type Tool struct{ Held, Drawn float64 }

// Units writes lengths as the plan counts them: 12.3, and "12.3 mm".
type Units interface {
	Text(mm float64) string
	TextUnit(mm float64) string
}

// Kind is what a step is about; the same for ever.
type Kind string

// The kinds of step.
const (
	Warn   Kind = "warn" // no order of the bends has room; says what lacks
	Saw    Kind = "saw"
	Mark   Kind = "mark"
	Insert Kind = "insert" // the bending cord, in and out
	Care   Kind = "care"   // what holds at every bend
	Slide  Kind = "collar"
	Bend   Kind = "bend"
	Trim   Kind = "trim"
	Check  Kind = "check"
	Clean  Kind = "clean"
	Join   Kind = "join"
)

// Step is one thing to do.
type Step struct {
	Kind   Kind
	Bend   int    // counts from 1 at end A; 0: of no bend
	End    string // "A" or "B" where the step is of one end
	Text   string // one or more sentences
	Source string // who says so
}

// Work is a tube's order of work.
type Work struct {
	Order []int  // the bends as they are made, counting from 0 at end A
	First string // end the marks are measured from: "A" or "B"
	Ons   [2]On  // when each collar goes on
	// BFirst says that of two collars that go on before one bend, B goes on first.
	BFirst bool
	Steps  []Step // in order
	Fault  error  // why no order has room: a *[NoOrderError] or *[CollarError]; Order is then merely from A
}

// On is when a collar goes on.
type On struct {
	// Before is the bend before which it goes on, counting from 0 at end A; −1:
	// when the tube is formed and trimmed.
	Before int
	// Leg and Need are the finished leg and what the collar and the insertion take of it, mm.
	Leg, Need float64
}

// Plan works out the order of work.
func Plan(j Job) Work {
	w := j.arrange()
	w.Steps = j.write(w)
	return w
}

// endNames are what the two ends are called.
var endNames = [2]string{"A", "B"}

// slack is rounding noise, mm, as in package bends.
const slack = 1e-6
