package ui

import (
	"fmt"
	"strings"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/mend"
)

// findingModel is one line of the list of findings.
type findingModel struct {
	index    int // in the list's findings
	severity check.Severity
	what     string
	fix      string
	measure  string
	placed   bool
	mends    bool // there are changes to try
	again    bool // of the plan before, and being looked at again
}

// findingGroup is the findings of one severity.
type findingGroup struct {
	severity check.Severity
	title    string
	findings []findingModel
}

// findingsOf groups the findings of a list by severity, gravest first.
func findingsOf(l cutlist.List, u route.Units) []findingGroup {
	var groups []findingGroup
	for _, g := range []findingGroup{
		{severity: check.Error, title: "do not cut"},
		{severity: check.Warning, title: "look twice"},
		{severity: check.Note, title: "good to know"},
	} {
		for i, f := range l.Findings {
			if f.Severity == g.severity {
				again := l.PutIn == nil && cutlist.OfPutIn(f)
				g.findings = append(g.findings, findingModel{i, f.Severity, f.What, f.Fix, measureOf(f, u), f.Placed, mend.Can(f.Code), again})
			}
		}
		if n := len(g.findings); n > 0 {
			g.title = fmt.Sprintf("%s: %s", count(n, string(g.severity)), g.title)
			groups = append(groups, g)
		}
	}
	return groups
}

// measureOf writes a finding's measure; nothing where it has none.
func measureOf(f check.Finding, u route.Units) string {
	switch f.Unit {
	case "mm":
		return minus(u.TextUnit(f.Measure))
	case "deg":
		return minus(route.Degrees(f.Measure))
	case "":
		return ""
	}
	return fmt.Sprintf("%.2f %s", f.Measure, f.Unit)
}

// minus writes a number below zero with the sign the board has.
func minus(text string) string {
	if rest, below := strings.CutPrefix(text, "-"); below {
		return "−" + rest
	}
	return text
}

// inkOf is the colour of a severity.
func inkOf(s check.Severity) role {
	switch s {
	case check.Error:
		return bad
	case check.Warning:
		return careful
	case check.Note:
	}
	return hint
}
