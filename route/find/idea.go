package find

import (
	"fmt"
	"math"

	"tubewright/bends"
	"tubewright/route"
)

// idea is a way that geometry allows, before it is formed and checked.
type idea struct {
	start, end *build
	corners    []vec // between the stops
	miss       Miss
	name       string
	cost       float64
	key        int64   // cost in steps of sameCost: what orders ideas
	bends      int     // corners with a turn
	test       *tested // what came of trying it
}

// sameCost is how close two costs may be and still be one, mm of tube.
const sameCost = 1e-6

// costKey counts a cost in steps of sameCost, so that ties do not hang on the
// last bit.
func costKey(cost float64) int64 { return int64(math.Round(cost / sameCost)) }

// path gives the corners with both stops.
func (i idea) path() []vec {
	return pathBetween(make([]vec, 0, len(i.corners)+2), i.start, i.end, i.corners)
}

// pathBetween adds the corners with both stops to a list.
func pathBetween(list []vec, start, end *build, corners []vec) []vec {
	list = append(list, start.frame.At)
	list = append(list, corners...)
	return append(list, end.frame.At)
}

// shape is what the cost and the name of a path rest on.
type shape struct {
	turns     []float64 // degrees, of corners with a turn
	developed float64   // mm
	short     float64   // how much the worst straight lacks, mm; at most 0 when it can be formed
	untidy    float64   // see untidyOf
}

const (
	// noTurn is the turn below which a corner counts as none, degrees: the same
	// as the millimetre by a thousand that package bends allows on a short leg.
	noTurn = 1e-4
	// standard turns are those formers mark; this is how far off one may be, degrees.
	standardWithin = 0.1
)

// measure works out a path's shape without forming it.
func measure(t bends.Tube, path []vec) shape { return measureInto(t, path, nil) }

// measureInto is measure with room for the turns.
func measureInto(t bends.Tube, path []vec, room []float64) shape {
	sh := shape{turns: room}
	dir, leg, ok := legOf(path[0], path[1])
	back, need := 0.0, t.StraightEnd
	for i := 1; i < len(path)-1 && ok; i++ {
		next, nextLeg, good := legOf(path[i], path[i+1])
		turn := degreesBetween(dir, next)
		if !good || turn > bends.MostTurn {
			ok = false
			break
		}
		if turn < noTurn {
			leg, dir = leg+nextLeg, next
			continue
		}
		setback := bends.Setback(t.Radius, turn)
		sh.add(leg-back-setback, need)
		sh.turns = append(sh.turns, turn)
		sh.developed += bends.ArcLength(t.Radius, turn)
		dir, leg, back, need = next, nextLeg, setback, t.StraightBetween
	}
	if !ok {
		return shape{turns: room, short: math.Inf(1)}
	}
	sh.add(leg-back, t.StraightEnd)
	return sh
}

// shape is measure of an idea, with how tidy it is.
func (h *hunt) shape(i *idea) shape {
	path := i.path()
	sh := measure(h.tube.Tube, path)
	if sh.short <= bendSlack {
		sh.untidy = h.untidyPath(path, i.start, i.end)
	}
	return sh
}

// untidyPath is untidyOf between two chains; a straight tube lies as its sockets do.
func (h *hunt) untidyPath(path []vec, start, end *build) float64 {
	switch first, final := start.root.Dir, end.root.Dir; {
	case h.plan.Weigh.Tidy == 0:
		return 0
	case len(path) == 2:
		return slant(start.frame.Dir, first, final)
	default:
		return untidyOf(path, first, final)
	}
}

func legOf(p, q vec) (dir vec, length float64, ok bool) {
	d := q.Sub(p)
	dir, ok = unit(d)
	return dir, d.Len(), ok
}

// add counts one straight and what it needs.
func (sh *shape) add(straight, need float64) {
	sh.developed += straight
	if lack := need - straight; sh.short == 0 || lack > sh.short {
		sh.short = lack
	}
}

// odd counts the turns that are neither 45 nor 90 degrees.
func (sh shape) odd() int {
	n := 0
	for _, a := range sh.turns {
		if !isTurn(a, 45) && !isTurn(a, 90) {
			n++
		}
	}
	return n
}

func isTurn(a, standard float64) bool { return math.Abs(a-standard) <= standardWithin }

// costOf prices a way by the plan's weights.
func costOf(w route.Weigh, sh shape, start, end *build) float64 {
	return w.Bend*float64(len(sh.turns)) + w.OddBend*float64(sh.odd()) + w.Tidy*sh.untidy + w.Millimetre*sh.developed + chainCost(w, start) + chainCost(w, end)
}

// chainCost is what a chain adds to the cost.
func chainCost(w route.Weigh, b *build) float64 {
	return w.Fitting*float64(b.extra()) + w.Price*b.price
}

var counts = []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}

// count writes a small number as a word.
func count(n int) string {
	if n < len(counts) {
		return counts[n]
	}
	return fmt.Sprint(n)
}

// counted writes "one elbow", "two elbows".
func counted(n int, what string) string {
	if n == 1 {
		return "one " + what
	}
	return count(n) + " " + what + "s"
}

// slanted reports whether turns are right angles and halves of them, some of these.
func slanted(turns []float64) bool {
	halves := 0
	for _, a := range turns {
		switch {
		case isTurn(a, 45):
			halves++
		case !isTurn(a, 90):
			return false
		}
	}
	return halves > 0
}

func allTurn(turns []float64, standard float64) bool {
	for _, a := range turns {
		if !isTurn(a, standard) {
			return false
		}
	}
	return true
}
