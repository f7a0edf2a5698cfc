package planfile

import (
	"strings"
)

// drop takes out the entries that no longer stand for anything: those whose
// index is negative.
func (p *patcher) drop(entries []int, spans []span, flow bool) {
	for i := 0; i < len(entries); i++ {
		if entries[i] >= 0 {
			continue
		}
		from := i
		for i+1 < len(entries) && entries[i+1] < 0 {
			i++
		}
		if flow {
			p.dropInline(spans, from, i)
		} else {
			p.dropLines(spans, from, i)
		}
	}
}

// dropInline takes entries from..to out of brackets, with the comma before
// them or, at the start, the one after. At least one entry must stay.
func (p *patcher) dropInline(spans []span, from, to int) {
	s := span{0, spans[to].to}
	if from > 0 {
		s.from = spans[from-1].to
	} else {
		s = span{spans[0].from, spans[to+1].from}
	}
	p.lost = p.lost || comments(p.text[s.from:s.to])
	p.replace(s, "")
}

// dropLines takes out the lines of entries, with the comments on them and, but
// for the first entry of all, the comment lines right above: they speak of what
// is gone.
func (p *patcher) dropLines(spans []span, from, to int) {
	for i := from; i <= to; i++ {
		first, _ := p.place(spans[i].from)
		last, _ := p.place(spans[i].to)
		if !p.alone(spans[i], first, last) {
			p.unsound = true
			return
		}
		for i > 0 && first > 1 && p.isCommentAt(first-1, p.indentOf(first)) {
			first--
		}
		p.replace(span{p.start[first-1], p.nextLine(last)}, "")
	}
}

// alone reports whether nothing else stands on an entry's lines but a dash
// before it and a comment after it.
func (p *patcher) alone(s span, first, last int) bool {
	before := strings.TrimSpace(p.text[p.start[first-1]:s.from])
	after := strings.TrimSpace(p.text[s.to:p.lineEnd(last)])
	return (before == "" || before == "-") && (after == "" || strings.HasPrefix(after, "#"))
}

func (d document) indentOf(line int) int {
	text := d.line(line)
	return len(text) - len(strings.TrimLeft(text, " "))
}

func (d document) isCommentAt(line, indent int) bool {
	return d.indentOf(line) == indent && strings.HasPrefix(d.line(line)[indent:], "#")
}
