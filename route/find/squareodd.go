package find

import (
	"math"

	"tubewright/bends"
	"tubewright/route/clear"
)

// odds is a corner on a ray that faces along no axis, with its bend: to a
// heading from the start, from one at the end.
type odds struct {
	at      vec
	node    node
	heading int
	setback float64
	price   int64 // besides the leg along the axis, counted to the corner, in steps of sameCost
	length  int64 // the same in steps of sameLength
}

// oddClear checks the straight from a stop and the odd bend after it; what is in
// the way is noted.
func (q *quest) oddClear(e *rayEnd, exempt func(*wall) float64, s float64, d int, turn, setback float64, r *endRoom) bool {
	from, corner := e.ray.ahead(s-setback), e.ray.ahead(s)
	inward, ok := unit(aside(heading(d), e.ray.dir))
	if !ok {
		return false
	}
	var arc clear.Shape = clear.Arc{
		Centre: from.Add(inward.Mul(q.radius)), U: inward.Mul(-1), V: e.ray.dir,
		Bend: q.radius, Turn: turn,
	}
	to := corner.Add(heading(d).Mul(setback))
	q.look(e.ray.at, corner, 0)
	q.look(corner, to, setback)
	q.halt.did(len(q.walls) / 8)
	for i := range q.walls {
		w := &q.walls[i]
		if w.stopsBefore(e, from, s-setback, exempt(w)) || !w.beyond(from, corner, to) && !clear.Farther(arc, w.shape, w.keep) {
			w.blocked++
			r.blamed = append(r.blamed, w)
			return false
		}
	}
	return true
}

// stopsBefore reports whether a wall stands in the straight of an end up to where
// its bend begins, so far from its stop, of which a part does not count.
func (w *wall) stopsBefore(e *rayEnd, to vec, length, exempt float64) bool {
	if exempt >= length {
		return false
	}
	from := e.ray.ahead(exempt)
	return !w.beyond(from, to, to) && !clear.Farther(clear.Rod{From: from, To: to}, w.shape, w.keep)
}

// oddEnds lists the corners on a ray that faces along no axis at which it may
// bend to a heading, clear of everything.
func (q *quest) oddEnds(e *rayEnd, exempt func(*wall) float64, r *endRoom) {
	for _, s := range q.stands(e) {
		for d := range 6 {
			if q.halt.halted() {
				return
			}
			turn := degreesBetween(e.ray.dir, heading(d))
			setback := bends.Setback(q.radius, min(turn, foldedTurn))
			if turn < 1 || turn >= foldedTurn || s-setback < q.leastEnd-bendSlack {
				continue
			}
			if !q.room.holds(e.ray.ahead(s)) || !q.oddClear(e, exempt, s, d, turn, setback, r) {
				continue
			}
			o := odds{
				at: e.ray.ahead(s), heading: d, setback: setback,
				price:  costKey(q.bendCost(turn) + q.weigh.Millimetre*(s-2*setback)),
				length: int64(math.Round((s - 2*setback + bends.ArcLength(q.radius, turn)) / sameLength)),
			}
			var ok bool
			if o.node, ok = q.grid.find(o.at); ok || len(q.grid[0]) == 0 {
				r.odds = append(r.odds, o)
			}
		}
	}
}
