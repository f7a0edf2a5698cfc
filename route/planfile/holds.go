package planfile

import (
	"slices"

	"gopkg.in/yaml.v3"
)

// saidBy reports whether a value of a file already says what an item says.
func (it *item) saidBy(n *yaml.Node) bool {
	switch {
	case it == nil:
		return isEmpty(n)
	case it.holds != nil:
		return it.holds(n)
	case it.kind == word:
		return n.Kind == yaml.ScalarNode && n.Value == it.word
	case it.kind == list:
		return n.Kind == yaml.SequenceNode && slices.EqualFunc(it.list, n.Content, (*item).saidBy)
	}
	return mayHold(n) && it.rowsSaidBy(n)
}

// isEmpty reports whether a value says nothing: what an absent key says.
func isEmpty(n *yaml.Node) bool {
	if n.Kind != yaml.ScalarNode {
		return len(n.Content) == 0
	}
	v, ok := number(n)
	return isNull(n) || n.Value == "" || n.Value == "false" || ok && v == 0
}

func (it *item) rowsSaidBy(n *yaml.Node) bool {
	pairs := it.match(n)
	said := make([]bool, len(it.rows))
	last := -1
	for i, r := range pairs {
		if r < 0 || n.Content[2*i].Value != it.rows[r].key || it.ordered && r < last {
			return false
		}
		if !it.rows[r].value.saidBy(n.Content[2*i+1]) {
			return false
		}
		said[r], last = true, r
	}
	for r := range it.rows {
		if !said[r] && !it.rows[r].quiet {
			return false
		}
	}
	return true
}

// match gives, for each pair of a mapping, the row that stands for it, or −1.
// In a table of names, a pair whose name is gone goes with a row whose name is
// new and which says the same: it was renamed.
func (it *item) match(n *yaml.Node) []int {
	at := make(map[string]int, len(it.rows))
	for r := range it.rows {
		at[it.rows[r].key] = r
	}
	pairs := make([]int, len(n.Content)/2)
	taken := make([]bool, len(it.rows))
	for i := range pairs {
		r, ok := at[n.Content[2*i].Value]
		if !ok {
			pairs[i] = -1
			continue
		}
		pairs[i], taken[r] = r, true
	}
	if it.ordered {
		it.matchRenamed(n, pairs, taken)
	}
	return pairs
}

// maxRenamed bounds the names looked through for one that was changed.
const maxRenamed = 50

func (it *item) matchRenamed(n *yaml.Node, pairs []int, taken []bool) {
	var fresh []int
	for r := range it.rows {
		if !taken[r] && len(fresh) < maxRenamed {
			fresh = append(fresh, r)
		}
	}
	for i := range pairs {
		if pairs[i] >= 0 {
			continue
		}
		for j, r := range fresh {
			if it.rows[r].value.saidBy(n.Content[2*i+1]) {
				pairs[i] = r
				fresh = slices.Delete(fresh, j, j+1)
				break
			}
		}
	}
}
