package insert

import (
	"fmt"
	"math"
	"strings"
)

// motionWords tells how a piece goes in.
func (m *machine) motionWords(i int, r Result) string {
	var off []string
	for e, laid := range ends(&m.runs[i].way) {
		if r.Off[e] {
			off = append(off, laid.Port.Ref.String())
		}
	}
	s := "both sockets stay on their ports, collars loose on the tube; "
	switch len(off) {
	case 1:
		s = fmt.Sprintf("unscrew the socket at %s and slide it on the tube; ", off[0])
	case 2:
		s = fmt.Sprintf("unscrew the sockets at %s and slide them on the tube; ", strings.Join(off, " and "))
	}
	s += "bring the piece in along " + m.slideWords(r.Slides)
	switch len(off) {
	case 0:
		return capital(s) + "; close the collars."
	case 1:
		s += "; screw the socket home."
	case 2:
		s += "; screw both sockets home."
	}
	if r.InLine {
		s += fmt.Sprintf(" The ports face each other and the tube leaves %s of play: where the sockets' threads need more to start, "+
			"loosen one part on its screws, or cut the tube nearer to its shortest.", m.plan.Units.TextUnit(r.Play))
	}
	return capital(s)
}

// slideWords tells the slides: the first, from outside, has no length worth saying.
func (m *machine) slideWords(list []Slide) string {
	var words []string
	for i, s := range list {
		way := direction(s.By)
		if i > 0 {
			way += ", " + m.plan.Units.TextUnit(s.Long)
		}
		words = append(words, way)
	}
	return strings.Join(words, ", then along ")
}

// direction writes a way: "-x", or its three parts.
func direction(v vec) string {
	v = v.Normalize()
	for i, name := range [3]string{"x", "y", "z"} {
		if math.Abs(v[i]) > 1-1e-6 {
			if v[i] < 0 {
				return "-" + name
			}
			return "+" + name
		}
	}
	return fmt.Sprintf("(%.2f, %.2f, %.2f)", v[0]+0, v[1]+0, v[2]+0)
}

// whyWords tells why a piece does not go in, or why that is not known.
func (m *machine) whyWords(i int, r Result) string {
	w := &m.runs[i].way
	switch {
	case r.Verdict == Undecided:
		return "No straight slides were found that bring it in, and none were shown to be impossible: it may go in turned, bent aside by hand, or with a part loosened. Try it before the loop is closed."
	case r.Blocker == "the sockets" && r.InLine:
		return fmt.Sprintf("The tube is %s too long to go between its sockets at %s and %s, which face each other and cannot both be left in one go.",
			m.plan.Units.TextUnit(r.Short), w.Start.Port.Ref, w.End.Port.Ref)
	case r.Blocker == "the sockets":
		return fmt.Sprintf("Its ends would have to leave their sockets at %s and %s in two directions at once; they lack %s.",
			w.Start.Port.Ref, w.End.Port.Ref, m.plan.Units.TextUnit(r.Short))
	}
	return fmt.Sprintf("No path of slides leads in: %s is in the way everywhere, by %s or more.", r.Blocker, m.plan.Units.TextUnit(r.Short))
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
