package survey

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

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
