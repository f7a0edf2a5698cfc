package planfile

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// patcher turns a file's text into that of another plan by replacing only the
// stretches that say something else. It works on places, not on the parsed
// tree, because a tree knows neither blank lines nor where a comment stood.
type patcher struct {
	document
	edits   []edit
	lost    bool // a comment stood in a stretch that was replaced
	unsound bool // a change that cannot be made this way
}

type edit struct {
	span
	text string
}

// patch gives the text changed to say what the item says.
func patch(doc document, it *item) (text string, lost, ok bool) {
	p := &patcher{document: doc}
	p.value(doc.root, it, place{})
	if p.unsound {
		return "", false, false
	}
	text, ok = p.apply()
	return text, p.lost, ok
}

// apply makes the edits, in order of place; what is only added goes before what
// is replaced there. They must not overlap.
func (p *patcher) apply() (string, bool) {
	slices.SortStableFunc(p.edits, func(a, b edit) int {
		return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to))
	})
	var b strings.Builder
	at := 0
	for _, e := range p.edits {
		if e.from < at {
			return "", false
		}
		b.WriteString(p.text[at:e.from])
		b.WriteString(e.text)
		at = e.to
	}
	b.WriteString(p.text[at:])
	return b.String(), true
}

// replace notes an edit, with line breaks as the file has them.
func (p *patcher) replace(s span, text string) {
	p.edits = append(p.edits, edit{s, strings.ReplaceAll(text, "\n", p.newline())})
}

// newline is how the file ends its lines.
func (d document) newline() string {
	if first := strings.IndexAny(d.text, "\r\n"); first >= 0 && strings.HasPrefix(d.text[first:], "\r\n") {
		return "\r\n"
	}
	return "\n"
}

// place says where a value stands.
type place struct {
	key  *yaml.Node // nil: in a list, or the whole file
	flow bool       // inside brackets
}

// value makes the value at n say what the item says.
func (p *patcher) value(n *yaml.Node, it *item, at place) {
	switch {
	case p.unsound || it.saidBy(n):
	case it.kind == list && n.Kind == yaml.SequenceNode && len(n.Content) > 0:
		p.elements(n, it, at)
	case it.kind == table && n.Kind == yaml.MappingNode && len(n.Content) > 0:
		p.table(n, it, at)
	default:
		p.wholly(n, it, at)
	}
}

// wholly replaces a value.
func (p *patcher) wholly(n *yaml.Node, it *item, at place) {
	if at.key != nil {
		p.whollyAfterKey(n, it, at)
		return
	}
	s, ok := p.spanOf(n)
	if !ok {
		p.unsound = true
		return
	}
	text := it.inline()
	if !at.flow && !it.bracketed(n.Column) {
		text = strings.TrimLeft(it.blockText(n.Column-1), " ")
	}
	p.lost = p.lost || comments(p.text[s.from:s.to])
	p.replace(s, text)
}

// whollyAfterKey replaces the value of a key. One on the key's own line leaves
// the blanks before it alone.
func (p *patcher) whollyAfterKey(n *yaml.Node, it *item, at place) {
	colon, ok := p.afterColon(at.key)
	old := span{colon, colon}
	if ok && !isAbsent(n) {
		old, ok = p.spanOf(n)
	}
	if !ok {
		p.unsound = true
		return
	}
	indent := at.key.Column - 1
	s, text := span{colon, old.to}, " "+it.inline()
	switch {
	case !at.flow && !it.bracketed(indent+utf8.RuneCountInString(at.key.Value)+2):
		text = "\n" + it.blockText(indent+indentStep)
	case n.Line == at.key.Line && !isAbsent(n):
		s, text = old, it.inline()
	}
	p.lost = p.lost || comments(p.text[s.from:s.to])
	p.replace(s, text)
}
