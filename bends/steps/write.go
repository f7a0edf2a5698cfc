package steps

import (
	"fmt"
	"math"
	"strconv"
)

// writer puts a tube's steps down.
type writer struct {
	Job
	Work
	list []Step
}

func (j Job) write(w Work) []Step {
	x := &writer{Job: j, Work: w}
	if x.Units == nil {
		x.Units = millimetres{}
	}
	if len(j.Bench.Bends) == 0 {
		x.straight()
	} else {
		x.bent()
	}
	return x.list
}

// millimetres writes lengths to a tenth.
type millimetres struct{}

func (millimetres) Text(mm float64) string       { return strconv.FormatFloat(rounded(mm), 'f', 1, 64) }
func (m millimetres) TextUnit(mm float64) string { return m.Text(mm) + " mm" }

// rounded is to a tenth, never −0.
func rounded(v float64) float64 { return math.Round(v*10)/10 + 0 }

func degrees(a float64) string { return strconv.FormatFloat(rounded(a), 'f', 1, 64) + "°" }

func signed(a float64) string {
	if rounded(a) > 0 {
		return "+" + degrees(a)
	}
	return degrees(a)
}

func (x *writer) add(k Kind, source, format string, values ...any) {
	x.list = append(x.list, Step{Kind: k, Source: source, Text: fmt.Sprintf(format, values...)})
}

// of marks the last step as one bend's or one end's.
func (x *writer) of(bend int, end string) {
	last := &x.list[len(x.list)-1]
	last.Bend, last.End = bend, end
}

func (x *writer) straight() {
	x.add(Saw, copperBook, "Saw the blank, %s, square to its axis. Square both ends until the tube is %s long.",
		x.Units.TextUnit(x.Cut.Blank), x.Units.TextUnit(x.Cut.Aim))
	x.finish()
}

func (x *writer) bent() {
	if x.Fault != nil {
		x.add(Warn, "room at the bench", "Do not start: %s.", x.Fault)
	}
	x.add(Saw, copperBook, "Saw the blank, %s, square to its axis. Square and deburr both ends; write A on one.", x.Units.TextUnit(x.Cut.Blank))
	x.mark()
	x.crooked()
	if corded(x.Material) {
		x.add(Insert, insertTutorial, "Put the bending cord in, through every bend and with an end left to pull: it keeps the bore round.")
	}
	x.care()
	for n, i := range x.Order {
		x.collars(i, n == 0)
		x.bend(n, i)
	}
	if corded(x.Material) {
		x.add(Insert, insertTutorial, "When all is cool, pull the cord out.")
	}
	x.trimEnds()
	x.finish()
}

func (x *writer) mark() {
	x.add(Mark, courseSlides, "Draw a line along the tube: rolls count from it. Mark bends and rolls, measured from end %s, which goes into the bender first.", x.First)
}

// crooked warns where a tube's rolls are not zero.
func (x *writer) crooked() {
	for i, m := range x.Bench.Bends {
		if i > 0 && degrees(m.Roll) != "0.0°" && degrees(m.Roll) != "180.0°" {
			x.add(Care, commonPractice, "This tube does not lie flat: try the first bend and its neighbour against the two views before you bend on.")
			return
		}
	}
}

// care is what holds at every bend.
func (x *writer) care() {
	const check = "Then check turn, roll and back measures, before the next bend."
	if !heated(x.Material) {
		x.add(Care, commonPractice, "Bend cold on the former unless the tube's maker says otherwise. %s", check)
		return
	}
	source, wait := commonPractice, "until it is cool"
	if thinAcrylic(x.Material) {
		source, wait = plasticsPage, fmt.Sprintf("until it is cool, %d to %d minutes for thin acrylic", HoldLeast, HoldMost)
	}
	x.add(Care, source, "At every bend heat only what is told: the arc and one diameter on each side. Keep the heat moving and the tube turning; "+
		"hold it still on the former %s. %s", wait, check)
}

// collars are those that go on before bend i.
func (x *writer) collars(i int, first bool) {
	for _, end := range inTurn(x.BFirst) {
		on := x.Ons[end]
		if on.Before != i || !first && i != end*(len(x.Order)-1) {
			continue
		}
		away := ""
		if heated(x.Material) {
			away = " Keep it at the end, out of the heat."
		}
		x.add(Slide, commonPractice, "Put on collar %s before bend %d, facing its end (its leg is %s, collar and insertion take %s): a collar cannot pass a bend.%s",
			endNames[end], i+1, x.Units.TextUnit(on.Leg), x.Units.TextUnit(on.Need), away)
		x.of(i+1, endNames[end])
	}
}

// bend is the n-th bend to be made.
func (x *writer) bend(n, i int) {
	b := x.Bench.Bends[i]
	text := fmt.Sprintf("Bend %d: ", i+1)
	if n > 0 {
		text += x.turn(x.Order[n-1], i)
	}
	from, to, od := b.BlankA.Start, b.BlankA.End, x.Tube.Tube.OD
	if x.First == "B" {
		from, to = b.BlankB.End, b.BlankB.Start
	}
	if heated(x.Material) {
		text += fmt.Sprintf("heat %s to %s, ", x.Units.Text(from-od), x.Units.Text(to+od))
	}
	text += fmt.Sprintf("start mark at %s from %s; form to %s, for %s.", x.Units.Text(from), x.First, degrees(b.FormTo), degrees(b.Turn))
	x.add(Bend, commonPractice, "%s", text)
	x.of(i+1, "")
}

// turn is how to turn the tube from the bend made before to bend i.
func (x *writer) turn(before, i int) string {
	roll := 0.0
	for k := min(before, i) + 1; k <= max(before, i); k++ {
		roll += x.Bench.Bends[k].Roll
	}
	roll = math.Remainder(roll, 360)
	if degrees(math.Abs(roll)) == "0.0°" {
		return fmt.Sprintf("in the plane of bend %d; ", before+1)
	}
	if degrees(roll) == "-180.0°" {
		roll = -roll
	}
	return fmt.Sprintf("turn the tube %s from bend %d, %s round its outside; ",
		signed(roll), before+1, x.Units.TextUnit(math.Abs(roll)/360*math.Pi*x.Tube.Tube.OD))
}

func (x *writer) trimEnds() {
	first := x.Bench.Bends[0]
	text := fmt.Sprintf("Trim: finished end A is %s before the start of bend 1; cut there, then cut B %s from A along the centreline.",
		x.Units.TextUnit(first.FromA.Start), x.Units.TextUnit(x.Cut.Aim))
	if t := x.Tube.Tube.Trim; t < TrimLeast-trimSpread {
		text += fmt.Sprintf(" Only %s are left on each end, where %s or more are usual: hold it well.", x.Units.TextUnit(t), x.Units.TextUnit(TrimLeast))
	}
	x.add(Trim, commonPractice, "%s", text)
}

// finish is what every tube needs at its ends.
func (x *writer) finish() {
	x.add(Check, commonPractice, "Check the length along the centreline: between %s and %s is safe, %s is the aim.",
		x.Units.Text(x.Cut.Shortest), x.Units.Text(x.Cut.Longest), x.Units.TextUnit(x.Cut.Aim))
	x.add(Clean, copperBook, "Deburr both ends inside, chamfer them outside, rinse and dry.")
	if said := x.late(); said != "" {
		x.add(Slide, commonPractice, "%s", said)
	}
	x.add(Join, copperBook, "Mark the insertion on both ends: A %s, B %s. At the joint wet the seals, push home, see both marks at the collars.",
		x.Units.TextUnit(x.Collars[0].Insertion), x.Units.TextUnit(x.Collars[1].Insertion))
}

// late says which collars go on when the tube is formed and trimmed.
func (x *writer) late() string {
	var off []string
	for end, c := range x.Collars {
		if c.Length > 0 && x.Ons[end].Before < 0 {
			off = append(off, endNames[end])
		}
	}
	switch {
	case len(off) == 2 && len(x.Order) == 0:
		return "Put both collars on, facing their ends."
	case len(off) == 2:
		return "Put collar A on over end A and collar B over end B: a collar cannot pass a bend."
	case len(off) == 1:
		return fmt.Sprintf("Put collar %s on over end %s; the other is on already.", off[0], off[0])
	case x.Collars[0].Length > 0:
		return "Both collars are on already: see that they face their ends."
	}
	return ""
}
