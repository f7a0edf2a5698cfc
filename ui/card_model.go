package ui

import (
	"fmt"
	"strings"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/ui/session"
)

// cardModel is what a run's card shows.
type cardModel struct {
	run    string
	letter string       // empty: there is no tube
	tube   cutlist.Tube // what the strip draws, when there is a letter
	scale  float64      // the longest finished tube of the plan, mm: all strips are to one scale
	units  route.Units

	length  string // of the aim, in the units
	unit    string
	facts   string // one line under the strip
	problem string // why there is no tube
	drawn   bool   // the person's own path
	picked  bool   // the person chose the way
	ways    []wayModel
	bench   []benchModel
	trim    string   // blank, finished and the window of lengths
	steps   []string // the order of work, one sentence or more each
	tries   []string // at making it, one sentence each
}

// wayModel is one way of a run in its card.
type wayModel struct {
	name, facts, reason string
	chosen              bool
}

// benchModel is one bend on the bench: a heading and rows of label and numbers.
type benchModel struct {
	title string
	rows  [][]string
}

// cardsOf gives a card for each run of the plan. A run whose answer is still
// on the way keeps that of the plan before.
func cardsOf(s session.Snapshot) []cardModel {
	longest := 0.0
	for _, t := range s.List.Tubes {
		longest = max(longest, t.Cut.Blank)
	}
	cards := make([]cardModel, len(s.Plan.Runs))
	for i, r := range s.Plan.Runs {
		cards[i] = cardOf(s, r, longest)
	}
	return cards
}

func cardOf(s session.Snapshot, r route.Run, longest float64) cardModel {
	c := cardModel{run: r.Name, scale: longest, units: s.Units, unit: string(s.Units), picked: r.Pick != ""}
	for _, t := range s.List.Tubes {
		if t.Run == r.Name {
			c.tubed(t, s.Units)
		}
	}
	for _, solved := range s.Solution.Runs {
		if solved.Run.Name == r.Name {
			c.solved(solved, s.Units)
		}
	}
	if c.letter == "" && c.problem == "" {
		c.facts = "Looking for a way …"
		if !s.Solving {
			c.facts = "No tube yet."
		}
	}
	return c
}

func (c *cardModel) tubed(t cutlist.Tube, u route.Units) {
	c.letter, c.tube = t.Letter, t
	c.length = u.Text(t.Cut.Aim)
	c.bench = benchOf(t.Bench, u)
	c.trim = trimOf(t, u)
	c.tries = triesOf(t.Tries, u)
	for i, s := range t.Steps {
		c.steps = append(c.steps, fmt.Sprintf("%d. %s", i+1, s.Text))
	}
}

func (c *cardModel) solved(s find.Solved, u route.Units) {
	c.drawn = s.Drawn
	if s.Problem != nil {
		c.problem = sentence(strings.TrimPrefix(s.Problem.Error(), fmt.Sprintf("run %q: ", c.run)))
	}
	for i, w := range s.Ways {
		c.ways = append(c.ways, wayModel{w.Name, wayFacts(w, u), w.Reason, i == s.Chosen})
	}
	if w, ok := s.Way(); ok {
		others := ""
		if len(s.Ways) > 1 {
			others = count(len(s.Ways), "way")
		}
		drawn := ""
		if c.drawn {
			drawn = "drawn by you"
		}
		c.facts = dotted(bendsOf(w.Formed), count(w.Seals, "seal"), priceOf(w), drawn, others, fitsOf(w))
	}
}

func wayFacts(w find.Way, u route.Units) string {
	cut := w.Formed.Cut(w.Ends, 0)
	return dotted(u.TextUnit(cut.Aim), bendsOf(w.Formed), count(w.Seals, "seal"), priceOf(w))
}

// fitsOf says how likely a way fits at the first try; nothing of a tube that is there.
func fitsOf(w find.Way) string {
	if w.Name == find.AsMade {
		return ""
	}
	return "fits " + find.InHundred(w.Chance)
}

// trimOf says what to saw and what must come of it.
func trimOf(t cutlist.Tube, u route.Units) string {
	c := t.Cut
	text := fmt.Sprintf("Saw a blank of %s, finish to %s. Anything from %s to %s seats safely.",
		u.TextUnit(c.Blank), u.TextUnit(c.Aim), u.TextUnit(c.Shortest), u.TextUnit(c.Longest))
	if trim := t.Way.Formed.Tube.Trim; len(t.Bench.Bends) > 0 && trim > 0 {
		text += fmt.Sprintf(" Trim %s off each end after forming.", u.TextUnit(trim))
	}
	return text
}

// benchOf gives what to mark, turn and form for each bend.
func benchOf(b bends.Bench, u route.Units) []benchModel {
	var all []benchModel
	for i, k := range b.Bends {
		m := benchModel{title: fmt.Sprintf("Bend %d: %s, form to %s", i+1, degrees(k.Turn), route.Degrees(k.FormTo))}
		if i > 0 {
			m.rows = append(m.rows, []string{"roll", route.Degrees(k.Roll), "wrap " + u.Text(k.Wrap)})
		}
		m.rows = append(m.rows,
			append([]string{"blank, end A"}, marks(k.BlankA, u)...),
			append([]string{"blank, end B"}, marks(k.BlankB, u)...),
			append([]string{"cut, end A"}, marks(k.FromA, u)...),
			append([]string{"cut, end B"}, marks(k.FromB, u)...),
			[]string{"back of bend", u.Text(k.Back.Before), u.Text(k.Back.After)},
			[]string{"heat", u.Text(k.Heat)},
		)
		all = append(all, m)
	}
	return all
}

// marks gives the start, middle and end of a bend.
func marks(m bends.Marks, u route.Units) []string {
	return []string{u.Text(m.Start), u.Text(m.Middle), u.Text(m.End)}
}

// sentence makes a sentence of an error's text: a capital first, a stop last.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	if text == "" {
		return ""
	}
	if c := text[0]; c >= 'a' && c <= 'z' {
		text = strings.ToUpper(text[:1]) + text[1:]
	}
	if !strings.ContainsAny(text[len(text)-1:], ".!?") {
		text += "."
	}
	return text
}
