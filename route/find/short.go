package find

import "tubewright/route/clear"

// short is how much the gap between a limb and a shape lacks of need, mm; 0
// when nothing. Depths cost much more than a yes or no: only a run that has no
// way, and two runs that clash, ask for them.
func (h *halt) short(l *limb, s clear.Shape, lo, hi *vec, need float64) float64 {
	if h.halted() {
		return 0
	}
	if !l.tooNear(s, lo, hi, need) {
		return 0
	}
	// never nothing: the yes or no may round the other way than the measure
	h.did(depthWork)
	return max(need+margin-clear.BetweenUntil(l.shape, s, h.tileDone).Distance, sameSpot)
}

const (
	// depthWork is what a depth counts besides the tiles of directions it looks at.
	depthWork = 32
	// tileWork is what each of these counts.
	tileWork = 16
)

// tileDone counts a tile of a depth, and reports whether to give up.
func (h *halt) tileDone() bool {
	h.did(tileWork)
	return h.halted()
}
