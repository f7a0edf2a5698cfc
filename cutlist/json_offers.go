package cutlist

import (
	"tubewright/route/check"
	"tubewright/route/mend"
)

// jsonOffer is a way out of a finding that was tried.
type jsonOffer struct {
	Change  string   `json:"change"`            // the kind: "move", "former", ...
	Words   string   `json:"words"`             // one sentence, in the plan's units
	Cost    number   `json:"cost"`              // trouble, in mm of tube
	Least   bool     `json:"least"`             // no smaller step of it helps
	Parts   []string `json:"parts,omitempty"`   // of a move
	By      []number `json:"by,omitempty"`      // of a move, mm
	Settles []string `json:"settles,omitempty"` // the other errors that go with it
	Brings  []string `json:"brings,omitempty"`  // warnings that come with it
}

func offerJSON(o mend.Offer) jsonOffer {
	j := jsonOffer{
		Change: o.Change.Kind(), Words: o.Words, Cost: number(o.Cost), Least: o.Least,
		Settles: each(o.Settles, whatOf), Brings: each(o.Brings, whatOf),
	}
	if m, ok := o.Change.(mend.Move); ok {
		j.Parts, j.By = m.Parts, each(m.By[:], func(v float64) number { return number(v) })
	}
	return j
}

func whatOf(f check.Finding) string { return f.What }

// findingsJSON lists the findings, each with the ways out that were tried.
func (l List) findingsJSON() []jsonFinding {
	list := each(l.Findings, findingJSON)
	for i := range min(len(list), len(l.Offers)) {
		list[i].Offers = each(l.Offers[i], offerJSON)
	}
	return list
}

// FindingsJSON writes the findings of the list, with the ways out that were
// tried: what [FindingsJSON] writes, and "offers" beside it.
func (l List) FindingsJSON() ([]byte, error) { return indented(l.findingsJSON()) }
