package planfile

import (
	"gopkg.in/yaml.v3"
)

// elements changes, removes and adds the elements of a list. What is the same
// at both ends stays; what differs in between is paired off in order.
func (p *patcher) elements(n *yaml.Node, it *item, at place) {
	flow := n.Style&yaml.FlowStyle != 0
	spans := make([]span, len(n.Content))
	for i, c := range n.Content {
		s, ok := p.spanOf(c)
		if !ok {
			p.unsound = true
			return
		}
		spans[i] = s
	}
	head, tail := it.ends(n)
	pairs := make([]int, len(n.Content))
	for i := range pairs {
		pairs[i] = paired(i, head, tail, len(n.Content), len(it.list))
		if pairs[i] >= 0 {
			p.value(n.Content[i], it.list[pairs[i]], place{flow: flow})
		}
	}
	if len(kept(pairs)) == 0 {
		p.wholly(n, it, at)
		return
	}
	p.drop(pairs, spans, flow)
	p.addElements(n, it, pairs, spans, flow)
}

// ends counts the elements that are the same at the start and at the end.
func (it *item) ends(n *yaml.Node) (head, tail int) {
	shorter := min(len(n.Content), len(it.list))
	for head < shorter && it.list[head].saidBy(n.Content[head]) {
		head++
	}
	for tail < shorter-head && it.list[len(it.list)-1-tail].saidBy(n.Content[len(n.Content)-1-tail]) {
		tail++
	}
	return head, tail
}

// paired gives the new index of old element i, or −1 when it goes.
func paired(i, head, tail, before, after int) int {
	switch {
	case i >= before-tail:
		return i + after - before
	case i < after-tail:
		return i
	}
	return -1
}

// addElements adds the elements that pair with none: those between the last of
// the middle and the tail.
func (p *patcher) addElements(n *yaml.Node, it *item, pairs []int, spans []span, flow bool) {
	have := map[int]bool{}
	for _, r := range pairs {
		have[r] = true
	}
	after := -1 // the old element the new ones follow
	for r, x := range it.list {
		if have[r] {
			after++
			for pairs[after] != r {
				after++
			}
			continue
		}
		p.addElement(n, x, after, spans, flow)
	}
}

func (p *patcher) addElement(n *yaml.Node, x *item, after int, spans []span, flow bool) {
	indent := n.Column - 1
	switch {
	case flow && after >= 0:
		p.replace(span{spans[after].to, spans[after].to}, ", "+x.inline())
	case flow:
		p.replace(span{spans[0].from, spans[0].from}, x.inline()+", ")
	case after >= 0:
		p.addLines(spans[after].to, indent, x.dashed(indent), false)
	default:
		p.addBefore(p.offset(n.Line, n.Column), indent, x.dashed(indent))
	}
}
