package find

import (
	"tubewright/route"
	"tubewright/route/made"
)

// AsMade is the name of the way of a run whose tube is there.
const AsMade = "as made"

// Attempt is a way as one writes down that its tube was made: everything but
// what only the bench knows.
func (w Way) Attempt() route.Attempt {
	a := route.Attempt{Corners: w.Formed.Corners, Start: chainOf(w.Start), End: chainOf(w.End)}
	if len(w.Formed.Bends) > 0 {
		a.Radius = w.Formed.Bends[0].Radius
	}
	return a
}

func chainOf(laid route.Laid) (c route.Chain) {
	for _, b := range laid.Bodies {
		turns := b.Fitting.Kind == route.Offset || b.Fitting.Kind == route.Elbow
		c = append(c, route.Step{Fitting: b.Fitting.Name, Roll: b.Roll, Rolled: turns || b.Roll != 0})
	}
	return c
}

// asMade is the one way of a run whose tube is there: the tube as it was made,
// where it now stands best between its ports. What it hits or misses is for the
// checks to say.
func (sc *scene) asMade(run route.Run) (Way, error) {
	seat, err := made.Sit(sc.plan, run)
	if err != nil {
		return Way{}, &NoWayError{
			Run: run.Name, Cause: err, Units: sc.plan.Units,
			Fix: "Correct the plan there, or say that the tube no longer fits: it is then planned again.",
		}
	}
	tube, _ := sc.plan.TubeOf(run)
	w := Way{
		Run: run.Name, Name: AsMade, Tube: tube, Start: seat.Laid[0], End: seat.Laid[1], Formed: seat.Formed,
		Seals: len(seat.Laid[0].Bodies) + len(seat.Laid[1].Bodies) + 2, Reason: "made and fits",
	}
	for end, laid := range seat.Laid {
		w.Ends.SeatGap[end], w.Ends.Play[end] = laid.Socket.SeatGap, laid.Socket.Insertion.Play()
		w.Miss.Sideways = max(w.Miss.Sideways, seat.Ends[end].Sideways)
		w.Miss.Degrees = max(w.Miss.Degrees, seat.Ends[end].Degrees)
		for _, b := range laid.Bodies {
			w.Price += b.Fitting.Price
		}
	}
	w.Cost = sc.costAsMade(w)
	return w, nil
}

// costAsMade is what such a tube costs by the plan's weights, but for tidiness:
// it is not to be improved any more.
func (sc *scene) costAsMade(w Way) float64 {
	weigh, odd := sc.plan.Weigh, 0
	for _, b := range w.Formed.Bends {
		if !isTurn(b.Turn, 45) && !isTurn(b.Turn, 90) {
			odd++
		}
	}
	return weigh.Bend*float64(len(w.Formed.Bends)) + weigh.OddBend*float64(odd) + weigh.Millimetre*w.Formed.Developed +
		weigh.Fitting*float64(w.Fittings()-2) + weigh.Price*w.Price
}

// fixedPath reports whether a run is not searched: its path is drawn, or its
// tube is there.
func fixedPath(run route.Run) bool {
	_, isMade := run.AsMade()
	return isMade || run.Way == route.Drawn
}
