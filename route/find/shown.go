package find

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
// fittings more, or would hit another run and is dearer than the one taken. The first and the chosen one stay. It gives the list and the
// place of the chosen way.
func (t *table) shown(i int, options []*option, chosen int) ([]*option, int) {
	var list []*option
	at := -1
	for n, o := range options {
		far := o.way.Cost > farDearer*options[0].way.Cost || o.way.Fittings() >= options[0].way.Fittings()+manyMore
		if with, _ := t.worstClash(i, o); with >= 0 && at >= 0 {
			far = true
		}
		far = far && len(list) > 1
		if n > 0 && n != chosen && (far || t.bettered(i, o, list)) {
			continue
		}
		if n == chosen {
			at = len(list)
		}
		list = append(list, o)
	}
	return list, at
}

// bettered reports whether an option is bettered by one of a list that stands
// clear of the other runs.
func (t *table) bettered(i int, o *option, list []*option) bool {
	for _, better := range list {
		if !betters(&better.way, &o.way) {
			continue
		}
		if with, _ := t.worstClash(i, better); with < 0 {
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
