package ui

import (
	"slices"
	"strings"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/ui/session"
)

// step is one of the first things to do, in the order of the job.
type step struct {
	key  string // in the settings
	name string
	hint string // told when it is pressed
}

// firstSteps are what a person who has never planned here is led through.
var firstSteps = []step{
	{"place", "Place parts", "Drag a part on the board, nudge it with the arrow keys, or type its numbers at the left. Add one with Ctrl+T."},
	{"run", "Run tubes", "Drag from one port to another on the board. Ports that cannot be joined go grey and say why."},
	{"settle", "Settle findings", "Press a finding at the right to see where it is; many have a button that finds a way out."},
	{"print", "Print", "Ctrl+P shows the pages: cut list, bench tables and templates at full size."},
}

// placing are what edits that place parts are called.
var placing = []string{"Move ", "Nudge ", "Turn ", "Add "}

// stepsDone are the steps that what is shown proves to have been done, on top
// of those already known. Printing is told by itself.
func stepsDone(s session.Snapshot, known []string) []string {
	done := slices.Clone(known)
	tick := func(key string, yes bool) {
		if yes && !slices.Contains(done, key) {
			done = append(done, key)
		}
	}
	tick("place", placedPart(s))
	tick("run", strings.HasPrefix(s.Undo, "Join "))
	settled := countOf(s.List.Findings, check.Error)+countOf(s.List.Findings, check.Warning) == 0 && fittingWords(s) == ""
	tick("settle", s.Current() && s.Undo != "" && len(s.List.Tubes) > 0 && settled)
	return done
}

// placedPart reports whether the last edit placed a part: "Add a bar to buy" did not.
func placedPart(s session.Snapshot) bool {
	return slices.ContainsFunc(placing, func(word string) bool {
		rest, ok := strings.CutPrefix(s.Undo, word)
		return ok && slices.ContainsFunc(s.Plan.Parts, func(k route.Part) bool {
			return rest == k.Name || strings.HasPrefix(rest, k.Name+" ")
		})
	})
}
