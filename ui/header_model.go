package ui

import (
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/ui/session"
)

// headerModel is what the row on top shows.
type headerModel struct {
	title      string
	undo, redo string // names; empty: nothing to undo, redo
	units      route.Units
	ready      readyModel
}

// readyModel answers "ready to cut?" in one line.
type readyModel struct {
	text string
	role role
	busy bool // a solve is under way and can be stopped
}

func headerOf(s session.Snapshot) headerModel {
	m := headerModel{title: titleOf(s.Plan.Name, s.Dirty), undo: s.Undo, redo: s.Redo, units: s.Units, ready: readyOf(s)}
	if !s.Open {
		m.title = "No plan open"
	}
	return m
}

// readyOf says what still stands between the plan and the saw.
func readyOf(s session.Snapshot) readyModel {
	switch {
	case !s.Open:
		return readyModel{text: "Open a plan to begin.", role: soft}
	case s.Err != nil:
		return readyModel{text: "Not solved: " + sentence(s.Err.Error()), role: bad}
	case s.Stopped:
		return readyModel{text: "Stopped. What you see may be out of date.", role: careful}
	case s.Solving || s.Listed != s.Version:
		return readyModel{text: "Working …", role: soft, busy: true}
	case len(s.Plan.Runs) == 0:
		return readyModel{text: "No runs to cut yet.", role: soft}
	}
	return verdict(s)
}

func verdict(s session.Snapshot) readyModel {
	errors, warnings := countOf(settledOf(s), check.Error), countOf(settledOf(s), check.Warning)
	left, fits := errors+warnings, fittingWords(s)
	if fits != "" {
		left++
	}
	if s.List.Draft {
		left++
	}
	role := careful
	if errors > 0 {
		role = bad
	}
	switch {
	case fits != "" && left == 1:
		return readyModel{text: "Ready to cut? " + fits, role: soft, busy: s.Fitting}
	case left == 0:
		return readyModel{text: "Ready to cut.", role: fine}
	case s.List.Draft && left == 1:
		return readyModel{text: "Ready to cut? Only a draft: " + count(len(s.List.Reasons), "number") + " to measure.", role: role}
	}
	draft := ""
	if s.List.Draft {
		draft = "draft, " + count(len(s.List.Reasons), "number") + " to measure"
	}
	text := "Ready to cut? Not yet: " + dotted(some(errors, "error"), some(warnings, "warning"), draft) + "."
	if fits != "" {
		text += " " + fits
	}
	return readyModel{text: text, role: role, busy: s.Fitting}
}

// fittingWords says that it is not known yet how the tubes go in; "" when it is.
func fittingWords(s session.Snapshot) string {
	switch {
	case s.Fitting:
		return "Looking how the tubes go in …"
	case s.Unfitted != nil:
		return "How the tubes go in is not known."
	}
	return ""
}

// settledOf are the findings that are sure to be of the plan as it is: not those
// that are being looked at again.
func settledOf(s session.Snapshot) []check.Finding { return s.List.WithoutOld().Findings }

// some is count, and nothing for none.
func some(n int, one string) string {
	if n == 0 {
		return ""
	}
	return count(n, one)
}

func countOf(all []check.Finding, s check.Severity) (n int) {
	for _, f := range all {
		if f.Severity == s {
			n++
		}
	}
	return n
}
