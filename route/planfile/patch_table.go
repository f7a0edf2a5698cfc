package planfile

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// table changes, removes and adds the keys of a mapping.
func (p *patcher) table(n *yaml.Node, it *item, at place) {
	flow := n.Style&yaml.FlowStyle != 0
	pairs := it.match(n)
	none := len(kept(it.keepers(n, pairs))) == 0
	if it.ordered && !slices.IsSorted(kept(pairs)) || none && (flow || at.key == nil) {
		p.wholly(n, it, at)
		return
	}
	pairs = it.keepers(n, pairs)
	spans, ok := p.pairSpans(n)
	if !ok {
		p.unsound = true
		return
	}
	if p.behindDash(spans[0]) && (pairs[0] < 0 || it.startsAnew(pairs)) {
		p.wholly(n, it, at) // the dash of its list stands on the line of its first key
		return
	}
	for i, r := range pairs {
		if r >= 0 {
			p.pair(n.Content[2*i], n.Content[2*i+1], it.rows[r], flow)
		}
	}
	p.drop(pairs, spans, flow)
	for r := range it.rows {
		if !it.rows[r].quiet && !slices.Contains(pairs, r) {
			p.addRow(n, it, r, pairs, spans, flow)
		}
	}
}

// behindDash reports whether only a list's dash stands before an entry on its line.
func (p *patcher) behindDash(s span) bool {
	line, _ := p.place(s.from)
	return strings.TrimSpace(p.text[p.start[line-1]:s.from]) == "-"
}

// startsAnew reports whether a row is to be added before all that stay.
func (it *item) startsAnew(pairs []int) bool {
	for r := range it.rows {
		if !it.rows[r].quiet && !slices.Contains(pairs, r) {
			return !slices.ContainsFunc(pairs, func(have int) bool { return have >= 0 && have < r })
		}
	}
	return false
}

// kept gives the rows that pairs stand for.
func kept(pairs []int) []int {
	return slices.DeleteFunc(slices.Clone(pairs), func(r int) bool { return r < 0 })
}

// keepers drops the pairs whose value is to be an empty one, unless they
// already are.
func (it *item) keepers(n *yaml.Node, pairs []int) []int {
	out := slices.Clone(pairs)
	for i, r := range out {
		if r < 0 {
			continue
		}
		if row := it.rows[r]; (row.value == nil || row.zero) && !row.value.saidBy(n.Content[2*i+1]) {
			out[i] = -1
		}
	}
	return out
}

func (p *patcher) pairSpans(n *yaml.Node) ([]span, bool) {
	spans := make([]span, len(n.Content)/2)
	for i := range spans {
		key, okKey := p.spanOf(n.Content[2*i])
		end, okEnd := p.endOf(&yaml.Node{Kind: yaml.MappingNode, Content: n.Content[2*i : 2*i+2]})
		if !okKey || !okEnd {
			return nil, false
		}
		spans[i] = span{key.from, end}
	}
	return spans, true
}

// pair changes one key and its value where they differ.
func (p *patcher) pair(key, value *yaml.Node, r row, flow bool) {
	if key.Value != r.key {
		s, ok := p.spanOf(key)
		p.unsound = p.unsound || !ok
		p.replace(s, quoted(r.key))
	}
	if r.value != nil {
		p.value(value, r.value, place{key: key, flow: flow})
	}
}

// addRow adds a row after the nearest one before it that stays.
func (p *patcher) addRow(n *yaml.Node, it *item, r int, pairs []int, spans []span, flow bool) {
	after, first := -1, slices.IndexFunc(pairs, func(have int) bool { return have >= 0 })
	for i, have := range pairs {
		if have >= 0 && have < r && (after < 0 || have > pairs[after]) {
			after = i
		}
	}
	indent := n.Content[0].Column - 1
	switch {
	case flow && after >= 0:
		p.replace(span{spans[after].to, spans[after].to}, ", "+inlineRow(it.rows[r]))
	case flow:
		p.replace(span{spans[first].from, spans[first].from}, inlineRow(it.rows[r])+", ")
	case after >= 0:
		p.addLines(spans[after].to, indent, it.rows[r].entry(indent), indent == 0 && apart(it.rows[r]))
	default:
		p.addBefore(spans[0].from, indent, it.rows[r].entry(indent))
	}
}

func inlineRow(r row) string {
	return strings.TrimRight(quoted(r.key)+": "+r.value.inline(), " ")
}

// addLines adds an entry on lines of its own, after the line on which a byte
// stands.
func (p *patcher) addLines(after, indent int, text string, gap bool) {
	line, _ := p.place(after)
	at := p.nextLine(line)
	text = strings.Repeat(" ", indent) + text + "\n"
	if gap {
		text = "\n" + text
	}
	if p.lineEnd(line) == at { // the file ends without a line break
		text = "\n" + text
	}
	p.replace(span{at, at}, text)
}

// addBefore adds an entry on lines of its own, before the line on which a byte
// stands with nothing but blanks before it.
func (p *patcher) addBefore(at, indent int, text string) {
	line, _ := p.place(at)
	from := p.start[line-1]
	if strings.TrimSpace(p.text[from:at]) != "" {
		p.unsound = true
		return
	}
	p.replace(span{from, from}, strings.Repeat(" ", indent)+text+"\n")
}
