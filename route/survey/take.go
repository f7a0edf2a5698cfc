package survey

import (
	"fmt"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

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

// sitting is the readings of one part against the plan.
type sitting struct {
	plan     route.Plan
	part     route.Part // as the plan writes it
	whole    route.Part
	readings []Reading
	was, is  []mgl64.Vec3 // of the ports read, in the case
}

func newSitting(plan route.Plan, part route.Part, readings []Reading) sitting {
	s := sitting{plan: plan, part: part, whole: plan.Whole(part), readings: readings}
	for _, r := range readings {
		port, _ := plan.FindPort(r.Ref)
		s.was, s.is = append(s.was, port.Frame.At), append(s.is, r.At(plan.Case))
	}
	return s
}

// judge says what the readings come to.
func (s sitting) judge(slack float64) Verdict {
	v := Verdict{Part: s.part.Name, Kind: Agrees, Worst: s.worst()}
	for _, r := range s.readings {
		v.Ports = append(v.Ports, r.Ref)
	}
	if len(s.readings) < 2 || v.Worst <= slack {
		return v
	}
	v.Asks = true
	shift, turn := fitted(s.part, s.was, s.is, false), fitted(s.part, s.was, s.is, true)
	switch odd := s.odd(slack); {
	case odd != nil:
		v.Kind, v.Odd = Odd, odd
		if turn.Left <= slack {
			v.Move = &turn
		}
	case shift.Left <= slack:
		v.Kind, v.Move = Moved, &shift
	case turn.Left <= slack:
		v.Kind, v.Move = Moved, &turn
	default:
		v.Kind = Differs
		if odd := s.oddOfMoved(slack); odd != nil {
			v.Kind, v.Odd = Odd, odd
		}
	}
	return v
}

// worst is how far the worst port is from where the plan has it.
func (s sitting) worst() (worst float64) {
	for i := range s.was {
		worst = math.Max(worst, s.is[i].Sub(s.was[i]).Len())
	}
	return worst
}

// odd is the one number that is off while all others agree with the plan.
func (s sitting) odd(slack float64) *OddEntry {
	port, axis, n := 0, 0, 0
	for i := range s.was {
		for a := range 3 {
			if math.Abs(s.is[i][a]-s.was[i][a]) > slack {
				port, axis, n = i, a, n+1
			}
		}
	}
	if n != 1 {
		return nil
	}
	return s.oddAt(port, axis, s.was[port])
}

// oddOfMoved looks, where three or more ports were read, for one number without
// which the others fit a part that has moved.
func (s sitting) oddOfMoved(slack float64) *OddEntry {
	if len(s.was) < 4 {
		return nil // three ports less one fit almost anything
	}
	var found *OddEntry
	for i := range s.was {
		was, is := slices.Delete(slices.Clone(s.was), i, i+1), slices.Delete(slices.Clone(s.is), i, i+1)
		m := fitted(s.part, was, is, true)
		if m.Left > slack {
			continue
		}
		there := m.applied(s.part, s.was[i])
		axis, n := 0, 0
		for a := range 3 {
			if math.Abs(s.is[i][a]-there[a]) > slack {
				axis, n = a, n+1
			}
		}
		if n != 1 || found != nil {
			return nil
		}
		found = s.oddAt(i, axis, there)
	}
	return found
}

// applied is where a motion takes a point of the part as it stands in the plan.
func (m Motion) applied(part route.Part, p mgl64.Vec3) mgl64.Vec3 {
	return route.Turned(m.Turn).Mul3x1(route.Turned(part.Turn).Transpose().Mul3x1(p.Sub(part.At))).Add(m.At)
}

func (s sitting) oddAt(port, axis int, likely mgl64.Vec3) *OddEntry {
	r := s.readings[port]
	o := &OddEntry{Ref: r.Ref, Axis: axis, Wall: r.From[axis], Typed: r.Distance[axis]}
	o.Likely = Distances(s.plan.Case, likely, r.From)[axis]
	o.Guess = s.guess(*o)
	return o
}

// guess says how an odd number may have come about, where a usual slip explains it.
func (s sitting) guess(o OddEntry) string {
	near := func(v float64) bool { return math.Abs(v-o.Likely) <= ShapeSlack }
	other := walls[o.Axis][0]
	if other == o.Wall {
		other = walls[o.Axis][1]
	}
	switch {
	case near(s.plan.Case[o.Axis] - o.Typed):
		return "it looks taken from the " + other.String()
	case near(o.Typed * 10), near(o.Typed / 10):
		return "a digit looks lost or doubled"
	case near(o.Typed * route.Inch), near(o.Typed / route.Inch):
		return "it looks like the other unit"
	case near(o.Typed + 10), near(o.Typed - 10), near(o.Typed + 100), near(o.Typed - 100):
		return "one digit looks misread"
	}
	return ""
}

// answered says what is done with a part that was asked about.
func (s sitting) answered(v *Verdict, answer Answer) Answer {
	switch {
	case answer == TakeMove && v.Move != nil, answer == TakePorts:
		v.Asks = false
		return answer
	case answer == Skip:
		v.Asks = false
	}
	return Skip
}

// taken is the part with the readings in it.
func (s sitting) taken(v Verdict) route.Part {
	part := s.part
	part.Ports = slices.Clone(part.Ports)
	if v.Taken == TakeMove {
		part.At, part.Turn = v.Move.At, v.Move.Turn
	}
	back := route.Turned(part.Turn).Transpose()
	for i, r := range s.readings {
		port := s.portOf(r.Ref.Port)
		port.At = back.Mul3x1(s.is[i].Sub(part.At))
		for k := range port.At {
			port.At[k] = hundredth(port.At[k])
		}
		if r.Facing.Len() > 0 {
			port.Facing = clean(back.Mul3x1(r.Facing))
		}
		if r.Thread != "" {
			port.Thread = r.Thread
		}
		port.KnownFrom = route.Measured
		if n := slices.IndexFunc(part.Ports, func(q route.Port) bool { return q.Name == port.Name }); n >= 0 {
			part.Ports[n] = port
		} else {
			part.Ports = append(part.Ports, port)
		}
	}
	return part
}

// clean is a facing without the noise of turning it.
func clean(v mgl64.Vec3) mgl64.Vec3 {
	for i := range v {
		v[i] = math.Round(v[i]*1e6)/1e6 + 0
	}
	return v
}

func (s sitting) portOf(name string) route.Port {
	i := slices.IndexFunc(s.whole.Ports, func(q route.Port) bool { return q.Name == name })
	return s.whole.Ports[i] // sound has found it
}

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
