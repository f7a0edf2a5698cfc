package planfile

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// maxMoves is how often entries are moved: once for the parts and runs, once
// for the ports inside them, and once to see that nothing is left to do.
const maxMoves = 3

// reordered moves the entries of the file's tables of names, with the comments
// above them, into the order the item has them in.
func reordered(doc document, it *item) (document, bool) {
	for range maxMoves {
		p := &patcher{document: doc}
		p.moves(doc.root, it)
		if p.unsound {
			return doc, false
		}
		if len(p.edits) == 0 {
			return doc, true
		}
		text, ok := p.apply()
		if !ok {
			return doc, false
		}
		next, problems := parse(doc.file, []byte(text))
		if problems != nil || next.root == nil {
			return doc, false
		}
		next.bom = doc.bom
		doc = next
	}
	return doc, true
}

// moves notes the moves of the outermost tables out of order.
func (p *patcher) moves(n *yaml.Node, it *item) {
	if it == nil || it.kind != table || n.Kind != yaml.MappingNode {
		return
	}
	pairs := it.match(n)
	if it.ordered && n.Style&yaml.FlowStyle == 0 && !slices.IsSorted(kept(pairs)) {
		p.move(n, pairs)
		return
	}
	for i, r := range pairs {
		if r >= 0 {
			p.moves(n.Content[2*i+1], it.rows[r].value)
		}
	}
}

// move puts the entries that stay into order, each into a place one of them
// had; the ones that go stay where they are.
func (p *patcher) move(n *yaml.Node, pairs []int) {
	chunks, ok := p.chunks(n)
	if !ok {
		p.unsound = true
		return
	}
	var slots []int // the entries that stay
	for i, r := range pairs {
		if r >= 0 {
			slots = append(slots, i)
		}
	}
	sorted := slices.Clone(slots)
	slices.SortFunc(sorted, func(a, b int) int { return pairs[a] - pairs[b] })
	for k, slot := range slots {
		if from := chunks[sorted[k]]; sorted[k] != slot {
			text := strings.TrimRight(p.text[from.from:from.to], "\r\n") + p.breaks(chunks[slot])
			p.edits = append(p.edits, edit{chunks[slot], text})
		}
	}
}

// breaks gives the line breaks a stretch ends with, at least one: blank lines
// stay between the places, whoever stands there.
func (p *patcher) breaks(s span) string {
	text := p.text[s.from:s.to]
	if end := text[len(strings.TrimRight(text, "\r\n")):]; end != "" {
		return end
	}
	return p.newline()
}

// chunks cuts a mapping into its entries, each with the comment lines above it
// and all that follows down to the next. The comment above the first entry
// speaks of the whole mapping and belongs to none.
func (p *patcher) chunks(n *yaml.Node) ([]span, bool) {
	chunks := make([]span, len(n.Content)/2)
	for i := range chunks {
		key := n.Content[2*i]
		line := key.Line
		if strings.TrimSpace(p.text[p.start[line-1]:p.offset(line, key.Column)]) != "" {
			return nil, false
		}
		for i > 0 && line > 1 && p.isCommentAt(line-1, key.Column-1) {
			line--
		}
		chunks[i].from = p.start[line-1]
		if i > 0 {
			chunks[i-1].to = chunks[i].from
		}
	}
	end, ok := p.endOf(n)
	line, _ := p.place(end)
	chunks[len(chunks)-1].to = p.nextLine(line)
	return chunks, ok
}
