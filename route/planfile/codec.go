package planfile

import (
	"slices"

	"gopkg.in/yaml.v3"

	"tubewright/route"
)

// A codec is how one kind of value stands in a file. What a file leaves out
// keeps the value it is read into.
type codec[V any] struct {
	read func(s spot, n *yaml.Node, into *V)
	// write gives nil when the value is an empty one that needs no words.
	write func(f form, v, base V) *item
	same  func(a, b V) bool
	shape shape
}

// form is what writing needs to know of the file to be.
type form struct {
	factor float64 // mm in one of the file's units
	shelf  *route.Catalogue
	based  bool // the entry being written changes one of the catalogue
}

// A key is one key of a mapping that describes a T.
type key[T any] struct {
	name   string
	doc    string          // for the schema: shown by editors
	must   bool            // may not be left out
	always func(v *T) bool // written in a new table even when it says nothing new
	spelt  func(v *T) bool // says something even when it is zero, unless the catalogue says it
	read   func(s spot, n *yaml.Node, into *T)
	write  func(f form, v, base *T) (it *item, quiet bool)
	shape  shape
}

// keyOf makes the key of a field.
func keyOf[T, V any](name, doc string, at func(*T) *V, c codec[V]) key[T] {
	return key[T]{
		name: name, doc: doc, shape: c.shape,
		read: func(s spot, n *yaml.Node, into *T) { c.read(s.in(name), n, at(into)) },
		write: func(f form, v, base *T) (*item, bool) {
			return c.write(f, *at(v), *at(base)), c.same(*at(v), *at(base))
		},
	}
}

// needed marks a key that may not be left out.
func (k key[T]) needed() key[T] {
	k.must = true
	return k
}

// shown marks a key that is written even where it says nothing new.
func (k key[T]) shown(when func(*T) bool) key[T] {
	k.always = when
	return k
}

// spelled marks a key whose zero is not the same as its absence.
func (k key[T]) spelled(when func(*T) bool) key[T] {
	k.spelt = when
	return k
}

func everywhere[T any](*T) bool { return true }

// lift makes a codec of a whole from one of its only field.
func lift[T, V any](at func(*T) *V, c codec[V]) codec[T] {
	return codec[T]{
		read:  func(s spot, n *yaml.Node, into *T) { c.read(s, n, at(into)) },
		write: func(f form, v, base T) *item { return c.write(f, *at(&v), *at(&base)) },
		same:  func(a, b T) bool { return c.same(*at(&a), *at(&b)) },
		shape: c.shape,
	}
}

// given is the keys a mapping of the file holds.
type given struct {
	value  map[string]*yaml.Node
	failed map[string]bool // something is wrong with the value
}

// has reports whether the file gives the key.
func (g given) has(key string) bool { return g.value[key] != nil }

// sound reports whether nothing is wrong with the values of keys.
func (g given) sound(keys ...string) bool {
	return !slices.ContainsFunc(keys, func(k string) bool { return g.failed[k] })
}

// place gives the node to point at for a key: its value, else the mapping.
func (g given) place(n *yaml.Node, key string) *yaml.Node {
	if v := g.value[key]; v != nil {
		return v
	}
	return n
}

// A record is a mapping with fixed keys.
type record[T any] struct {
	keys   []key[T]
	layout func(T) layout
	check  func(s spot, n *yaml.Node, g given, v *T)
}

func (rec record[T]) names() []string {
	names := make([]string, len(rec.keys))
	for i, k := range rec.keys {
		names[i] = k.name
	}
	return names
}

func (rec record[T]) codec() codec[T] {
	return codec[T]{read: rec.read, write: rec.write, same: rec.same, shape: rec.shape()}
}

func (rec record[T]) read(s spot, n *yaml.Node, into *T) {
	g := given{map[string]*yaml.Node{}, map[string]bool{}}
	for _, p := range s.pairs(n) {
		i := slices.IndexFunc(rec.keys, func(k key[T]) bool { return k.name == p.key.Value })
		if i < 0 {
			s.unknownKey(p.key, rec.names())
			continue
		}
		before := len(s.problems)
		rec.keys[i].read(s, p.value, into)
		g.value[p.key.Value], g.failed[p.key.Value] = p.value, len(s.problems) > before
	}
	for _, k := range rec.keys {
		if k.must && !g.has(k.name) && mayHold(n) {
			s.lacks(n, k.name, k.doc)
		}
	}
	if rec.check != nil && mayHold(n) {
		rec.check(s, n, g, into)
	}
}

// lacks notes that a mapping goes without a key it needs.
func (s spot) lacks(n *yaml.Node, key, doc string) {
	what := "has no " + key
	if s.path == "" && s.owner == "" {
		what = "the file " + what
	}
	s.bad(n, what, "Add "+key+" ("+doc+").")
}

func (rec record[T]) write(f form, v, base T) *item {
	it := &item{kind: table}
	if rec.layout != nil {
		it.layout = rec.layout(v)
	}
	for _, k := range rec.keys {
		it.rows = append(it.rows, k.row(f, &v, &base))
	}
	if !slices.ContainsFunc(it.rows, func(r row) bool { return r.value != nil }) {
		return nil
	}
	return it
}

func (k key[T]) row(f form, v, base *T) row {
	word, same := k.write(f, v, base)
	r := row{key: k.name, value: word}
	needed := !f.based && (k.must || k.spelt != nil && k.spelt(v))
	r.quiet = word == nil || same && !needed
	var none T
	_, zero := k.write(f, v, &none)
	always := k.always != nil && k.always(v)
	r.pinned = word != nil && (always || f.based && !zero)
	r.zero = r.quiet && zero && !always
	return r
}

// same holds when writing the record would say nothing new of any key.
func (rec record[T]) same(a, b T) bool {
	for _, k := range rec.keys {
		if _, same := k.write(form{factor: 1}, &a, &b); !same {
			return false
		}
	}
	return true
}
