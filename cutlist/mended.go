package cutlist

import (
	"context"
	"slices"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/mend"
)

// Judge gives all findings of a plan as solved, those of its stock among them:
// for [mend.Search.Judge].
func Judge(ctx context.Context, plan route.Plan, sol find.Solution) ([]check.Finding, error) {
	l, err := Build(ctx, plan, sol)
	return l.Findings, err
}

// Offers looks for ways out of one finding of a list, as [mend.Search.Advise]
// does; those about stock are judged by the bars as well.
func Offers(ctx context.Context, plan route.Plan, sol find.Solution, f check.Finding, search mend.Search) (mend.Advice, error) {
	if stockCodes[f.Code] {
		search.Judge = Judge
	}
	return search.Advise(ctx, plan, sol, f)
}

var stockCodes = map[check.Code]bool{check.StockTooShort: true, check.StockTooFew: true}

// quick are the findings for which a short look is taken without being asked:
// those for which the checks by themselves can say no way out that is sure.
var quick = []check.Code{check.NoWay, check.TubeHitsTube, check.CollarHits}

// mostQuick bounds the findings that get a short look: a plan with more is not
// waiting for a hint.
const mostQuick = 3

// Mended gives the list with ways out that were tried: in Offers, and the least
// of each as its finding's Fix. It takes a short look at runs without a way and
// runs in conflict; a list without such comes back as it is, at once. The error
// is the context's.
func (l List) Mended(ctx context.Context, sol find.Solution) (List, error) {
	left := mostQuick
	return l.mended(ctx, sol, func(f check.Finding) bool {
		if !slices.Contains(quick, f.Code) || left == 0 {
			return false
		}
		left--
		return true
	}, mend.Search{Effort: mend.QuickEffort}, nil)
}

// MendedAll is Mended for every finding that there is something to try against,
// with the usual effort. told hears of each before it is looked into, with its
// number from 1 and of how many.
func (l List) MendedAll(ctx context.Context, sol find.Solution, told func(f check.Finding, n, of int)) (List, error) {
	return l.mended(ctx, sol, func(f check.Finding) bool { return mend.Can(f.Code) }, mend.Search{}, told)
}

func (l List) mended(ctx context.Context, sol find.Solution, wanted func(check.Finding) bool, search mend.Search, told func(check.Finding, int, int)) (List, error) {
	var at []int
	for i, f := range l.Findings {
		if wanted(f) {
			at = append(at, i)
		}
	}
	if len(at) == 0 {
		return l, ctx.Err()
	}
	l.Findings, l.Offers = slices.Clone(l.Findings), make([][]mend.Offer, len(l.Findings))
	for n, i := range at {
		if told != nil {
			told(l.Findings[i], n+1, len(at))
		}
		advice, err := Offers(ctx, l.Plan, sol, l.Findings[i], search)
		if err != nil {
			return List{}, err
		}
		l.settle(i, advice)
	}
	return l, nil
}

// settle puts down what was found about a finding.
func (l *List) settle(i int, advice mend.Advice) {
	f := &l.Findings[i]
	l.Offers[i] = advice.Offers
	if len(advice.Offers) > 0 {
		f.Fix, f.Move = advice.Offers[0].Words, moveOf(advice.Offers[0].Change)
	}
	if advice.InTheWay.What != "" {
		f.What += " " + advice.InTheWay.What
	}
}

// moveOf is a change as a finding's Move; nil when it is another, or moves more
// than one part.
func moveOf(c mend.Change) *check.Move {
	if m, ok := c.(mend.Move); ok && len(m.Parts) == 1 {
		return &check.Move{Part: m.Parts[0], By: m.By, Free: true}
	}
	return nil
}
