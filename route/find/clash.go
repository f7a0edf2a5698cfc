package find

import (
	"tubewright/route"
	"tubewright/route/clear"
)

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

// solids is what an option takes up, for the search of another run.
func (o *option) solids() []solid {
	list := make([]solid, len(o.limbs))
	for n, l := range o.limbs {
		list[n] = solid{l.shape, l.lo, l.hi, -1, o.way.Run}
	}
	return list
}

// clash is how much the gap between two ways lacks of need, mm; 0 when nothing. It
// looks no further once that is enough.
func (h *halt) clash(a, b []limb, need, enough float64) float64 {
	worst := 0.0
	for i := range a {
		for j := range b {
			if worst >= enough {
				return worst
			}
			worst = max(worst, h.short(&a[i], b[j].shape, &b[j].lo, &b[j].hi, need))
		}
	}
	return worst
}

// clashes reports whether two ways come nearer to each other than need.
func clashes(a, b []limb, need float64) bool {
	for i := range a {
		for j := range b {
			if a[i].tooNear(b[j].shape, &b[j].lo, &b[j].hi, need) {
				return true
			}
		}
	}
	return false
}

// reserved is what the other runs' ports will need whatever way they go: the
// prescribed fittings, or the socket that stands there. Without it a run could
// stand where another must begin. Two runs on one port do not reserve it against
// each other: the checks report them.
func (t *table) reserved(run int) []solid { return t.reservedBy(run, everyRun) }

// reservedBy is reserved by those runs only that which allows.
func (t *table) reservedBy(run int, which func(j int) bool) []solid {
	var list []solid
	mine := t.plan.Runs[run]
	for _, j := range t.order {
		if j == run || !which(j) {
			continue
		}
		for _, p := range t.rows[j].ports {
			if p.ref != mine.From && p.ref != mine.To {
				list = append(list, p.needs...)
			}
		}
	}
	return list
}

// portNeeds is what a run needs at one of its ports.
type portNeeds struct {
	ref   route.PortRef
	needs []solid
}

// portsOf works out what a run needs at its ports; nothing for a run that
// cannot be searched at all, which is reported as having no way.
func (sc *scene) portsOf(r route.Run) []portNeeds {
	h, err := sc.newHunt(r, request{below: anyCost})
	if err != nil {
		return nil
	}
	var list []portNeeds
	for _, s := range []*side{h.a, h.b} {
		p := portNeeds{ref: s.port.Ref}
		for _, l := range s.plain.room() {
			p.needs = append(p.needs, solid{l.shape, l.lo, l.hi, -1, r.Name})
		}
		list = append(list, p)
	}
	return list
}
