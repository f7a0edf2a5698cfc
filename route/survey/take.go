package survey

import (
	"fmt"
	"math"
	"slices"

	"tubewright/route"
)

// ShapeSlack is how far the measured ports of a part may differ from where the
// plan has them before anybody is asked, mm: what a rule and a square in a case
// are good for (common practice).
const ShapeSlack = 2.0

// Kind says what the measured ports of a part say of it together.
type Kind string

// The verdicts.
const (
	Agrees  Kind = "agrees"  // where the plan has them, or there is only one
	Moved   Kind = "moved"   // the part has its shape and stands elsewhere
	Odd     Kind = "odd"     // all agree but one number
	Differs Kind = "differs" // the part has another shape than the plan says
)

// Answer is what the person wants of a part that was asked about.
type Answer string

// The answers. The empty one leaves the part as it is.
const (
	TakeMove  Answer = "moved" // the part has moved: change its place and turn
	TakePorts Answer = "ports" // the numbers are right: change the ports in the part
	Skip      Answer = "skip"  // measure again: leave the part as it is
)

// Options is how readings are taken. The zero value asks about everything that
// is off by more than ShapeSlack.
type Options struct {
	Slack   float64           // mm; 0: ShapeSlack
	Answers map[string]Answer // by part
}

// OddEntry is the one number of a part that does not agree with the others.
type OddEntry struct {
	Ref    route.PortRef
	Axis   int     // 0 x, 1 y, 2 z
	Wall   Wall    // it was taken from
	Typed  float64 // mm
	Likely float64 // what the others say, mm
	Guess  string  // how it may have come about; empty: no idea
}

// Verdict is what the readings of one part come to.
type Verdict struct {
	Part  string
	Kind  Kind
	Ports []route.PortRef // that were measured
	Worst float64         // how far the worst of them is from where the plan has it, mm
	Move  *Motion         // of Moved, and of Odd where a move would explain it too
	Odd   *OddEntry       // of Odd
	Asks  bool            // the part is left as it is until it is answered
	Taken Answer          // what was done: TakePorts, TakeMove or Skip
	Words string          // all of it in a sentence or two, in the plan's units
}

// ReadingError says what is wrong with a reading.
type ReadingError struct {
	Ref  route.PortRef
	What string
}

func (e *ReadingError) Error() string { return fmt.Sprintf("port %s: %s", e.Ref, e.What) }

// Take takes readings into a plan. A port's place in its part comes from the
// distances in the case and the part's place and turn; a port that is taken is
// known from: measured. Where the ports of a part do not stand where the plan
// has them by more than the slack, the part is left as it is and asked about,
// until Options answer. Errors are of type *ReadingError.
func Take(plan route.Plan, readings []Reading, o Options) (route.Plan, []Verdict, error) {
	if o.Slack == 0 {
		o.Slack = ShapeSlack
	}
	if err := sound(plan, readings); err != nil {
		return plan, nil, err
	}
	out := plan.Clone()
	var verdicts []Verdict
	for i, part := range plan.Parts {
		mine := slices.DeleteFunc(slices.Clone(readings), func(r Reading) bool { return r.Ref.Part != part.Name })
		if len(mine) == 0 {
			continue
		}
		s := newSitting(plan, part, mine)
		v := s.judge(o.Slack)
		v.Taken = TakePorts
		if answer := o.Answers[part.Name]; v.Asks {
			v.Taken = s.answered(&v, answer)
		} else if answer == Skip {
			v.Taken = Skip
		}
		v.Words = s.words(v)
		if v.Taken != Skip {
			out.Parts[i] = s.taken(v)
		}
		verdicts = append(verdicts, v)
	}
	return out, verdicts, nil
}

// sound refuses readings of no port, of one twice, and what is no distance.
func sound(plan route.Plan, readings []Reading) error {
	for i, r := range readings {
		if _, ok := plan.FindPort(r.Ref); !ok {
			return &ReadingError{r.Ref, "there is no such port in the plan"}
		}
		if slices.ContainsFunc(readings[:i], func(q Reading) bool { return q.Ref == r.Ref }) {
			return &ReadingError{r.Ref, "it is there twice"}
		}
		for axis, w := range r.From {
			if a, _, ok := w.place(); !ok || a != axis {
				return &ReadingError{r.Ref, fmt.Sprintf("%s is not measured from the %q; it is from %s or %s",
					axisNames[axis], string(w), walls[axis][0], walls[axis][1])}
			}
			if d := r.Distance[axis]; math.IsNaN(d) || math.Abs(d) > farthest {
				return &ReadingError{r.Ref, fmt.Sprintf("%s is no distance in a case", axisNames[axis])}
			}
		}
	}
	return nil
}

// farthest is the longest distance anybody measures in a case, mm: ten metres.
const farthest = 10_000

var axisNames = [3]string{"x", "y", "z"}

// Affected names the runs that rest on a port which stands elsewhere, faces
// elsewhere or has another thread in the second plan, in the plan's order.
func Affected(before, after route.Plan) (runs []string) {
	for _, r := range after.Runs {
		for _, ref := range []route.PortRef{r.From, r.To} {
			p, _ := before.FindPort(ref)
			q, _ := after.FindPort(ref)
			if p.Frame != q.Frame || p.Thread != q.Thread {
				runs = append(runs, r.Name)
				break
			}
		}
	}
	return runs
}
