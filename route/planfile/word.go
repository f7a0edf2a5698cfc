package planfile

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// text gives the value of a node that is text.
func (s spot) text(n *yaml.Node) (string, bool) {
	if n.Kind != yaml.ScalarNode || n.ShortTag() != "!!str" {
		fix := "Write it as text."
		if n.Kind == yaml.ScalarNode && !isNull(n) {
			fix = "Put it in quotes: \"" + short(n.Value) + "\"."
		}
		s.bad(n, "must be text, but "+says(n), fix)
		return "", false
	}
	return n.Value, true
}

// label is text in one line: a name, a thread, a material.
func label[E ~string]() codec[E] {
	return codec[E]{
		read: func(s spot, n *yaml.Node, into *E) {
			if v, ok := s.text(n); ok && (v == "" || s.goodName(n, v)) {
				*into = E(v)
			}
		},
		write: writeText[E], same: sameText[E], shape: shape{kind: "text"},
	}
}

// title is a label that may not be empty.
func title[E ~string]() codec[E] {
	c := label[E]()
	c.read = func(s spot, n *yaml.Node, into *E) {
		if v, ok := s.text(n); ok && s.goodName(n, v) {
			*into = E(v)
		}
	}
	c.shape = shape{kind: "name"}
	return c
}

func sameText[E ~string](a, b E) bool { return a == b }

func writeText[E ~string](_ form, v, base E) *item {
	if v == "" && base == "" {
		return nil
	}
	return textItem(string(v))
}

func textItem(v string) *item {
	return &item{word: quoted(v), holds: func(n *yaml.Node) bool {
		return n.Kind == yaml.ScalarNode && n.ShortTag() == "!!str" && n.Value == v
	}}
}

// choice is one of a few words.
func choice[E ~string](words ...E) codec[E] {
	names := make([]string, len(words))
	for i, w := range words {
		names[i] = string(w)
	}
	c := label[E]()
	c.read = func(s spot, n *yaml.Node, into *E) {
		if n.Kind == yaml.ScalarNode && slices.Contains(names, n.Value) {
			*into = E(n.Value)
			return
		}
		s.bad(n, "must be one of "+strings.Join(names, ", ")+", but "+says(n), offer("word", n.Value, names))
	}
	c.shape = shape{kind: "choice", words: names}
	return c
}

// origin says who vouches for a number. Typical is what silence means, so the
// two are the same.
func sameOrigin[E ~string](empty E) func(a, b E) bool {
	return func(a, b E) bool { return a == b || a+b == empty }
}

// truth is true or false.
func truth() codec[bool] {
	return codec[bool]{
		read: func(s spot, n *yaml.Node, into *bool) {
			if n.Kind != yaml.ScalarNode || n.ShortTag() != "!!bool" {
				s.bad(n, "must be true or false, but "+says(n), "Write true or false, without quotes.")
				return
			}
			*into = strings.EqualFold(n.Value, "true")
		},
		write: func(_ form, v, base bool) *item {
			if !v && !base {
				return nil
			}
			word := map[bool]string{true: "true", false: "false"}[v]
			return &item{word: word, holds: func(n *yaml.Node) bool {
				return n.ShortTag() == "!!bool" && strings.EqualFold(n.Value, word)
			}}
		},
		same:  func(a, b bool) bool { return a == b },
		shape: shape{kind: "flag"},
	}
}
