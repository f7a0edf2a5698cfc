package cutlist

import (
	"context"
	"fmt"
	"slices"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/insert"
)

// WithPutIn adds in which order the tubes go in, and what is found amiss there.
// It is for a list that holds no offers yet: its findings are sorted afresh. It
// takes half a second where a solve takes a twentieth; the error is the context's.
func (l List) WithPutIn(ctx context.Context, sol find.Solution) (List, error) {
	r, err := insert.Machine(ctx, l.Plan, sol, insert.Options{})
	if err != nil {
		return l, err
	}
	return l.AsPutIn(r), nil
}

// AsPutIn is the list with an order that was looked for already; its findings
// take the place of any of their kinds.
func (l List) AsPutIn(r insert.Report) List {
	l.PutIn = &r
	return l.foundPuttingIn(r.Findings())
}

// Again is the list, which has no order yet, with what was found of the order of
// another plan, as far as its runs are in this one: to be shown while it is looked
// for again.
func (l List) Again(old []check.Finding) List {
	return l.foundPuttingIn(slices.DeleteFunc(slices.Clone(old), func(f check.Finding) bool {
		return slices.ContainsFunc(f.Runs, func(run string) bool { return l.letterOf(run) == "" })
	}))
}

// WithoutOld is the list less what [List.Again] added: all of it is of this plan.
func (l List) WithoutOld() List {
	if l.PutIn != nil {
		return l
	}
	return l.foundPuttingIn(nil)
}

func (l List) foundPuttingIn(list []check.Finding) List {
	l.Findings = append(slices.DeleteFunc(slices.Clone(l.Findings), OfPutIn), list...)
	check.Sort(l.Findings)
	return l
}

// OfPutIn reports whether a finding is one of the order of putting in.
func OfPutIn(f check.Finding) bool { return slices.Contains(insert.Codes(), f.Code) }

// PutStep is one tube on its way in.
type PutStep struct {
	Letter string
	insert.Result
	First []string // runs that must be out before it comes out for service
}

// PutInLimits is what the search for the order leaves out, for paper and window.
const PutInLimits = "Looked at are straight slides of the stiff piece with its loose collars, in through the open side, sockets on their ports or unscrewed and carried on the tube. " +
	"Not looked at: pieces turned or bent aside on their way, parts loosened on their screws, and the length of the sockets' threads. Force nothing: a piece that does not go as told wants another way in."

// Text tells how the tube goes in, and what must be out before it comes out.
func (s PutStep) Text() string {
	text := fmt.Sprintf("%s, %s: ", s.Letter, s.Run)
	if s.Verdict != insert.Possible {
		text = fmt.Sprintf("%s, %s: %s. ", s.Letter, s.Run, s.Verdict)
	}
	text += s.Words
	if len(s.First) > 0 {
		text += " For service it comes out only after " + route.And(s.First) + "."
	}
	return text
}

// PutSteps are the tubes in the order in which they go in, then those without a
// place in it.
func (l List) PutSteps() (list []PutStep) {
	if l.PutIn == nil {
		return nil
	}
	for _, names := range [2][]string{l.PutIn.Order, l.PutIn.Left} {
		for _, name := range names {
			for i, r := range l.PutIn.In {
				if r.Run == name {
					list = append(list, PutStep{l.letterOf(name), r, l.PutIn.First[i]})
				}
			}
		}
	}
	return list
}

func (l List) letterOf(run string) string {
	for _, t := range l.Tubes {
		if t.Run == run {
			return t.Letter
		}
	}
	return ""
}

type jsonPutIn struct {
	Order []string      `json:"order"`
	Left  []string      `json:"left"` // no order was found for them
	Runs  []jsonPutStep `json:"runs"`
}

type jsonPutStep struct {
	Run      string         `json:"run"`
	Verdict  insert.Verdict `json:"verdict"` // possible, impossible, not decided
	Unscrew  []string       `json:"unscrew"` // ports whose sockets come off for it
	How      string         `json:"how"`
	OutFirst []string       `json:"out_first"` // runs that come out before it for service
}

func (l List) putInJSON() *jsonPutIn {
	if l.PutIn == nil {
		return nil
	}
	return &jsonPutIn{full(l.PutIn.Order), full(l.PutIn.Left), each(l.PutSteps(), l.putStepJSON)}
}

func (l List) putStepJSON(s PutStep) jsonPutStep {
	off := []string{}
	for _, t := range l.Tubes {
		if t.Run != s.Run {
			continue
		}
		for e, port := range [2]string{t.Way.Start.Port.Ref.String(), t.Way.End.Port.Ref.String()} {
			if s.Off[e] {
				off = append(off, port)
			}
		}
	}
	return jsonPutStep{s.Run, s.Verdict, off, s.Words, full(s.First)}
}
