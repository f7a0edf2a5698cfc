package mend

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// facing is how near to opposite two ports' facings must be for a straight tube
// to join them, as a cosine: 1 degree, what sockets give.
const facing = -0.99985

// lined moves an end part of a straight run sideways until its port stands in
// line with the other: by two axes where it must be, to a tenth of a millimetre
// or a thousandth of an inch.
func lined(h *hunt) (ladders [][]Change) {
	for _, r := range h.runs() {
		tube, _ := h.plan.TubeOf(r)
		from, ok := h.plan.FindPort(r.From)
		to, good := h.plan.FindPort(r.To)
		if !ok || !good || tube.Radius > 0 && r.Way != route.Straight || from.Frame.Dir.Dot(to.Frame.Dir) > facing {
			continue
		}
		apart := to.Frame.At.Sub(from.Frame.At)
		aside := h.written(apart.Sub(from.Frame.Dir.Mul(apart.Dot(from.Frame.Dir))))
		if aside.Len() == 0 || aside.Len() > h.Farthest {
			continue
		}
		for end, by := range [2]mgl64.Vec3{aside, aside.Mul(-1)} {
			m := h.mover(portAt(&r, end).Part)
			ladders = append(ladders, each(Move{m.parts, by, m.mounted})...)
		}
	}
	return ladders
}

// written rounds a shift to what words write.
func (h *hunt) written(by mgl64.Vec3) mgl64.Vec3 {
	least := 0.1
	if h.plan.Units == route.Inches {
		least = route.Inch / 1000
	}
	for i := range by {
		by[i] = math.Round(math.Round(by[i]/least)*least*grains)/grains + 0
	}
	return by
}

// turns turns the parts the finding is about: those it names a quarter each way,
// those that only carry ports of its runs half round.
func turns(h *hunt) (ladders [][]Change) {
	for axis := range 3 {
		for _, name := range h.finding.Parts {
			ladders = append(ladders, each(Turn{name, axis, 90}, Turn{name, axis, -90})...)
		}
		for _, r := range h.runs() {
			ladders = append(ladders, each(Turn{r.From.Part, axis, 180}, Turn{r.To.Part, axis, 180})...)
		}
	}
	return ladders
}
