package sheet

import (
	"fmt"
	"strings"

	"tubewright/cutlist"
	"tubewright/route"
)

// A collar is rigid and cannot pass a bend. It goes on over its own end when the
// straight there holds it and the depth the end is pushed in behind it;
// otherwise it must be on before that end's bend is made, and be kept out of
// the heat (common practice).

// collarNeeds is how much straight an end must have for its collar to go on
// after bending: the collar and, behind it, the full insertion, mm.
func collarNeeds(s route.Fitting) float64 { return s.Collar.Length + s.Insertion.Full }

// collarLegs is the straights at both ends of the finished tube, mm.
func collarLegs(t cutlist.Tube) [2]float64 {
	s := t.Bench.Straights
	return [2]float64{s[0], s[len(s)-1]}
}

// ends is a tube's two chains with the letters of its ends.
func ends(t cutlist.Tube) [2]route.Laid { return [2]route.Laid{t.Way.Start, t.Way.End} }

var endNames = [2]string{"A", "B"}

// early lists the ends whose collars must be on before their bend, with the bend.
func early(t cutlist.Tube) (list []int) {
	if len(t.Bench.Bends) == 0 {
		return nil
	}
	for i, leg := range collarLegs(t) {
		if leg < collarNeeds(ends(t)[i].Socket) {
			list = append(list, i)
		}
	}
	return list
}

// collarsBefore says which collars go on before bending, "" when none must.
func collarsBefore(t cutlist.Tube, u route.Units) string {
	var said []string
	for _, i := range early(t) {
		bend := 1
		if i == 1 {
			bend = len(t.Bench.Bends)
		}
		said = append(said, fmt.Sprintf("collar %s before bend %d (its leg is %s, collar and insertion take %s)",
			endNames[i], bend, u.TextUnit(collarLegs(t)[i]), u.TextUnit(collarNeeds(ends(t)[i].Socket))))
	}
	if len(said) == 0 {
		return ""
	}
	return "A collar cannot pass a bend. Put on " + strings.Join(said, " and ") + "; keep it at the end, out of the heat."
}

// collarsAfter says which collars go on when the tube is formed and trimmed.
func collarsAfter(t cutlist.Tube) string {
	on := early(t)
	switch {
	case len(t.Bench.Bends) == 0:
		return "Put both collars on, facing their ends."
	case len(on) == 0:
		return "Put collar A on over end A and collar B over end B: a collar cannot pass a bend."
	case len(on) == 1:
		other := endNames[1-on[0]]
		return fmt.Sprintf("Put collar %s on over end %s; the other is on already.", other, other)
	}
	return "Both collars are on already: see that they face their ends."
}
