package find

import "tubewright/route/clear"

// limbsOfWay is the room a way takes: its fittings and its tube.
func limbsOfWay(w Way) []limb {
	var limbs []limb
	for _, b := range w.Start.Bodies {
		limbs = addLimbs(limbs, b.Shapes)
	}
	for _, b := range w.End.Bodies {
		limbs = addLimbs(limbs, b.Shapes)
	}
	for _, p := range w.Formed.Pieces() {
		if p.End-p.Start > sameSpot {
			limbs = append(limbs, newLimb(Swept(p, w.Tube.OD)))
		}
	}
	return limbs
}

func addLimbs(limbs []limb, shapes []clear.Shape) []limb {
	for _, s := range shapes {
		limbs = append(limbs, newLimb(s))
	}
	return limbs
}

// solidsOf is what a way takes up, for the search of another run.
func solidsOf(w Way) []solid {
	var list []solid
	for _, l := range limbsOfWay(w) {
		list = append(list, solid{l.shape, l.lo, l.hi, -1, w.Run})
	}
	return list
}

// clash is how much the gap between two ways lacks of need, mm; 0 when nothing.
func clash(a, b []limb, need float64) float64 {
	worst := 0.0
	for _, x := range a {
		for _, y := range b {
			worst = max(worst, x.short(y.shape, y.lo, y.hi, need))
		}
	}
	return worst
}

// reserved is what the other runs' ports will need whatever way they go: the
// prescribed fittings, or the socket that stands there. Without it a run solved
// early could stand where a later one must begin.
func (sc *scene) reserved(run int) []solid {
	var list []solid
	mine := sc.plan.Runs[run]
	for i, r := range sc.plan.Runs {
		if i == run {
			continue
		}
		h, err := sc.newHunt(r, nil)
		if err != nil {
			continue // that run is reported as having no way
		}
		for _, s := range []*side{h.a, h.b} {
			if s.port.Ref == mine.From || s.port.Ref == mine.To {
				continue // two runs on one port: the checks report it
			}
			for _, l := range limbsOf(s.plain) {
				list = append(list, solid{l.shape, l.lo, l.hi, -1, r.Name})
			}
		}
	}
	return list
}
