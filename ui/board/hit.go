package board

import "github.com/go-gl/mathgl/mgl64"

// How much farther than it is drawn a thing can be caught, px of a plain screen.
const (
	reachMark = 4
	reachPort = 7
	reachTube = 4
)

// Hit gives what is at a pixel of the picture made last. Marks come first, then
// what is drawn there; a port or a tube is also caught from a little beside it.
func (p *Painter) Hit(x, y float64) Target {
	px, py := float32(x), float32(y)
	if i := p.markHit(px, py); i >= 0 {
		return FindingTarget(i)
	}
	if p.scene == nil {
		return Target{}
	}
	here := p.targetAt(px, py)
	if here.Kind == OnPort {
		return here
	}
	if run, ok := p.brokenHit(px, py); ok {
		return RunTarget(run)
	}
	if near, ok := p.nearest(px, py, OnPort, reachPort); ok {
		return near
	}
	if here.Kind == OnRun {
		return here
	}
	if near, ok := p.nearest(px, py, OnRun, reachTube); ok {
		return near
	}
	return here
}

// HitPort gives the port at a pixel of the picture made last or a little beside
// it, whatever mark lies on it.
func (p *Painter) HitPort(x, y float64) (Target, bool) {
	if p.scene == nil {
		return Target{}, false
	}
	return p.nearest(float32(x), float32(y), OnPort, reachPort)
}

// markHit is the finding whose mark is at a pixel, −1 for none; the last drawn
// lies on top.
func (p *Painter) markHit(x, y float32) int {
	for i := len(p.marks) - 1; i >= 0; i-- {
		m := p.marks[i]
		if sqrt((m.x-x)*(m.x-x)+(m.y-y)*(m.y-y)) <= m.r+reachMark*float32(p.scale) {
			return m.finding
		}
	}
	return -1
}

// brokenHit is the run without a tube whose line passes by a pixel.
func (p *Painter) brokenHit(x, y float32) (run string, ok bool) {
	for _, t := range p.scene.Tubes {
		for k := 0; t.Broken && k+1 < len(t.Corners); k++ {
			if apart(p.spotOf(t.Corners[k]), p.spotOf(t.Corners[k+1]), x, y) <= reachTube*float32(p.scale) {
				return t.Run, true
			}
		}
	}
	return "", false
}

// apart is how far a pixel is from a line between two others.
func apart(a, b spot, x, y float32) float32 {
	dx, dy := b.x-a.x, b.y-a.y
	k := ((x-a.x)*dx + (y-a.y)*dy) / max(dx*dx+dy*dy, 1e-6)
	k = min(max(k, 0), 1)
	ex, ey := a.x+k*dx-x, a.y+k*dy-y
	return sqrt(ex*ex + ey*ey)
}

func (p *Painter) targetAt(x, y float32) Target { return p.scene.targets[p.idAt(x, y)] }

// nearest looks for the nearest pixel of a kind of target within reach.
func (p *Painter) nearest(x, y float32, kind TargetKind, reach int) (best Target, ok bool) {
	r := int(float64(reach) * p.scale)
	least := r*r + 1
	for dy := -r; dy <= r; dy++ {
		for dx := -r; dx <= r; dx++ {
			if d := dx*dx + dy*dy; d < least {
				if t := p.targetAt(x+float32(dx), y+float32(dy)); t.Kind == kind {
					best, least, ok = t, d, true
				}
			}
		}
	}
	return best, ok
}

// Surface gives the point of the case that is drawn at a pixel of the picture
// made last; ok is false where nothing is.
func (p *Painter) Surface(x, y float64) (at mgl64.Vec3, ok bool) {
	if p.scene == nil || p.idAt(float32(x), float32(y)) == 0 {
		return mgl64.Vec3{}, false
	}
	f := p.ids()
	z := f.depth[int(y*float64(p.over))*f.w+int(x*float64(p.over))]
	return p.cam.unproject(x, y, float64(z)), true
}
