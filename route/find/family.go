package find

import (
	"cmp"
	"slices"
	"sort"
)

// family is one idea's variants: all that bear one name. It keeps the cheapest,
// as many as are ever looked at, in order of cost; of equal ones those that were
// offered first.
type family struct {
	name  string
	ideas []idea
}

// mostTries bounds how many variants of one name are checked for clearance.
const mostTries = 48

// wants reports whether an idea that costs at least this much may be among those
// kept.
func (f *family) wants(key int64) bool {
	return len(f.ideas) < mostTries || key <= f.ideas[mostTries-1].key
}

// add keeps an idea if it is among the cheapest.
func (f *family) add(i *idea) bool {
	n := sort.Search(len(f.ideas), func(n int) bool { return f.ideas[n].compare(i) > 0 })
	if n == mostTries {
		return false
	}
	if len(f.ideas) == mostTries {
		f.ideas = f.ideas[:mostTries-1]
	}
	f.ideas = slices.Insert(f.ideas, n, *i)
	return true
}

// kin gives the family of a name, which may have no idea yet.
func (h *hunt) kin(n naming) *family {
	if f, ok := h.names[n]; ok {
		return f
	}
	if h.names == nil {
		h.names = map[naming]*family{}
	}
	f := &family{name: n.words()}
	h.names[n] = f
	return f
}

// offer takes a way in that can be formed and may be looked at.
func (h *hunt) offer(start, end *build, miss Miss, corners []vec) {
	f, sh, ok := h.sketch(start, end, corners)
	if !ok {
		return
	}
	w := &h.plan.Weigh
	if w.Tidy >= 0 && !f.wants(costKey(costOf(*w, sh, start, end))) {
		return // even if it were tidy
	}
	i := h.idea(f, sh, start, end)
	if !f.wants(i.key) {
		return
	}
	i.miss, i.corners = miss, slices.Clone(corners)
	if len(f.ideas) == 0 {
		h.families = append(h.families, f)
	}
	if f.add(&i) {
		h.filed++
	}
}

// drawUp names and prices a way; false when it cannot be formed.
func (h *hunt) drawUp(start, end *build, corners []vec) (idea, bool) {
	f, sh, ok := h.sketch(start, end, corners)
	if !ok {
		return idea{}, false
	}
	i := h.idea(f, sh, start, end)
	i.corners = corners
	return i, true
}

// sketch names and measures a way, but for how tidy it is; false when it cannot
// be formed. The shape stands until the next.
func (h *hunt) sketch(start, end *build, corners []vec) (*family, shape, bool) {
	h.path = pathBetween(h.path[:0], start, end, corners)
	sh := measureInto(h.tube.Tube, h.path, h.turns[:0])
	h.turns = sh.turns
	if len(sh.turns) > 0 && h.tube.Radius == 0 || len(sh.turns) > mostBends {
		return nil, sh, false
	}
	f := h.kin(namingOf(sh, start, end))
	switch over := h.tooLong(sh, start, end); {
	case sh.short > bendSlack:
		h.note(f.name, hit{short: sh.short})
		return f, sh, false
	case over > sameSpot:
		h.note(f.name, hit{what: theStock, short: over})
		return f, sh, false
	}
	return f, sh, true
}

// idea is a way that was sketched just now, without its corners.
func (h *hunt) idea(f *family, sh shape, start, end *build) idea {
	sh.untidy = h.untidyPath(h.path, start, end)
	cost := costOf(h.plan.Weigh, sh, start, end)
	return idea{
		start: start, end: end, name: f.name, cost: cost, key: costKey(cost), bends: len(sh.turns), test: new(tested),
	}
}

// sort puts the families in order of cost.
func (h *hunt) sort() {
	slices.SortStableFunc(h.families, byCheapest)
}

// inOrder gives the families in order, those of the base included.
func (h *hunt) inOrder() []*family {
	h.sort()
	if len(h.base) == 0 {
		return h.families
	}
	list := slices.Clone(h.base)
	for _, f := range h.families {
		n := slices.IndexFunc(list, func(g *family) bool { return g.name == f.name })
		if n < 0 {
			list = append(list, f)
			continue
		}
		both := &family{f.name, slices.Concat(list[n].ideas, f.ideas)}
		slices.SortStableFunc(both.ideas, byCost)
		h.halt.did(len(both.ideas) / 8)
		list[n] = both
	}
	slices.SortStableFunc(list, byCheapest)
	return list
}

// compare orders ideas by cost, then the simpler first, in a fixed order.
func (a *idea) compare(b *idea) int {
	if a.key != b.key {
		return cmp.Compare(a.key, b.key)
	}
	return cmp.Or(
		cmp.Compare(len(a.corners), len(b.corners)),
		cmp.Compare(len(a.start.steps)+len(a.end.steps), len(b.start.steps)+len(b.end.steps)),
		cmp.Compare(a.name, b.name),
		cmp.Compare(a.start.rank, b.start.rank),
		cmp.Compare(a.end.rank, b.end.rank),
	)
}

func byCost(a, b idea) int { return a.compare(&b) }

func byCheapest(f, g *family) int { return f.ideas[0].compare(&g.ideas[0]) }
