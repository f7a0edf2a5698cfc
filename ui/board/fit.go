package board

import "github.com/go-gl/mathgl/mgl64"

// FitAll shows the whole scene in every look.
func (b *Board) FitAll() {
	for i := range b.cameras {
		c := &b.cameras[i]
		c.Fit(b.scene, c.W, c.H)
	}
	b.roamed = [4]bool{}
	b.invalidate()
}

// FitSelection shows what is chosen as large as is sensible in the large look;
// with nothing chosen it is FitAll.
func (b *Board) FitSelection() {
	lo, hi, ok := b.scene.boxOf(b.selection)
	if !ok {
		b.FitAll()
		return
	}
	b.ShowBox(lo, hi)
}

// leastShown is the least extent that fills the view, mm: a port alone would
// fill it with one disc.
const leastShown = 60.0

// ShowBox shows a box of the case as large as is sensible in the large look.
func (b *Board) ShowBox(lo, hi mgl64.Vec3) {
	for k := range 3 {
		if more := (leastShown - (hi[k] - lo[k])) / 2; more > 0 {
			lo[k], hi[k] = lo[k]-more, hi[k]+more
		}
	}
	b.camera().FitBox(lo, hi)
	b.roamed[b.look] = true
	b.invalidate()
}
