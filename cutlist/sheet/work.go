package sheet

import (
	"fmt"
	"slices"

	"tubewright/cutlist"
	"tubewright/route"
)

// work is the order of work at the bench, to tick off.
func (b *book) work(t cutlist.Tube) {
	b.heading("Order of work", bodySize+0.4, 24)
	for _, step := range steps(t, b.units) {
		b.item(step, rowSize)
	}
	b.asMade(t)
}

// asMade is room to write down what came out, so that the next try knows.
func (b *book) asMade(t cutlist.Tube) {
	cols := []column{{head: "as made"}, {head: "length", wraps: true}}
	if len(t.Bench.Bends) > 0 {
		cols = append(cols, column{head: "turns", wraps: true}, column{head: "rolls", wraps: true})
	}
	cols = append(cols, column{head: "aside at B", wraps: true}, column{head: "askew at B", wraps: true}, column{head: "what to do otherwise", wraps: true})
	b.y += 1
	b.table(cols, b.tryRows(t, len(cols)))
}

// steps is the order of work for one tube.
func steps(t cutlist.Tube, u route.Units) []string {
	if len(t.Bench.Bends) == 0 {
		return append([]string{
			fmt.Sprintf("Saw the blank, %s. Square both ends until the tube is %s long.", u.TextUnit(t.Cut.Blank), u.TextUnit(t.Cut.Aim)),
		}, finish(t, u)...)
	}
	first := t.Bench.Bends[0]
	list := []string{
		fmt.Sprintf("Saw the blank, %s. Square both ends; write A on one. Draw a straight line along the tube: rolls count from it.", u.TextUnit(t.Cut.Blank)),
		fmt.Sprintf("Mark start, middle and end of each bend on the blank from its end A (the first bend starts at %s), and the roll of each as an arc round the tube.", u.Text(first.BlankA.Start)),
		askew(t),
		collarsBefore(t, u),
		fmt.Sprintf("Bend in order from A, each to its “form to”, the first to %s. %s", route.Degrees(first.FormTo), warm(t, u)),
		"After each bend check turn, roll and back measures against the drawing; correct while it can still be moved.",
		fmt.Sprintf("Trim: finished end A is %s before the start of bend 1; cut there, then cut B %s from A along the centreline.",
			u.TextUnit(first.FromA.Start), u.TextUnit(t.Cut.Aim)),
	}
	return append(slices.DeleteFunc(list, func(s string) bool { return s == "" }), finish(t, u)...)
}

// askew warns where a tube's rolls are not zero.
func askew(t cutlist.Tube) string {
	for i, m := range t.Bench.Bends {
		if i > 0 && route.Degrees(m.Roll) != "0.0°" && route.Degrees(m.Roll) != "180.0°" {
			return "This tube does not lie flat: try the first bend and its neighbour against the two views before you bend on."
		}
	}
	return ""
}

// heated lists the materials that are formed hot in this trade (common practice).
var heated = []string{"petg", "acrylic", "pmma", "polycarbonate", "pvc", "glass"}

// warm says how a bend is heated, or that it is not.
func warm(t cutlist.Tube, u route.Units) string {
	if !slices.Contains(heated, t.Way.Tube.Material) {
		return "Bend cold on the former unless the tube's maker says otherwise."
	}
	return fmt.Sprintf("Heat each bend over its heat length (the first: %s, its arc and one diameter on each side), cord inside, and let it cool on the former.",
		u.TextUnit(t.Bench.Bends[0].Heat))
}

// finish is what every tube needs at its ends.
func finish(t cutlist.Tube, u route.Units) []string {
	return []string{
		fmt.Sprintf("Check the length along the centreline: between %s and %s is safe, %s is the aim.", u.Text(t.Cut.Shortest), u.Text(t.Cut.Longest), u.TextUnit(t.Cut.Aim)),
		"Deburr both ends inside, chamfer them outside, rinse and dry.",
		fmt.Sprintf("Mark the insertion on both ends: A %s, B %s. %s Wet the seals with coolant, push home and see both marks at the collars.",
			u.TextUnit(t.Way.Start.Socket.Insertion.Full), u.TextUnit(t.Way.End.Socket.Insertion.Full), collarsAfter(t)),
	}
}
