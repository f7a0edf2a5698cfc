package planfile

import (
	"fmt"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"
)

// pair is one key of a mapping with its value.
type pair struct{ key, value *yaml.Node }

// mayHold reports whether a node is a mapping or nothing at all: an empty
// section is read as one with no keys.
func mayHold(n *yaml.Node) bool { return n.Kind == yaml.MappingNode || isNull(n) }

// pairs gives the keys of a mapping, each once, in file order.
func (s spot) pairs(n *yaml.Node) []pair {
	if !mayHold(n) {
		s.bad(n, "must hold keys with values, but "+says(n), "Write it as key: value lines, indented beneath, or as {key: value}.")
		return nil
	}
	if len(n.Content)/2 > maxEntries {
		s.bad(n, fmt.Sprintf("holds more than %d entries", maxEntries), "Split the plan: no machine has that many.")
		return nil
	}
	var out []pair
	first := map[string]*yaml.Node{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if k := n.Content[i]; s.freshKey(k, first) {
			out = append(out, pair{k, n.Content[i+1]})
		}
	}
	return out
}

// freshKey reports whether a key is one word not met before in its mapping.
func (s spot) freshKey(k *yaml.Node, first map[string]*yaml.Node) bool {
	if k.Kind != yaml.ScalarNode || isNull(k) {
		s.bad(k, "has a key that "+says(k), "Make the key one word.")
		return false
	}
	if twin := first[k.Value]; twin != nil {
		s.in(k.Value).bad(k, fmt.Sprintf("is given twice, first on line %d", twin.Line), "Keep one of the two.")
		return false
	}
	first[k.Value] = k
	return true
}

// unknownKey notes a key nobody knows.
func (s spot) unknownKey(k *yaml.Node, known []string) {
	if k.Value == "<<" {
		s.note(k, "the merge key << takes keys from elsewhere", "Write the keys out: plans do not merge.")
		return
	}
	what := fmt.Sprintf("there is no key %q here", short(k.Value))
	if s.path != "" {
		what = fmt.Sprintf("%s has no key %q", s.path, short(k.Value))
	}
	s.note(k, what, offer("key", k.Value, known))
}

// maxName is the longest name in characters; it has to fit on a printed sheet.
const maxName = 100

// goodName reports whether a text may serve as a name, and notes why not.
func (s spot) goodName(n *yaml.Node, name string) bool {
	switch {
	case strings.TrimSpace(name) == "":
		s.misnamed(n, "is empty", "Give it a name.")
	case strings.TrimSpace(name) != name:
		s.misnamed(n, fmt.Sprintf("begins or ends with a space: %q", short(name)), "Take the space away.")
	case len([]rune(name)) > maxName:
		s.misnamed(n, fmt.Sprintf("has more than %d characters", maxName), "Shorten it.")
	case strings.ContainsFunc(name, unprintable):
		s.misnamed(n, fmt.Sprintf("holds a character that cannot be printed: %q", short(name)), "Take the character away.")
	default:
		return true
	}
	return false
}

// misnamed notes what is wrong with a name: that under a key, or that of the owner.
func (s spot) misnamed(n *yaml.Node, what, fix string) {
	if s.path == "" {
		what = "the name " + what
	}
	s.bad(n, what, fix)
}

// Joiners are letters of some scripts: Persian words need the first.
const (
	nonJoiner = '\u200C'
	joiner    = '\u200D'
)

func unprintable(r rune) bool {
	return r != nonJoiner && r != joiner && (!unicode.IsGraphic(r) || isBreak(r))
}
