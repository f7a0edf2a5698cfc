package ui

import (
	"fmt"
	"math"
	"slices"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/ui/session"
)

// sureModel says how likely each tube goes in at the first try, and what to do
// better.
type sureModel struct {
	rows []sureRow
	all  float64 // that all of them do, 0 to 1
	best string  // the one thing to do better; "": nothing helps much
}

// sureRow is one run's tube.
type sureRow struct {
	run    string
	title  string
	lines  []string
	chance float64
	surer  string // name of a way that is likelier to fit; "": none is, by much
	offer  string // what the button for it says
}

// muchSurer is by how much another way must be likelier to fit to be offered:
// chances are known no better than a few in a hundred.
const muchSurer = 0.05

func newSureModel(s session.Snapshot) sureModel {
	m := sureModel{all: 1}
	for _, t := range s.List.Tubes {
		if t.Made > 0 {
			continue
		}
		row := newSureRow(s, t)
		m.rows = append(m.rows, row)
		m.all *= row.chance
	}
	slices.SortStableFunc(m.rows, func(a, b sureRow) int { return int(math.Round(1000 * (a.chance - b.chance))) })
	m.best = bestCare(s.Plan.Errors, s.List.Tubes)
	return m
}

func newSureRow(s session.Snapshot, t cutlist.Tube) sureRow {
	b := t.Budget
	row := sureRow{run: t.Run, chance: b.Chance, title: fmt.Sprintf("%s  %s: %s", t.Letter, t.Run, find.InHundred(b.Chance))}
	far := b.AsBent
	row.lines = append(row.lines, fmt.Sprintf("As bent, its far end is off by about %s sideways, %s in direction and %s in length.",
		s.Units.TextUnit(far.Aside()), route.Degrees(far.Askew()), s.Units.TextUnit(far.Length)))
	for _, p := range b.Largest {
		row.lines = append(row.lines, fmt.Sprintf("%s: %.0f in 100 of it. Were that half as large, %s.", capital(p.What), 100*p.Share, find.InHundred(p.ChanceIfHalved)))
	}
	if way, ok := surerWay(s.Solution, t, b.Chance); ok {
		row.surer = way.Name
		row.offer = fmt.Sprintf("Take %s: %s", way.Name, find.InHundred(way.Chance))
	}
	return row
}

// surerWay is the way of a run that is likeliest to fit, clear of the other runs
// and likelier by much than the one taken.
func surerWay(sol find.Solution, t cutlist.Tube, chance float64) (best find.Way, ok bool) {
	for _, r := range sol.Runs {
		if r.Run.Name != t.Run {
			continue
		}
		for _, w := range r.Ways {
			if w.Clash == "" && w.Name != t.Way.Name && w.Chance >= chance+muchSurer && w.Chance > best.Chance {
				best, ok = w, true
			}
		}
	}
	return best, ok
}

// cares are the things a person can do better, one at a time.
var cares = []struct {
	what string
	of   func(*route.Errors) *float64
}{
	{"measure the ports", func(e *route.Errors) *float64 { return &e.Port }},
	{"set each turn", func(e *route.Errors) *float64 { return &e.Turn }},
	{"set the roll between bends", func(e *route.Errors) *float64 { return &e.Roll }},
	{"cut and mark", func(e *route.Errors) *float64 { return &e.Cut }},
	{"square the ports", func(e *route.Errors) *float64 { return &e.Facing }},
}

// worthSaying is how much likelier all tubes must become for a care to be named.
const worthSaying = 0.01

// bestCare says which one thing done twice as well helps all tubes most.
func bestCare(hand route.Errors, tubes []cutlist.Tube) string {
	now := together(tubes, hand)
	best, what := now+worthSaying, ""
	for _, care := range cares {
		better := hand
		*care.of(&better) /= 2
		if all := together(tubes, better); all > best {
			best, what = all, care.what
		}
	}
	if what == "" {
		return ""
	}
	return fmt.Sprintf("The one thing to do better: %s twice as truly, and all tubes fit at the first try %s, not %s.", what, find.InHundred(best), find.InHundred(now))
}

func together(tubes []cutlist.Tube, e route.Errors) float64 {
	all := 1.0
	for _, t := range tubes {
		if t.Made == 0 {
			all *= t.Way.Budget(e).Chance
		}
	}
	return all
}

// words says how all the tubes stand together.
func (m *sureModel) words() string {
	if len(m.rows) == 0 {
		return "No tube is left to make."
	}
	return fmt.Sprintf("All %s fit at the first try: %s. %s", count(len(m.rows), "tube"), find.InHundred(m.all), m.best)
}
