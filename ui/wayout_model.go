package ui

import (
	"fmt"
	"math"

	"tubewright/route/check"
	"tubewright/route/mend"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// wayOutModel is what stands under a finding whose ways out were asked for.
type wayOutModel struct {
	index   int // of the finding in the list; -1: nobody asked
	looking bool
	spent   float64 // of the allowed effort, 0 to 1
	said    string  // one or two sentences
	failed  bool
	offers  []offerModel
}

// offerModel is one change that settles the finding.
type offerModel struct {
	words string // an order, with its full stop
	facts string
}

func wayOutOf(s session.Snapshot) wayOutModel {
	w := s.WayOut
	if !w.Asked {
		return wayOutModel{index: -1}
	}
	m := wayOutModel{index: indexOf(w.Finding, s.List.Findings), looking: w.Looking, spent: w.Spent}
	for _, o := range w.Advice.Offers {
		m.offers = append(m.offers, offerModel{o.Words, offerFacts(o)})
	}
	switch {
	case w.Looking:
		m.said = "Trying changes, each solved and checked afresh: " + fmt.Sprintf("%.0f %%.", math.Floor(w.Spent*100))
	case w.Err != nil:
		m.said, m.failed = "The search broke off: "+sentence(w.Err.Error()), true
	default:
		m.said = outcome(w)
	}
	return m
}

// indexOf is the place of a finding in a list; -1 when it is not there.
func indexOf(f check.Finding, all []check.Finding) int {
	if t := findAgain(f, all); t.Kind == board.OnFinding {
		return t.Finding
	}
	return -1
}

// outcome says how a search that has ended went.
func outcome(w session.WayOut) string {
	said := w.Advice.InTheWay.What
	if said != "" {
		said += " "
	}
	switch n := len(w.Advice.Offers); {
	case w.Stopped:
		return said + "Stopped before the end."
	case n == 0 && w.Advice.Whole:
		return said + "No single change settles it. Move a part by hand, or run the tube from another port."
	case n == 0:
		return said + "None was found in the time allowed. Move a part by hand, or run the tube from another port."
	case n == 1:
		return said + "Press it to make the change; undo takes it back."
	}
	return said + "Press one to make the change, the least first; undo takes it back."
}

// offerFacts says what else comes of a change.
func offerFacts(o mend.Offer) string {
	least, more, brings := "", "", ""
	if o.Least {
		least = "no smaller step does"
	}
	if n := len(o.Settles); n > 0 {
		more = "settles " + count(n, "other error") + " too"
	}
	if n := len(o.Brings); n > 0 {
		brings = "brings " + warned(o.Brings)
	}
	return dotted(least, more, brings)
}

// warned names the warnings a change brings: one by its kind, more by number.
func warned(all []check.Finding) string {
	if len(all) == 1 {
		return "a warning: " + codeWords(all[0].Code)
	}
	return count(len(all), "warning")
}
