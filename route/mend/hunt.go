package mend

import (
	"cmp"
	"context"
	"slices"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

// hunt is one search for the ways out of one finding.
type hunt struct {
	Search
	ctx      context.Context
	plan     route.Plan
	sol      find.Solution
	finding  check.Finding
	before   []check.Finding // all of the plan as it is
	parts    []check.Finding // those of its parts alone
	obstacle Obstacle
	left     int // steps of work; below 0 when the search was given up
	kit      int // fittings that may go before a socket; 0: not counted yet
	touching contacts
	kept     []Offer
	tried    map[string]bool // words of changes tried
}

func newHunt(ctx context.Context, o Search, plan route.Plan, sol find.Solution, f check.Finding) *hunt {
	h := &hunt{Search: o.filled(plan), ctx: ctx, plan: plan, sol: sol, finding: f, tried: map[string]bool{}}
	h.left = h.Effort
	return h
}

// filled puts the usual values where none are given.
func (o Search) filled(plan route.Plan) Search {
	o.Offers, o.Effort = cmp.Or(o.Offers, DefaultOffers), cmp.Or(o.Effort, DefaultEffort)
	o.Farthest = cmp.Or(o.Farthest, DefaultFarthest)
	if o.Step == 0 {
		o.Step = 1
		if plan.Units == route.Inches {
			o.Step = route.Inch / 20
		}
	}
	if o.Solve == nil {
		o.Solve = find.Solve
	}
	if o.Judge == nil {
		o.Judge = func(_ context.Context, p route.Plan, s find.Solution) ([]check.Finding, error) {
			return check.Findings(p, s), nil
		}
	}
	return o
}

// look tries what may help against the finding: moves and what is little
// trouble, then what is much, and at last the compromise.
func (h *hunt) look() error {
	how, ok := h.remedy()
	if !ok {
		return h.ctx.Err()
	}
	var err error
	if h.before, err = h.Judge(h.ctx, h.plan, h.sol); err != nil {
		return err
	}
	if settled(h.finding, h.before) {
		return nil // not of this plan, or not of this judge
	}
	h.parts = partFindings(h.plan)
	if err := h.blame(how); err != nil {
		return err
	}
	for _, stage := range h.stages() {
		if err := cmp.Or(h.ctx.Err(), stage(how)); err != nil {
			return err
		}
	}
	return nil
}

// stages is in which order to try things. Against a part that stands in the way
// only what is asked of the run is taken back before moves are tried, so that a
// short search spends itself on what is likeliest to help.
func (h *hunt) stages() []func(remedy) error {
	if len(h.obstacle.Parts) > 0 && len(h.obstacle.Runs) < 2 {
		return []func(remedy) error{h.unasked, h.moves, h.light, h.heavy, h.compromise}
	}
	return []func(remedy) error{h.light, h.moves, h.heavy, h.compromise}
}

// remedy is what may help against the finding. Two runs that meet because they
// are on one port are a matter of the port.
func (h *hunt) remedy() (remedy, bool) {
	code := h.finding.Code
	if runs := h.runs(); len(runs) == 2 && (code == check.CollarHits || code == check.TubeHitsTube) {
		for _, ref := range []route.PortRef{runs[0].From, runs[0].To} {
			if ref == runs[1].From || ref == runs[1].To {
				code = check.PortTwice
			}
		}
	}
	how, ok := remedies[code]
	return how, ok
}

// much is the work from which a change is tried only after all others.
const much = 100

// unasked tries to take back what is asked of the runs, where that is a remedy
// at all.
func (h *hunt) unasked(how remedy) error {
	if len(how.trials) == 0 {
		return nil
	}
	for _, l := range asked(h) {
		if err := h.climb(l); err != nil {
			return err
		}
	}
	return nil
}

// light tries what is less trouble than moving a part far.
func (h *hunt) light(how remedy) error {
	return h.few(how, func(work float64) bool { return work < much })
}

// heavy tries the rest.
func (h *hunt) heavy(how remedy) error {
	return h.few(how, func(work float64) bool { return work >= much })
}

// few tries the ladders of changes that begin with so much work, the least first.
func (h *hunt) few(how remedy, of func(work float64) bool) error {
	var ladders [][]Change
	for _, trial := range how.trials {
		ladders = append(ladders, trial(h)...)
	}
	ladders = slices.DeleteFunc(ladders, func(l []Change) bool { return len(l) == 0 || !of(l[0].work()) })
	slices.SortStableFunc(ladders, func(a, b []Change) int { return cmp.Compare(costKey(a[0].work()), costKey(b[0].work())) })
	for _, l := range ladders {
		if err := h.climb(l); err != nil {
			return err
		}
	}
	return nil
}

// climb tries the rungs of a ladder until one helps.
func (h *hunt) climb(ladder []Change) error {
	for _, c := range ladder {
		if good, err := h.consider(c, len(ladder) > 1); good || err != nil {
			return err
		}
	}
	return nil
}

// consider tries a change and keeps it when it is good. It reports whether it is.
func (h *hunt) consider(c Change, least bool) (bool, error) {
	if h.spent() || !h.worth(c.work()) {
		return false, nil
	}
	offer, err := h.once(c)
	if offer == nil || err != nil {
		return false, err
	}
	offer.Least = least
	h.keep(*offer)
	return true, nil
}

// once tries a change unless it has been tried.
func (h *hunt) once(c Change) (*Offer, error) {
	words := c.Words(h.plan.Units)
	if h.tried[words] {
		return nil, nil
	}
	h.tried[words] = true
	return h.try(c)
}

// worth reports whether a change of so much work can still be among those kept,
// even if it settles every error there is.
func (h *hunt) worth(work float64) bool {
	work /= float64(max(1, errorsIn(h.before)))
	return len(h.kept) < h.Offers || costKey(work) < costKey(h.kept[len(h.kept)-1].Cost)
}

// keep puts an offer in its place among those kept.
func (h *hunt) keep(o Offer) {
	at, _ := slices.BinarySearchFunc(h.kept, o, compareOffers)
	h.kept = slices.Insert(h.kept, at, o)
	h.kept = h.kept[:min(len(h.kept), h.Offers)]
}

// spend counts work done.
func (h *hunt) spend(steps int) {
	h.left -= steps
	if h.Progress != nil {
		h.Progress(min(h.Effort-h.left, h.Effort), h.Effort)
	}
}

// spent reports whether the search is over its allowance.
func (h *hunt) spent() bool { return h.left < 0 }

// compromise asks for less room, by millimetres, when nothing else has helped.
func (h *hunt) compromise(how remedy) error {
	if len(h.kept) > 0 || !how.roomy {
		return nil
	}
	for gap := h.plan.Clear - h.Step; gap >= leastClear; gap -= h.Step {
		if good, err := h.consider(Clearance{gap, h.plan.Clear}, true); good || err != nil {
			return err
		}
	}
	return nil
}

// leastClear is the smallest gap we ever speak of, mm: hands and heat shift a
// tube by about as much (common practice).
const leastClear = 1
