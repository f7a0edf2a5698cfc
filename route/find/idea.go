package find

import (
	"fmt"
	"math"
	"strings"

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
	path := make([]vec, 0, len(i.corners)+2)
	path = append(path, i.start.frame.At)
	path = append(path, i.corners...)
	return append(path, i.end.frame.At)
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
func measure(t bends.Tube, path []vec) shape {
	var sh shape
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
		return shape{short: math.Inf(1)}
	}
	sh.add(leg-back, t.StraightEnd)
	return sh
}

// shape is measure of an idea, with how tidy it is.
func (h *hunt) shape(i *idea) shape {
	path := i.path()
	sh := measure(h.tube.Tube, path)
	switch first, final := i.start.root.Dir, i.end.root.Dir; {
	case sh.short > bendSlack || h.plan.Weigh.Tidy == 0:
	case len(i.corners) == 0:
		sh.untidy = slant(i.start.frame.Dir, first, final)
	default:
		sh.untidy = untidyOf(path, first, final)
	}
	return sh
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

// nameOf names a way after its fittings and its bends.
func nameOf(sh shape, start, end *build) string {
	kit := kitWords(start, end)
	switch {
	case len(sh.turns) == 0 && len(kit) == 0:
		return "straight"
	case len(sh.turns) == 0:
		return "straight, " + strings.Join(kit, ", ")
	case len(kit) == 0:
		return bendWords(sh, start, end)
	}
	return strings.Join(kit, ", ") + " and " + bendWords(sh, start, end)
}

// kitWords counts the fittings besides sockets, by kind in a fixed order.
func kitWords(start, end *build) []string {
	var words []string
	for _, kind := range []kindOf{route.Offset, route.Elbow, route.Extender, route.Tee, route.Valve, route.Coupler} {
		if n := countKind(start, kind) + countKind(end, kind); n > 0 {
			words = append(words, counted(n, string(kind)))
		}
	}
	return words
}

func countKind(b *build, kind kindOf) int {
	n := 0
	for _, s := range b.steps {
		if s.fit.Kind == kind {
			n++
		}
	}
	return n
}

// bendWords names the bends: "one bend", "offset bend 45" ("offset bend" of any
// other turn), "three square bends".
func bendWords(sh shape, start, end *build) string {
	n := len(sh.turns)
	switch {
	case n == 1:
		return "one bend"
	case allTurn(sh.turns, 90):
		return counted(n, "square bend")
	case n == 2 && isTurn(sh.turns[0], sh.turns[1]) && start.frame.Dir.Add(end.frame.Dir).Len() < nearParallel:
		if isTurn(sh.turns[0], 45) {
			return "offset bend 45"
		}
		return "offset bend"
	}
	if n > 2 && slanted(sh.turns) {
		return counted(n, "bend") + legsAt45
	}
	return counted(n, "bend")
}

// legsAt45 is in the name of a way with slanting legs.
const legsAt45 = " with legs at 45"

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
