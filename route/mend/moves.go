package mend

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/check"
)

// mover is a part that may be moved, with what is fixed to it.
type mover struct {
	parts   []string
	mounted bool
	best    int // fewest steps that help; 0: none yet
	offer   *Offer
}

// coarse is how many steps the first moves tried lie apart; a power of two.
const coarse = 8

// moves tries to move the parts the finding is about along the axes: by what is
// told to lack, by every eighth step, then by those between, at last by all. A part is not tried
// by more steps than are known to help. So when the search comes to its end,
// every move of that part by fewer steps has been tried and none helps: what
// helps by 6 mm need not help by 7, and no way is skipped for being narrow.
func (h *hunt) moves(how remedy) error {
	if !how.moves {
		return nil
	}
	movers, far := h.movers(), h.farthest()
	if err := h.moveAll(movers, h.lacking(), far); err != nil {
		return err
	}
	for stride := coarse; stride >= 1; stride /= 2 {
		for steps := stride; steps <= far; steps += stride {
			if stride < coarse && steps/stride%2 == 0 {
				continue // tried at the stride before
			}
			if err := h.moveAll(movers, steps, far); err != nil {
				return err
			}
		}
	}
	most := h.mostSteps(movers)
	for i := range movers {
		if m := &movers[i]; m.best > 0 && m.best <= most {
			m.offer.Least = !h.spent()
			h.keep(*m.offer)
		}
	}
	return nil
}

// farthest is how many steps a part may be moved.
func (h *hunt) farthest() int {
	far := h.Farthest
	if m := h.finding.Move; m != nil {
		far = max(far, 1.25*m.By.Len())
	}
	return int(math.Ceil(far / h.Step))
}

// lacking is how many steps what is told to lack would take: a good first guess,
// which spares all larger ones.
func (h *hunt) lacking() int {
	if h.finding.Unit != "mm" {
		return 0
	}
	return int(math.Ceil(math.Abs(h.finding.Measure)/h.Step - check.Rounding))
}

// moveAll moves each part by so many steps along each axis, both ways.
func (h *hunt) moveAll(movers []mover, steps, far int) error {
	most := min(h.mostSteps(movers), far)
	if steps < 1 {
		return nil
	}
	for i := range movers {
		m := &movers[i]
		for dir := range 6 {
			if m.best > 0 && steps >= m.best || steps > most {
				break
			}
			var by mgl64.Vec3
			by[dir/2] = float64(steps) * h.Step * float64(1-dir%2*2)
			offer, err := h.move(Move{m.parts, by, m.mounted})
			if err != nil {
				return err
			}
			if offer != nil {
				m.best, m.offer = steps, offer
			}
		}
	}
	return nil
}

// muchFarther is how many times the least move found another part's may be and
// still be worth looking for.
const muchFarther = 3

// mostSteps is how many steps are still worth trying.
func (h *hunt) mostSteps(movers []mover) int {
	least := 0
	for i := range movers {
		if b := movers[i].best; b > 0 && (least == 0 || b < least) {
			least = b
		}
	}
	if least == 0 {
		return math.MaxInt
	}
	return muchFarther * least
}

func (h *hunt) move(m Move) (*Offer, error) {
	if h.spent() || !h.worth(m.work()) {
		return nil, nil
	}
	return h.once(m)
}

// movers lists the parts to move: those the finding names, then what is in the
// way, then those its runs stand on.
func (h *hunt) movers() (list []mover) {
	names := slices.Concat(h.finding.Parts, h.obstacle.Parts)
	for _, r := range h.runs() {
		names = append(names, r.From.Part, r.To.Part)
	}
	for i, name := range names {
		if _, ok := h.plan.FindPart(name); ok && !slices.Contains(names[:i], name) {
			list = append(list, h.mover(name))
		}
	}
	return list
}

// mover is a part with what is fixed to it.
func (h *hunt) mover(name string) mover {
	if h.touching == nil {
		h.touching = contactsOf(h.plan)
	}
	return mover{parts: h.touching.with(name), mounted: h.touching.leans(name)}
}
