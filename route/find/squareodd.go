package find

import (
	"tubewright/route/clear"
)

// oddClear checks the straight from a stop and the odd bend after it.
func (q *quest) oddClear(e *rayEnd, end bool, s float64, d int, turn, setback float64) bool {
	from, corner := e.ray.ahead(s-setback), e.ray.ahead(s)
	inward, ok := unit(aside(heading(d), e.ray.dir))
	if !ok {
		return false
	}
	arc := clear.Arc{
		Centre: from.Add(inward.Mul(q.radius)), U: inward.Mul(-1), V: e.ray.dir,
		Bend: q.radius, Turn: turn,
	}
	to := corner.Add(heading(d).Mul(setback))
	for i := range q.walls {
		w := &q.walls[i]
		skip := w.fromStart
		if end {
			skip = w.fromEnd
		}
		straight := clear.Rod{From: e.ray.ahead(min(skip, s-setback)), To: from}
		if skip < s-setback && !clear.Farther(straight, w.shape, w.keep) ||
			!w.beyond(from, corner, to) && !clear.Farther(arc, w.shape, w.keep) {
			w.blocked++
			return false
		}
	}
	return true
}
