package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"tubewright/cutlist"
	"tubewright/route"
)

// tries are how tries at a tube are counted on paper.
var tries = [...]string{"first try", "second", "third", "fourth", "fifth", "sixth"}

func tryName(n int) string {
	if n < len(tries) {
		return tries[n]
	}
	return "try " + strconv.Itoa(n+1)
}

// history says what came of the tries at a tube, in a line: "first try 2 mm
// long; second fits, 4 May".
func history(t cutlist.Tube) string {
	var said []string
	for i, a := range t.Tries {
		text := tryName(i) + " " + outcome(a)
		if a.Date != "" {
			text += ", " + a.Date
		}
		said = append(said, text)
	}
	return strings.Join(said, "; ")
}

func outcome(a route.Attempt) string {
	switch {
	case a.Fits:
		return "fits"
	case a.Wrong != "":
		return a.Wrong
	}
	return "does not fit"
}

// madeLine heads the page of a tube that has a history.
func (b *book) madeLine(t cutlist.Tube) {
	if len(t.Tries) == 0 {
		return
	}
	said := "So far: " + history(t) + "."
	if t.Made > 0 {
		said = "Made: " + history(t) + ". It is a fact: it stays where it is and is not cut again."
		if need := max(1, b.list.Plan.Build); t.Made < need {
			said = fmt.Sprintf("Made for %d of %d machines: %s. Make the others alike.", t.Made, need, history(t))
		}
	}
	b.para(said)
}

// tryRows are the tries at a tube as rows of its page, then room for two more at
// most.
func (b *book) tryRows(t cutlist.Tube, cols int) (rows [][]cell) {
	for i, a := range t.Tries {
		row := make([]cell, cols)
		row[0].text = tryName(i)
		if a.Cut > 0 {
			row[1].text = b.units.Text(a.Cut)
		}
		row[cols-1].text = outcome(a)
		rows = append(rows, row)
	}
	for len(rows) < max(2, len(t.Tries)+1) && t.Made < max(1, b.list.Plan.Build) {
		row := make([]cell, cols)
		row[0].text = tryName(len(rows))
		rows = append(rows, row)
	}
	return rows
}

// sawn lists the bars that tries were sawn from already.
func (b *book) sawn() {
	if len(b.list.Sawn) == 0 {
		return
	}
	b.heading("Sawn already", headSize, 20)
	b.faint("From these bars tries were sawn. What is left of them counts as offcuts; bars of a length that is limited are taken off the limit.")
	var rows [][]cell
	for _, s := range b.list.Sawn {
		result := "did not fit"
		if s.Fits {
			result = "fits"
		}
		row := say("", s.Run, s.Tube, b.units.Text(s.Length), b.units.Text(s.Blank), b.units.Text(s.Left), result)
		row[0].letter = letterOf(b.list, s.Run)
		rows = append(rows, row)
	}
	b.table([]column{
		{head: ""},
		{head: "run", wraps: true},
		{head: "tube", wraps: true},
		figure("bar"), figure("blank"), figure("left"),
		{head: "what came of it", wraps: true},
	}, rows)
}

// madeNumbers is every number of the tries in full.
func (b *book) madeNumbers() {
	cols := []column{{head: ""}, {head: "try"}, {head: "what came of it", wraps: true}, figure("cut"), figure("blank"), figure("cut from"), figure("left"), {head: "date", wraps: true}}
	var rows [][]cell
	for _, t := range b.list.Tubes {
		for i, a := range t.Tries {
			left := ""
			for _, s := range b.list.Sawn {
				if s.Run == t.Run && s.Length == a.CutFrom && s.Blank == a.Blank {
					left = exact(s.Left)
				}
			}
			row := say("", strconv.Itoa(i+1), outcome(a), given(a.Cut), given(a.Blank), given(a.CutFrom), left, a.Date)
			row[0].letter = t.Letter
			rows = append(rows, row)
		}
	}
	b.tableOf("Tries", cols, rows)
}

// given writes a number that was written down, else nothing.
func given(v float64) string {
	if v == 0 {
		return ""
	}
	return exact(v)
}
