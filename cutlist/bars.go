package cutlist

import (
	"context"
	"fmt"
	"slices"

	"tubewright/cutlist/nest"
	"tubewright/route"
	"tubewright/route/check"
)

// cutKind adds the bars of one kind of tube, their proof and what stands
// against cutting it.
func (l *List) cutKind(ctx context.Context, kind route.Tube) error {
	pieces := l.piecesOf(kind.Name)
	rack := rackOf(l.Plan, kind.Name, runsOf(pieces))
	if len(pieces) > 0 && rack.empty() {
		l.Findings = append(l.Findings, l.tooFew(kind.Name, pieces, true))
		return nil
	}
	pieces = l.dropTooLong(kind.Name, pieces, rack.longest())
	if len(pieces) == 0 {
		return nil
	}
	l.Findings = append(l.Findings, rack.notes...)
	c, err := l.cutFrom(ctx, rack, pieces)
	if err != nil {
		return err
	}
	bars, uncut := l.dealt(kind.Name, c.job, c.result, pieces)
	l.Bars = append(l.Bars, bars...)
	l.Proof = append(l.Proof, proof(kind.Name, c.job, c.result, len(uncut)))
	if len(uncut) > 0 {
		l.Findings = append(l.Findings, l.tooFew(kind.Name, uncut, c.few))
	}
	return nil
}

func proof(kind string, job nest.Job, r nest.Result, uncut int) Proof {
	p := Proof{
		Tube: kind, Cost: float64(r.Cost), Bound: float64(r.Bound), Priced: job.Priced(),
		Proven: r.Proven && uncut == 0, Uncut: uncut,
	}
	if p.Priced {
		p.Cost, p.Bound = whole(r.Cost), whole(r.Bound)
	}
	return p
}

// runsOf names the runs of pieces, each once, in order.
func runsOf(pieces []Piece) []string {
	runs := []string{}
	for _, p := range pieces {
		if !slices.Contains(runs, p.Run) {
			runs = append(runs, p.Run)
		}
	}
	return runs
}

// dropTooLong takes out the pieces no bar holds and tells of them, one finding a run.
func (l *List) dropTooLong(kind string, pieces []Piece, longest float64) []Piece {
	var fit []Piece
	told := map[string]bool{}
	for _, p := range pieces {
		switch {
		case hundredths(p.Length) <= hundredths(longest):
			fit = append(fit, p)
		case !told[p.Run]:
			told[p.Run] = true
			l.Findings = append(l.Findings, l.tooShort(kind, p, longest))
		}
	}
	return fit
}

func (l List) tooShort(kind string, p Piece, longest float64) check.Finding {
	text := l.Plan.Units.TextUnit
	return check.Finding{
		Code: check.StockTooShort, Severity: check.SeverityOf(check.StockTooShort), Runs: []string{p.Run}, Parts: []string{},
		Measure: p.Length - longest, Unit: "mm",
		What: fmt.Sprintf("The blank of run %s is %s long; the longest bar of %s is %s, which is %s too short.",
			p.Run, text(p.Length), kind, text(longest), text(p.Length-longest)),
		Fix: fmt.Sprintf("Add a stock length of %s of at least %s, or split the run with a coupler.", kind, text(p.Length)),
	}
}

func (l List) tooFew(kind string, uncut []Piece, proven bool) check.Finding {
	sum := 0.0
	for _, p := range uncut {
		sum += p.Length
	}
	why := "The limits on the stock of %s leave %s uncut, %s in all."
	if !proven {
		why = "No way was found to cut everything from the limited stock of %s; uncut: %s, %s in all."
	}
	return check.Finding{
		Code: check.StockTooFew, Severity: check.SeverityOf(check.StockTooFew), Runs: runsOf(uncut), Parts: []string{},
		Measure: float64(len(uncut)),
		What:    fmt.Sprintf(why, kind, counted(len(uncut), "piece"), l.Plan.Units.TextUnit(sum)),
		Fix:     fmt.Sprintf("Raise the limit on a stock length of %s, add a length, or list an offcut.", kind),
	}
}

func counted(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
