package find

import "slices"

const (
	// farDearer is how many times the first way's cost another may have and still
	// be shown beside two others.
	farDearer = 2.5
	// manyMore is how many fittings more than the first a way may not have and
	// still be shown beside two others: a seal each to leak.
	manyMore = 3
)

// shown leaves out of a run's list what a builder would pass over: a way that is
// in nothing better than a cheaper one of the list that stands clear of the other
// runs, and where there is a choice of two, one that is far dearer, needs many
// fittings more, or would hit another run and is dearer than the one taken. The
// first and the chosen one stay. It gives the list and the place of the chosen
// way.
//
// A list that would have fewer than fewestWays keeps the cheapest of what was
// left out: a person who looks for another way should find one.
func (t *table) shown(i int, options []*option, chosen int) ([]*option, int) {
	keep := t.worth(i, options, chosen)
	for n := 0; n < len(options) && len(keep) < fewestWays; n++ {
		if !slices.Contains(keep, n) && !slight(options[n]) {
			keep = append(keep, n)
		}
	}
	slices.Sort(keep)
	list := make([]*option, len(keep))
	for k, n := range keep {
		list[k] = options[n]
	}
	return list, slices.Index(keep, chosen)
}

// fewestWays is how many ways a list holds when so many were found.
const fewestWays = 3

// worth lists the places of the options that a builder would look at.
func (t *table) worth(i int, options []*option, chosen int) (keep []int) {
	var list []*option
	at := -1
	for n, o := range options {
		far := o.way.Cost > farDearer*options[0].way.Cost || o.way.Fittings() >= options[0].way.Fittings()+manyMore
		far = len(list) > 1 && (far || at >= 0 && t.hits(i, o))
		if n > 0 && n != chosen && (far || slight(o) || t.bettered(i, o, list)) {
			continue
		}
		if n == chosen {
			at = len(list)
		}
		list, keep = append(list, o), append(keep, n)
	}
	return keep
}

// leastBend is the least turn a builder would set out to bend, degrees: a hand
// holds a turn to one or two (common practice), and a socket takes up one.
const leastBend = 3

// slight reports whether a way has a bend nobody would make on purpose.
func slight(o *option) bool {
	for _, b := range o.way.Formed.Bends {
		if b.Turn < leastBend {
			return true
		}
	}
	return false
}

// bettered reports whether an option is bettered by one of a list that stands
// clear of the other runs.
func (t *table) bettered(i int, o *option, list []*option) bool {
	for _, better := range list {
		if betters(&better.way, &o.way) && !t.hits(i, better) {
			return true
		}
	}
	return false
}

// noShorter is how much shorter a tube may be and a builder not care, mm.
const noShorter = 5

// betters reports whether a builder has nothing to gain from w that v has not:
// bends, odd ones among them, fittings, tube, money, and looks that cost no
// more than one bend.
func betters(v, w *Way) bool {
	return len(v.Formed.Bends) <= len(w.Formed.Bends) && len(oddTurns(*v)) <= len(oddTurns(*w)) &&
		v.Fittings() <= w.Fittings() && v.Formed.Developed <= w.Formed.Developed+noShorter && v.Price <= w.Price &&
		(v.untidiness() <= w.untidiness() || len(v.Formed.Bends)+1 < len(w.Formed.Bends))
}
