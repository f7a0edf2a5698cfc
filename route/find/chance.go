package find

import (
	"fmt"
	"math"

	"tubewright/bends/budget"
	"tubewright/route"
)

// Job is a way as package budget looks at it: the person's errors, and how well
// the former is known. What the tube itself yields when it is pressed into line
// ([route.Tube.Flex]) counts as give, half in each socket.
func (w *Way) Job(e route.Errors, d route.Doubt) budget.Job {
	flex := w.Tube.Flex(w.Formed.Developed)
	return budget.Job{
		Tube: w.Formed,
		Ends: [2]budget.Socket{socketOf(&w.Start, w.slack(0), flex), socketOf(&w.End, w.slack(1), flex)},
		Errors: budget.Errors{
			Port: e.Port, Facing: e.Facing, Cut: e.Cut, Turn: e.Turn, Roll: e.Roll,
			Radius: d.Radius, Springback: d.Springback,
		},
	}
}

// slack is how far an end may stand back beyond its aim, mm.
func (w *Way) slack(end int) float64 { return w.Ends.Play[end] - w.Ends.SeatGap[end] }

func socketOf(l *route.Laid, slack float64, flex route.Give) budget.Socket {
	s := budget.Socket{
		Name: l.Port.Ref.String(), Port: l.Port.Frame.At, Facing: l.Port.Frame.Dir,
		Stop: l.Stop.At, Dir: l.Stop.Dir,
		Sideways: l.Socket.Give.Sideways, Degrees: l.Socket.Give.Degrees, Slack: slack,
	}
	if s.Sideways == 0 {
		s.Sideways = budget.AssumedSideways
	}
	if s.Degrees == 0 {
		s.Degrees = budget.AssumedDegrees
	}
	s.Sideways, s.Degrees = s.Sideways+flex.Sideways/2, s.Degrees+flex.Degrees/2
	for _, b := range l.Bodies {
		if b.Fitting.Rotary {
			s.Rotary = append(s.Rotary, budget.Axis{Through: b.From.At, Along: b.From.Dir})
		}
	}
	return s
}

// Budget is how a way comes out by the hand of the plan's errors.
func (w *Way) Budget(e route.Errors) budget.Budget { return budget.Of(w.Job(e, w.Tube.Doubt(e))) }

// mostLost is the most blanks a way is taken to lose: nobody goes on after ten.
const mostLost = 10

// missCost is what the blanks a way is expected to lose cost, in mm of tube: the
// tries until one seats, less the one that does; it notes the chance. Only finished ways are looked
// at, so it orders ways of different names; among those of one name the cheapest
// to make is taken.
func (h *hunt) missCost(w *Way) float64 {
	if h.plan.Weigh.Miss == 0 {
		return 0
	}
	if h.doubt == nil {
		d := h.tube.Doubt(h.plan.Errors)
		h.doubt = &d
	}
	w.Chance = budget.Chance(w.Job(h.plan.Errors, *h.doubt))
	return missCost(h.plan.Weigh.Miss, w.Chance)
}

func missCost(weight, chance float64) float64 {
	if chance <= 1.0/(1+mostLost) {
		return weight * mostLost
	}
	return weight * (1/chance - 1)
}

// likelier is by how much the chances of two ways must differ to be told, 0 to 1:
// they are known no better.
const likelier = 0.05

// chanceOf fills in the chance of a way as it is shown, from its first port on.
func (t *table) chanceOf(w *Way) {
	if w.Chance > 0 {
		return
	}
	w.Chance = budget.Chance(w.Job(t.plan.Errors, w.Tube.Doubt(t.plan.Errors)))
}

// certain is how near to 0 or 1 a chance must be to be written as that: the
// next chance of ten thousand.
const certain = 1e-4

// InHundred writes a chance: "62 in 100". What is not quite certain is never
// written as 100, nor what can happen as 0.
func InHundred(chance float64) string {
	n := math.Floor(100*chance + 0.5)
	switch {
	case n == 100 && chance < 1-certain:
		n = 99
	case n == 0 && chance > certain:
		n = 1
	}
	return fmt.Sprintf("%.0f in 100", n)
}

// fromChance says how a way's chance stands to the first one's.
func fromChance(w, first *Way) (words []string) {
	seat := InHundred(w.Chance) + " seat at the first try"
	switch {
	case w.Chance <= first.Chance-likelier && len(w.Formed.Bends) < len(first.Formed.Bends):
		return []string{"fewer bends but likelier to miss: " + seat}
	case w.Chance <= first.Chance-likelier:
		return []string{"likelier to miss: " + seat}
	case w.Chance >= first.Chance+likelier:
		return []string{"surer to fit: " + seat}
	}
	return nil
}
