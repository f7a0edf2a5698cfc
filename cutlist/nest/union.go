package nest

import "slices"

// mayJoin reports whether a bar can hold an a and a b.
func (t *tree) mayJoin(a, b int) bool {
	ka, kb := &t.kinds[a], &t.kinds[b]
	if a == b && ka.count < 2 || ka.count < 1 || kb.count < 1 {
		return false
	}
	return ka.size+kb.size <= t.longestBar() && !slices.Contains(ka.apart, int32(b))
}

func (t task) longestBar() int {
	longest := 0
	for _, b := range t.bars {
		if b.most > 0 {
			longest = max(longest, b.size)
		}
	}
	return longest
}

// join makes a union of an a and a b.
func (t *tree) join(a, b int) {
	t.kinds[a].count--
	t.kinds[b].count--
	ka, kb := t.kinds[a], t.kinds[b]
	k := int32(len(t.kinds))
	u := kind{size: ka.size + kb.size, count: 1, a: int32(a), b: int32(b)}
	u.rows = append(slices.Clone(ka.rows), kb.rows...)
	for _, f := range slices.Concat(ka.apart, kb.apart) {
		if !slices.Contains(u.apart, f) {
			u.apart = append(u.apart, f)
			t.kinds[f].apart = append(t.kinds[f].apart, k)
		}
	}
	if u.own = ka.count > 0 || kb.count > 0; u.own {
		u.rows = append(u.rows, t.ownRow())
	}
	t.kinds = append(t.kinds, u)
	t.relabel(int32(a), int32(b), k)
}

func (t *tree) ownRow() int32 {
	if n := len(t.idle); n > 0 {
		r := t.idle[n-1]
		t.idle = t.idle[:n-1]
		t.lack[r].full = lackCost
		return r
	}
	t.newRow(1, lackCost, true)
	return int32(t.lp.rows - 1)
}

// relabel puts the union in the place of its parts: in the columns themselves if
// none can have them otherwise, else in copies.
func (t *tree) relabel(a, b, k int32) {
	all := t.kinds[a].count == 0 && t.kinds[b].count == 0
	for _, c := range t.columns() {
		if c.dead || !c.holds(a, b) {
			continue
		}
		kinds, counts := c.swapped(a, b, k)
		if all {
			c.kinds, c.counts = kinds, counts
		} else {
			t.known = append(t.known, t.load(c.bar, kinds, counts))
		}
	}
}

// columns lists those that stand for loads, basic ones that are no longer
// known too.
func (t *tree) columns() []*column {
	var list []*column
	for _, c := range t.known {
		if c.bar >= 0 && !c.basic {
			list = append(list, c)
		}
	}
	for _, c := range t.lp.basis {
		if c.bar >= 0 {
			list = append(list, c)
		}
	}
	return list
}

func (c *column) count(kind int32) int32 {
	if i := slices.Index(c.kinds, kind); i >= 0 {
		return c.counts[i]
	}
	return 0
}

func (c *column) holds(a, b int32) bool {
	if a == b {
		return c.count(a) > 1
	}
	return c.count(a) > 0 && c.count(b) > 0
}

func (c *column) swapped(a, b, k int32) (kinds, counts []int32) {
	for i, e := range c.kinds {
		n := c.counts[i]
		if e == a {
			n--
		}
		if e == b {
			n--
		}
		if n > 0 {
			kinds, counts = append(kinds, e), append(counts, n)
		}
	}
	return append(kinds, k), append(counts, 1)
}

// part takes the last union apart.
func (t *tree) part() {
	k := int32(len(t.kinds) - 1)
	u := t.kinds[k]
	for _, c := range t.columns() {
		if c.count(k) > 0 {
			t.undoLoad(c, u, k)
		}
	}
	t.known = slices.DeleteFunc(t.known, func(c *column) bool { return c.dead && !c.basic })
	if u.own {
		r := u.rows[len(u.rows)-1]
		t.lack[r].full = 0
		t.idle = append(t.idle, r)
	}
	for _, f := range u.apart {
		t.kinds[f].apart = t.kinds[f].apart[:len(t.kinds[f].apart)-1]
	}
	t.kinds = t.kinds[:k]
	t.kinds[u.a].count++
	t.kinds[u.b].count++
}

func (t *tree) undoLoad(c *column, u kind, k int32) {
	if u.own {
		c.dead, c.kinds, c.counts = true, nil, nil
		return
	}
	i := slices.Index(c.kinds, k)
	c.kinds, c.counts = slices.Delete(slices.Clone(c.kinds), i, i+1), slices.Delete(slices.Clone(c.counts), i, i+1)
	for _, e := range [2]int32{u.a, u.b} {
		if i := slices.Index(c.kinds, e); i >= 0 {
			c.counts[i]++
		} else {
			c.kinds, c.counts = append(c.kinds, e), append(c.counts, 1)
		}
	}
}

func (t *tree) keepApart(a, b int) {
	t.parted++
	t.kinds[a].apart = append(t.kinds[a].apart, int32(b))
	if a != b {
		t.kinds[b].apart = append(t.kinds[b].apart, int32(a))
	}
}

func (t *tree) letTogether(a, b int) {
	t.parted--
	t.kinds[a].apart = t.kinds[a].apart[:len(t.kinds[a].apart)-1]
	if a != b {
		t.kinds[b].apart = t.kinds[b].apart[:len(t.kinds[b].apart)-1]
	}
}
