package find

import (
	"fmt"
	"math"
	"strings"

	"tubewright/route"
)

// explained gives the ways of a run's options with the reason line of each: what
// it is made of, how it stands to the first, which other run it would hit, and
// why a way that is not the first is taken.
func (t *table) explained(i int, options []*option) []Way {
	var ways []Way
	var first Way
	for n, o := range options {
		if t.halt.halted() {
			break
		}
		w := o.way
		t.chanceOf(&w)
		if n == 0 {
			first = w
		}
		words := append(madeOf(w), fromMiss(w.Miss, t.plan.Units)...)
		if w.Name == AsMade {
			words = append([]string{w.Reason}, fromMiss(w.Miss, t.plan.Units)...)
		} else if n == 0 {
			words = append(words, bestIn(w, options, t.plan.Units)...)
		} else {
			words = append(words, compared(w, first, t.plan.Units)...)
			words = append(words, fromChance(&w, &first)...)
		}
		if with, short := t.worstClash(i, o, math.Inf(1)); with >= 0 {
			w.Clash = t.plan.Runs[with].Name
			words = append(words, fmt.Sprintf("but %s too near to run %s", t.plan.Units.TextUnit(short), w.Clash))
		} else if n > 0 && t.taken(i) == o {
			words = append(words, t.whyTaken(i, options))
		}
		w.Reason = strings.Join(words, ", ")
		ways = append(ways, w)
	}
	return ways
}

// taken is the option a run has chosen; nil of none.
func (t *table) taken(i int) *option {
	if c := t.rows[i].chosen; c >= 0 {
		return t.rows[i].options[c]
	}
	return nil
}

// whyTaken says why a way is taken though a cheaper one is listed.
func (t *table) whyTaken(i int, options []*option) string {
	if t.rows[i].fixed {
		return "picked by the plan"
	}
	if with, _ := t.worstClash(i, options[0], math.Inf(1)); with >= 0 {
		return "taken because it keeps clear of run " + t.plan.Runs[with].Name
	}
	return "taken because it looks better beside the other runs"
}

// bestIn says what the first way costs, and in what it is the best of the list.
func bestIn(w Way, options []*option, u route.Units) []string {
	words := []string{fmt.Sprintf("%d seals", w.Seals), roughly(w.Formed.Developed, u) + " of tube"}
	best := []struct {
		what string
		than func(v Way) bool // w betters v
	}{
		{"the fewest bends", func(v Way) bool { return len(w.Formed.Bends) < len(v.Formed.Bends) }},
		{"the fewest fittings", func(v Way) bool { return w.Fittings() < v.Fittings() }},
		{"the shortest", func(v Way) bool { return w.Formed.Developed < v.Formed.Developed-0.5 }},
	}
	for _, b := range best {
		all := len(options) > 1
		for _, o := range options[1:] {
			all = all && b.than(o.way)
		}
		if all {
			words = append(words, b.what)
		}
	}
	return append(words, InHundred(w.Chance)+" seat at the first try", "the least by your weights")
}

// fromMiss says what the sockets must give; nothing when that would be written as
// nothing.
func fromMiss(m Miss, u route.Units) (words []string) {
	if m.Sideways >= 0.05 {
		words = append(words, u.TextUnit(m.Sideways)+" aside in its sockets")
	}
	if m.Degrees >= 0.05 {
		words = append(words, route.Degrees(m.Degrees)+" askew in its sockets")
	}
	return words
}

// madeOf names bends and fittings.
func madeOf(w Way) []string {
	bends := "no bend"
	if n := len(w.Formed.Bends); n > 0 {
		bends = counted(n, "bend")
		if odd := oddTurns(w); len(odd) > 0 {
			bends += " (odd turns: " + strings.Join(odd, ", ") + ")"
		}
	}
	if strings.Contains(w.Name, legsAt45) {
		bends += " with slanting legs that cut the corners"
	}
	words := []string{bends}
	kinds := map[kindOf]int{}
	var order []kindOf
	for _, laid := range []route.Laid{w.Start, w.End} {
		for _, k := range chainKinds(laid) {
			if kinds[k]++; kinds[k] == 1 {
				order = append(order, k)
			}
		}
	}
	for _, k := range order {
		words = append(words, counted(kinds[k], string(k)))
	}
	return words
}

// oddTurns lists the turns that formers do not mark.
func oddTurns(w Way) (list []string) {
	for _, b := range w.Formed.Bends {
		if !isTurn(b.Turn, 45) && !isTurn(b.Turn, 90) {
			list = append(list, route.Degrees(b.Turn))
		}
	}
	return list
}

// chainKinds lists the kinds of fitting before the socket.
func chainKinds(laid route.Laid) []kindOf {
	var kinds []kindOf
	for _, b := range laid.Bodies[:max(0, len(laid.Bodies)-1)] {
		kinds = append(kinds, b.Fitting.Kind)
	}
	return kinds
}

// compared says how a way stands to the first of the list; a difference that
// would be written as nothing is left out.
func compared(w, first Way, u route.Units) []string {
	var words []string
	if d := w.Seals - first.Seals; d != 0 {
		words = append(words, moreOrLess(d, "seal"))
	}
	if d := w.Formed.Developed - first.Formed.Developed; d >= 0.5 || d <= -0.5 {
		words = append(words, roughly(max(d, -d), u)+" "+pick(d > 0, "longer", "shorter"))
	}
	if d := w.Price - first.Price; d >= 0.005 || d <= -0.005 {
		words = append(words, fmt.Sprintf("%.2f %s", max(d, -d), pick(d > 0, "dearer", "cheaper")))
	}
	return words
}

// roughly writes a length to a millimetre, or to a tenth of an inch.
func roughly(mm float64, u route.Units) string {
	if u == route.Inches {
		return fmt.Sprintf("%.1f in", mm/route.Inch)
	}
	return fmt.Sprintf("%.0f mm", mm)
}

func moreOrLess(d int, what string) string {
	word := pick(d > 0, "more", "fewer")
	n := max(d, -d)
	if n == 1 {
		return fmt.Sprintf("1 %s %s", word, what)
	}
	return fmt.Sprintf("%d %s %ss", n, word, what)
}

func pick(first bool, a, b string) string {
	if first {
		return a
	}
	return b
}
