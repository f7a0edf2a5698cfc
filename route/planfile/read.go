package planfile

import (
	"path/filepath"
	"strings"

	"gopkg.in/yaml.v3"

	"tubewright/route"
)

// Ending is how the name of a plan file ends.
const Ending = ".plan.yaml"

// Source is the file a plan came from: what [Write] needs to keep its comments
// and what [Save] needs to see that somebody else changed it. It is never
// written to.
type Source struct {
	path string // as given to Load; empty when the text came from elsewhere
	name string
	data []byte
	doc  document
}

// Name is the name the file was read under.
func (s *Source) Name() string { return s.name }

// Path is where the file was loaded from, or "".
func (s *Source) Path() string { return s.path }

// Read reads a plan against the shipped catalogue. The name stands in
// problems. The error is of type [Problems] and holds all that is wrong, in
// file order; the plan is then zero. The Source is never nil.
func Read(name string, data []byte) (route.Plan, *Source, error) {
	return ReadWith(Shelf(), name, data)
}

// ReadWith is [Read] against another catalogue; nil is an empty one.
func ReadWith(shelf *route.Catalogue, name string, data []byte) (route.Plan, *Source, error) {
	doc, problems := parse(name, data)
	src := &Source{name: name, data: data, doc: doc}
	plan := route.Defaults()
	plan.Name, plan.Catalogue = stem(name), shelf
	r := newReader(doc, &plan, problems)
	if problems == nil || doc.root != nil {
		r.readAll(func(s spot, n *yaml.Node) { planKeys.read(s, n, &plan) })
	}
	if len(r.problems) > 0 {
		return route.Plan{}, src, ordered(r.problems)
	}
	return plan, src, nil
}

// readAll reads the file's tree and then checks what it refers to.
func (r *reader) readAll(read func(s spot, n *yaml.Node)) {
	s := spot{reader: r}
	root := r.doc.root
	if root == nil {
		root = &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!null", Line: 1, Column: 1}
	}
	if !mayHold(root) {
		s.bad(root, "the file must hold keys with values, but "+says(root), "Start it with format: 1.")
		return
	}
	r.units = unitsOf(root)
	r.factor = r.units.Factor()
	read(s, root)
	for _, check := range r.later {
		check()
	}
}

// unitsOf looks ahead for the units, which every length needs.
func unitsOf(root *yaml.Node) route.Units {
	for i := 0; i+1 < len(root.Content); i += 2 {
		if root.Content[i].Value == "units" && root.Content[i+1].Value == string(route.Inches) {
			return route.Inches
		}
	}
	return route.Millimetres
}

// stem is the name of a plan that gives none: its file's, without the ending.
func stem(name string) string {
	base := strings.TrimSuffix(filepath.Base(name), Ending)
	base = strings.TrimSpace(strings.Map(func(r rune) rune {
		if unprintable(r) {
			return -1
		}
		return r
	}, strings.ToValidUTF8(base, "")))
	if base == "" || base == "." || base == string(filepath.Separator) {
		return "plan"
	}
	return string([]rune(base)[:min(maxName, len([]rune(base)))])
}
