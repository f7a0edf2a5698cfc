package planfile

import (
	"strings"
	"unicode/utf8"
)

const (
	// indentStep is how far each level stands in.
	indentStep = 2
	// lineWidth is how long a line in brackets may grow before a table that may
	// choose is set out one entry to a line.
	lineWidth = 110
)

// inline gives an item in brackets, on one line.
func (it *item) inline() string {
	switch {
	case it == nil:
		return ""
	case it.kind == word:
		return it.word
	}
	var parts []string
	for _, x := range it.list {
		parts = append(parts, x.inline())
	}
	for _, r := range it.spoken() {
		parts = append(parts, strings.TrimRight(quoted(r.key)+": "+r.value.inline(), " "))
	}
	if it.kind == list {
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

// bracketed reports whether an item goes on one line after a key of so many
// characters at an indent.
func (it *item) bracketed(before int) bool {
	switch {
	case it == nil || it.kind == word || it.layout == flow:
		return true
	case len(it.list)+len(it.spoken()) == 0:
		return true
	case it.layout == fit:
		return before+utf8.RuneCountInString(it.inline()) <= lineWidth
	}
	return false
}

// entry gives "key: value" at an indent, without the indent of its first line
// and without a line break at the end.
func (r row) entry(indent int) string {
	key := quoted(r.key) + ":"
	if r.value.bracketed(indent + len(key) + 1) {
		return strings.TrimRight(key+" "+r.value.inline(), " ")
	}
	return key + "\n" + r.value.blockText(indent+indentStep)
}

// blockText gives an item one entry to a line, every line with its indent.
func (it *item) blockText(indent int) string {
	pad := strings.Repeat(" ", indent)
	var out []string
	for _, x := range it.list {
		out = append(out, pad+x.dashed(indent))
	}
	for _, r := range it.spoken() {
		out = append(out, pad+r.entry(indent))
	}
	return strings.Join(out, "\n")
}

// dashed gives an element of a block list, from its dash on.
func (it *item) dashed(indent int) string {
	if it.bracketed(indent + indentStep) {
		return "- " + it.inline()
	}
	return "- " + strings.TrimLeft(it.blockText(indent+indentStep), " ")
}

// document gives a whole file: sections with many lines stand between blank ones.
func (it *item) document() string {
	var b strings.Builder
	gap := false
	for i, r := range it.spoken() {
		text := r.entry(0)
		tall := apart(r)
		if i > 0 && (tall || gap) {
			b.WriteString("\n")
		}
		b.WriteString(text + "\n")
		gap = tall
	}
	return b.String()
}

// apart reports whether a section stands between blank lines.
func apart(r row) bool {
	return r.value != nil && r.value.kind == table && r.value.ordered && r.value.layout == block
}
