package find

import (
	"fmt"
	"strings"

	"tubewright/route"
)

// explained gives the ways of a run's options with the reason line of each: what
// it is made of, and how it stands to the first; and which other run it would hit.
func (t *table) explained(i int, options []*option) []Way {
	var ways []Way
	for n, o := range options {
		w := o.way
		words := append(madeOf(w), compared(w, options[0].way, n == 0, t.plan.Units)...)
		if with, short := t.worstClash(i, o); with >= 0 {
			words = append(words, fmt.Sprintf("but %s too near to run %s", t.plan.Units.TextUnit(short), t.plan.Runs[with].Name))
		}
		w.Reason = strings.Join(words, ", ")
		ways = append(ways, w)
	}
	return ways
}

// madeOf names bends and fittings.
func madeOf(w Way) []string {
	bends := "no bend"
	if n := len(w.Formed.Bends); n > 0 {
		bends = counted(n, "bend")
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
func compared(w, first Way, best bool, u route.Units) []string {
	if best {
		return []string{fmt.Sprintf("%d seals", w.Seals), roughly(w.Formed.Developed, u) + " of tube", "the least by your weights"}
	}
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
