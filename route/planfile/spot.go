package planfile

import (
	"fmt"
	"strconv"

	"gopkg.in/yaml.v3"

	"tubewright/route"
)

// reader is one file being read.
type reader struct {
	doc      document
	factor   float64 // mm in one of the file's units
	units    route.Units
	plan     *route.Plan
	problems Problems
	told     map[[2]int]bool // places that have a problem before reading starts
	later    []func()        // checks of references, run when every name is known
	names    map[string]names
}

// newReader starts with the problems the tree itself has: one of them is all
// there is to say of its place.
func newReader(doc document, plan *route.Plan, problems Problems) *reader {
	r := &reader{doc: doc, plan: plan, problems: problems, told: map[[2]int]bool{}}
	for _, p := range problems {
		r.told[[2]int{p.Line, p.Col}] = true
	}
	return r
}

// spot is where reading stands: a reader, whose value it is, and under which keys.
type spot struct {
	*reader
	owner string // `run "pump-to-plate"`; empty at the top
	path  string // "insertion.full"
}

// in is the spot one key further down.
func (s spot) in(key string) spot {
	if s.path != "" {
		key = s.path + "." + key
	}
	s.path = key
	return s
}

// item is the spot of an element of a list, counted from 1.
func (s spot) item(i int) spot {
	if s.path != "" {
		s.path += ", "
	}
	s.path += fmt.Sprintf("item %d", i+1)
	return s
}

// of is the spot of something that has a name of its own.
func (s spot) of(what, name string) spot {
	if s.owner != "" {
		s.owner += ": "
	}
	s.owner += what + " " + strconv.Quote(short(name))
	s.path = ""
	return s
}

// bad notes a problem with the value at n: "run "a": tube must be ...".
func (s spot) bad(n *yaml.Node, what, fix string) {
	if s.path != "" {
		what = s.path + " " + what
	}
	s.note(n, what, fix)
}

// note notes a problem with the owner itself: "run "a": ...".
func (s spot) note(n *yaml.Node, what, fix string) {
	if s.owner != "" {
		what = s.owner + ": " + what
	}
	if len(s.problems) >= maxNoted || s.told[[2]int{n.Line, n.Column}] {
		return
	}
	s.problems = append(s.problems, s.doc.at(max(1, n.Line), max(1, n.Column), what, fix))
}

// after runs a check when the whole file has been read.
func (s spot) after(check func()) { s.later = append(s.later, check) }

// says names what a node is, for messages.
func says(n *yaml.Node) string {
	switch {
	case n.Kind == yaml.SequenceNode:
		return "is a list"
	case n.Kind == yaml.MappingNode:
		return "is a mapping"
	case isNull(n):
		return "is empty"
	case n.ShortTag() == "!!str":
		return "is the text " + strconv.Quote(short(n.Value))
	}
	return "is " + short(n.Value)
}

// maxShown is how much of a wrong value a message repeats, in characters.
const maxShown = 40

func short(text string) string {
	if r := []rune(text); len(r) > maxShown {
		return string(r[:maxShown]) + "…"
	}
	return text
}

func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.ShortTag() == "!!null" }
