package survey

import "fmt"

// words put a verdict in sentences.
func (s sitting) words(v Verdict) string {
	u := s.plan.Units
	text := ""
	switch v.Kind {
	case Agrees:
		text = fmt.Sprintf("%s: %s measured, at most %s from where the plan has them.", v.Part, ports(len(v.Ports)), u.TextUnit(v.Worst))
		if len(v.Ports) == 1 {
			text = fmt.Sprintf("%s: %s measured, %s from where the plan has it.", v.Part, v.Ports[0].Port, u.TextUnit(v.Worst))
		}
	case Moved:
		text = fmt.Sprintf("%s: its ports keep their distances to within %s, but the part stands elsewhere: %s.",
			v.Part, u.TextUnit(v.Move.Left), v.Move.words(u))
	case Odd:
		o := v.Odd
		text = fmt.Sprintf("%s: everything agrees but %s of %s: %s from the %s, where the others say %s",
			v.Part, axisNames[o.Axis], o.Ref, u.TextUnit(o.Typed), o.Wall, u.TextUnit(o.Likely))
		if o.Guess != "" {
			text += "; " + o.Guess
		}
		text += "."
		if v.Move != nil {
			text += fmt.Sprintf(" Or the part is %s.", v.Move.words(u))
		}
	case Differs:
		text = fmt.Sprintf("%s: its ports lie otherwise to each other than the plan says, the worst %s off; no move of the part explains it.",
			v.Part, u.TextUnit(v.Worst))
	}
	return text + s.done(v)
}

// done says what was done, or what there is to choose.
func (s sitting) done(v Verdict) string {
	switch {
	case v.Asks && v.Move != nil:
		return " Left as it is. Say whether the part has moved, the ports are right as measured, or measure again."
	case v.Asks:
		return " Left as it is. Say whether the ports are right as measured, or measure again."
	case v.Taken == TakeMove:
		return " Its place and turn are changed."
	case v.Taken == Skip:
		return " Left as it is."
	case v.Kind != Agrees:
		return " Its ports are changed as measured."
	}
	return ""
}

func ports(n int) string {
	if n == 1 {
		return "1 port"
	}
	return fmt.Sprintf("%d ports", n)
}
