package planfile

import (
	"fmt"
	"slices"

	"gopkg.in/yaml.v3"

	"tubewright/route"
)

// listOf is a list of values of one kind.
func listOf[S ~[]V, V any](each codec[V], lay layout) codec[S] {
	return codec[S]{
		read: func(s spot, n *yaml.Node, into *S) {
			if list, ok := readList(s, n, each); ok {
				*into = list
			}
		},
		write: func(f form, v, base S) *item {
			if len(v) == 0 && len(base) == 0 {
				return nil
			}
			it := &item{kind: list, layout: lay}
			var none V
			f.based = false
			for _, x := range v {
				it.list = append(it.list, each.write(f, x, none))
			}
			return it
		},
		same:  func(a, b S) bool { return slices.EqualFunc(a, b, each.same) },
		shape: shape{kind: "list", each: &each.shape, most: maxEntries},
	}
}

func readList[V any](s spot, n *yaml.Node, each codec[V]) (out []V, ok bool) {
	if n.Kind != yaml.SequenceNode && !isNull(n) {
		s.bad(n, "must be a list, but "+says(n), "Write it as [one, another], or one to a line, each after a dash.")
		return nil, false
	}
	if len(n.Content) > maxEntries {
		s.bad(n, fmt.Sprintf("holds more than %d entries", maxEntries), "Split the plan: no machine has that many.")
		return nil, false
	}
	for i, c := range n.Content {
		var v V
		each.read(s.item(i), c, &v)
		out = append(out, v)
	}
	return out, true
}

// A register is a mapping from names of one's own to values: parts, runs,
// tubes. It keeps the order of the file.
type register[T any] struct {
	what    string // "run", for messages
	name    func(*T) *string
	each    codec[T]
	base    func(shelf *route.Catalogue, name string) (T, bool) // nil: entries start empty
	dotless bool                                                // names stand before or after a dot elsewhere
	known   func(s spot, n *yaml.Node, name string)             // the name refers to something; nil: it is new
	lay     layout
}

func (reg register[T]) codec() codec[[]T] {
	return codec[[]T]{
		read: reg.read, write: reg.write, same: reg.same,
		shape: shape{kind: "register", each: &reg.each.shape, lay: reg.dotless},
	}
}

// start is what an entry begins as: the shelf's of that name, else nothing.
func (reg register[T]) start(shelf *route.Catalogue, name string) (entry T, based bool) {
	if reg.base != nil && shelf != nil {
		entry, based = reg.base(shelf, name)
	}
	*reg.name(&entry) = name
	return entry, based
}

func (reg register[T]) read(s spot, n *yaml.Node, into *[]T) {
	var out []T
	for _, p := range s.pairs(n) {
		here := s.of(reg.what, p.key.Value)
		if !here.goodName(p.key, p.key.Value) {
			continue
		}
		if reg.dotless {
			here.noDot(p.key)
		}
		if reg.known != nil {
			reg.known(here, p.key, p.key.Value)
		}
		entry, _ := reg.start(s.plan.Catalogue, p.key.Value)
		reg.each.read(here, p.value, &entry)
		out = append(out, entry)
	}
	*into = out
}

func (reg register[T]) write(f form, v, _ []T) *item {
	if len(v) == 0 {
		return nil
	}
	it := &item{kind: table, layout: reg.lay, ordered: true}
	for _, entry := range v {
		name := *reg.name(&entry)
		base, based := reg.start(f.shelf, name)
		f.based = based
		value := reg.each.write(f, entry, base)
		if value == nil {
			value = reg.nothing()
		}
		it.rows = append(it.rows, row{key: name, value: value})
	}
	return it
}

// nothing is how a name with nothing to say is written.
func (reg register[T]) nothing() *item {
	if reg.each.shape.kind == "list" {
		return &item{kind: list, layout: flow}
	}
	return &item{kind: table, layout: flow}
}

func (reg register[T]) same(a, b []T) bool {
	return slices.EqualFunc(a, b, func(x, y T) bool { return *reg.name(&x) == *reg.name(&y) && reg.each.same(x, y) })
}
