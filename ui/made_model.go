package ui

import (
	"fmt"
	"strings"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/ui/session"
)

// madeModel is a try at a run's tube as it is typed in.
type madeModel struct {
	run   string
	tube  cutlist.Tube // as planned, or as it is there
	known bool         // there is a way
	units route.Units
	tries []route.Attempt

	fits  bool
	cut   string
	from  string
	wrong string
	date  string
}

func newMadeModel(s session.Snapshot, run string) *madeModel {
	r, _ := s.Plan.FindRun(run)
	m := &madeModel{run: run, units: s.Units, tries: r.Made, fits: true}
	for _, t := range s.List.Tubes {
		if t.Run == run {
			m.tube, m.known = t, true
			m.cut = m.units.Text(t.Cut.Aim)
		}
	}
	m.from = m.sawnFrom(s.List)
	return m
}

// sawnFrom is the bar the cut list saws the run's first piece from.
func (m *madeModel) sawnFrom(l cutlist.List) string {
	for _, b := range l.Bars {
		for _, p := range b.Pieces {
			if p.Run == m.run {
				return lengthText(b.Length, m.units)
			}
		}
	}
	return ""
}

// attempt is the try that was typed.
func (m *madeModel) attempt() (route.Attempt, error) {
	a := m.tube.Way.Attempt()
	a.Fits, a.Wrong, a.Date = m.fits, strings.TrimSpace(m.wrong), strings.TrimSpace(m.date)
	for _, f := range []struct {
		text string
		to   *float64
		name string
	}{{m.cut, &a.Cut, "finished length"}, {m.from, &a.CutFrom, "length of the bar"}} {
		if strings.TrimSpace(f.text) == "" {
			continue
		}
		v, err := parseLength(f.text, m.units)
		if err != nil {
			return a, fmt.Errorf("%s: %w", f.name, err)
		}
		*f.to = v
	}
	if !m.fits && a.Wrong == "" {
		return a, fmt.Errorf("say what was wrong, such as %q: it is kept with the run", m.units.TextUnit(2)+" long")
	}
	return a, nil
}

// history is the tries so far, one sentence each.
func (m *madeModel) history() []string { return triesOf(m.tries, m.units) }

func triesOf(tries []route.Attempt, u route.Units) (lines []string) {
	for i, t := range tries {
		how := "fits"
		if !t.Fits {
			how = t.Wrong
		}
		text := fmt.Sprintf("Try %d: %s", i+1, how)
		if t.Cut > 0 {
			text += ", " + u.TextUnit(t.Cut) + " long"
		}
		if t.CutFrom > 0 {
			text += ", sawn from " + u.TextUnit(t.CutFrom)
		}
		if t.Date != "" {
			text += ", " + t.Date
		}
		lines = append(lines, text+".")
	}
	return lines
}
