package find

import (
	"context"
	"math"
)

// mostTidyRounds bounds how often the runs are gone through for looks: what one
// run lines up with may move in its turn.
const mostTidyRounds = 3

// tidyUp gives each run in turn the way that is cheapest together with how it
// looks beside the others: another of its own, or its chosen one with a leg slid
// into line. A run whose way is drawn or picked, or clashes, stays.
func (t *table) tidyUp(ctx context.Context) error {
	if t.plan.Weigh.Tidy == 0 {
		return nil
	}
	for range mostTidyRounds {
		moved := false
		for _, i := range t.order {
			if err := ctx.Err(); err != nil {
				return err
			}
			if r := &t.rows[i]; r.free() && r.chosen >= 0 && !t.clashing(i) {
				moved = t.choose(i) || moved
				moved = t.slide(i) || moved
			}
		}
		if !moved {
			return nil
		}
	}
	return nil
}

// looks is what a way of a run costs together with how it looks beside the
// chosen ways of the others, in steps of sameCost.
func (t *table) looks(i int, w *Way) int64 {
	sum := costKey(w.Cost)
	for _, j := range t.order {
		if c := t.rows[j].chosen; j != i && c >= 0 {
			sum += t.tidyPair(w, &t.rows[j].options[c].way)
		}
	}
	return sum
}

// choose takes another of the run's ways when it is better with its looks.
func (t *table) choose(i int) bool {
	r := &t.rows[i]
	was, best := r.chosen, t.looks(i, &r.options[r.chosen].way)
	for _, n := range r.byKey() {
		o := r.options[n]
		if o.key >= best {
			break
		}
		if looks := t.looks(i, &o.way); looks < best && t.blocker(i, n) < 0 {
			r.chosen, best = n, looks
		}
	}
	return r.chosen != was
}

// slide moves legs of the run's chosen way into line with those of others.
func (t *table) slide(i int) bool {
	r := &t.rows[i]
	shifts := t.shiftsOf(i)
	if len(shifts) == 0 {
		return false
	}
	h, err := t.newHunt(t.plan.Runs[i], request{others: t.around(i, everyRun), below: anyCost})
	if err != nil {
		return false // it has a way, so this is not reached
	}
	h.halt = t.halt
	best, found := t.looks(i, &r.options[r.chosen].way), Way{}
	for _, s := range shifts {
		if t.halt.halted() {
			return false
		}
		w, ok := h.slid(&r.options[r.chosen].way, s)
		if !ok {
			continue
		}
		if looks := t.looks(i, &w); looks < best {
			best, found = looks, w
		}
	}
	if found.Run == "" {
		return false
	}
	r.options[r.chosen] = newOption(found)
	t.forget(i)
	return true
}

// forget drops what is remembered of how a run's options stand to others'.
func (t *table) forget(i int) {
	for j := range t.rows {
		t.nearMemo[min(i, j)*len(t.rows)+max(i, j)] = nil
	}
}

// shift moves one leg of a way parallel to itself.
type shift struct {
	leg int // from corner leg to corner leg+1
	by  vec // along both legs beside it
}

// mostShifts bounds the shifts tried for one run.
const mostShifts = 24

// shiftsOf lists the shifts that bring a leg of a run's chosen way into one plane
// with a leg of another run, or as far from it as other legs of the two are.
func (t *table) shiftsOf(i int) (list []shift) {
	w := &t.rows[i].options[t.rows[i].chosen].way
	c := w.Formed.Corners
	for leg := 1; leg+2 < len(c); leg++ {
		way, ok := unit(c[leg].Sub(c[leg-1]))
		next, good := unit(c[leg+2].Sub(c[leg+1]))
		if !ok || !good || !along(way, next) {
			continue
		}
		for _, j := range t.order {
			if n := t.rows[j].chosen; j != i && n >= 0 {
				list = addShifts(list, leg, way, c, t.rows[j].options[n].way.Formed.Corners, t.farthest(w))
			}
		}
	}
	return list[:min(len(list), mostShifts)]
}

// farthest is how far from each other two legs may be and still be lined up, mm.
func (t *table) farthest(w *Way) float64 { return 2 * neighbours * w.Tube.OD }

// addShifts adds the shifts of one leg toward the legs of one other run.
func addShifts(list []shift, leg int, way vec, c, d []vec, most float64) []shift {
	apart := pitches(c, d, most, leg)
	for j := 1; j < len(d); j++ {
		p := legPair{c[leg], c[leg+1], d[j-1], d[j]}
		over, ok := p.beside(most)
		if !ok {
			continue
		}
		to := over.Dot(way)
		rest := aside(over, way).Len()
		list = addShift(list, leg, way, to)
		for _, pitch := range apart {
			if pitch > rest {
				across := math.Sqrt(pitch*pitch - rest*rest)
				list = addShift(list, leg, way, to-across)
				list = addShift(list, leg, way, to+across)
			}
		}
	}
	return list
}

func addShift(list []shift, leg int, way vec, by float64) []shift {
	if math.Abs(by) <= samePlane {
		return list
	}
	return append(list, shift{leg, way.Mul(by)})
}

// pitches are the distances of the legs of two runs that lie side by side, but
// for one leg of the first.
func pitches(c, d []vec, most float64, except int) (list []float64) {
	for i := 1; i < len(c); i++ {
		for j := 1; j < len(d); j++ {
			p := legPair{c[i-1], c[i], d[j-1], d[j]}
			if over, ok := p.beside(most); ok && i-1 != except {
				list = append(list, over.Len())
			}
		}
	}
	return list
}

// slid is a way with one leg shifted; false when that cannot be formed or is not
// clear.
func (h *hunt) slid(w *Way, s shift) (Way, bool) {
	c := w.Formed.Corners
	i := idea{start: h.rebuilt(h.a, &w.Start), end: h.rebuilt(h.b, &w.End), miss: w.Miss, name: w.Name}
	i.corners = append(i.corners, c[1:len(c)-1]...)
	i.corners[s.leg-1], i.corners[s.leg] = i.corners[s.leg-1].Add(s.by), i.corners[s.leg].Add(s.by)
	sh := h.shape(&i)
	if sh.short > bendSlack || len(sh.turns) != len(w.Formed.Bends) || h.tooLong(sh, i.start, i.end) > sameSpot {
		return Way{}, false
	}
	i.cost, i.test = costOf(h.plan.Weigh, sh, i.start, i.end), new(tested)
	if !h.stands(&i) {
		return Way{}, false
	}
	return h.way(i, i.test.formed), true
}
