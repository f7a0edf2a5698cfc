package board

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// catchPx is how near a port's middle or a part's corner must be to be measured
// from, px of a plain screen.
const catchPx = 10.0

// samePx is how near two corners are drawn to count as one place; the one
// nearer to the viewer is meant then.
const samePx = 0.5

// measuringHint is told when the tool is taken in hand.
const measuringHint = "Measuring: click two ports, corners or faces. M or Esc puts the tool away."

// SetMeasuring takes up the measuring tool or puts it away. With it, two clicks
// measure between two ports, corners or faces.
func (b *Board) SetMeasuring(on bool) {
	if on == b.measuring {
		return
	}
	b.letGo()
	b.unpoint()
	b.measuring, b.measure = on, nil
	if b.OnMeasure != nil {
		text := ""
		if on {
			text = measuringHint
		}
		b.OnMeasure(text)
	}
	b.invalidate()
}

// Measuring reports whether the measuring tool is in hand.
func (b *Board) Measuring() bool { return b.measuring }

func (b *Board) measureDone() bool { return b.measure != nil && b.measure.Both }

// pick takes a point; the second one ends a measure, the third begins another.
func (b *Board) pick(x, y float64) {
	at, ok := b.pointAt(x, y)
	switch {
	case !ok:
		b.say("nothing to measure from there: click a port, a corner or a face")
		return
	case b.measure == nil || b.measure.Both:
		b.measure = &Measure{A: at}
	default:
		b.measure = &Measure{A: b.measure.A, B: at, Both: true}
		if b.OnMeasure != nil {
			b.OnMeasure(b.measure.Text(b.scene.Units))
		}
	}
	b.invalidate()
}

// pointAt is the port, else the corner, else the face at a pixel.
func (b *Board) pointAt(x, y float64) (mgl64.Vec3, bool) {
	if t, onPort := b.painter.HitPort(x, y); onPort {
		p, ok := b.scene.Port(t.Port)
		return p.Frame.At, ok
	}
	surface, ok := b.painter.Surface(x, y)
	if at, caught := b.cornerAt(x, y, surface, ok); caught {
		return at, true
	}
	return surface, ok
}

// cornerAt is the corner of a block drawn nearest to a pixel. Corners that lie
// far behind the face under the pointer are hidden by it.
func (b *Board) cornerAt(x, y float64, surface mgl64.Vec3, hasSurface bool) (best mgl64.Vec3, ok bool) {
	_, _, back := b.camera().Axes()
	least, nearest := catchPx*b.ratio, math.Inf(-1)
	for i := range b.scene.solids {
		s := &b.scene.solids[i]
		if !s.block() {
			continue
		}
		for _, v := range b.scene.mesh.at[s.verts.from:s.verts.to] {
			at := v.wide()
			px, py, z := b.camera().project(at)
			d := math.Hypot(px-x, py-y)
			hidden := hasSurface && surface.Sub(at).Dot(back) > 2*catchPx*b.ratio/b.camera().Zoom
			if nearer := d < least-samePx || d < least+samePx && z > nearest; nearer && !hidden {
				best, least, nearest, ok = at, min(d, least), z, true
			}
		}
	}
	return best, ok
}

// block reports whether a solid is a box.
func (s *solid) block() bool { return s.tris.to-s.tris.from == 12 && s.part >= 0 }
