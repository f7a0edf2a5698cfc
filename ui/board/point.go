package board

import "github.com/go-gl/mathgl/mgl64"

// Pointing asks the person to click points of a look's plane.
type Pointing struct {
	Hint    string     // told while it lasts
	Points  int        // how many are asked for
	Through mgl64.Vec3 // the plane of the look goes through this point
	// Done gets the points; nil when the person gave it up, with Esc, by another
	// look or because something else was asked.
	Done func(points []mgl64.Vec3)
}

// pointing is a question under way.
type pointing struct {
	Pointing
	at []mgl64.Vec3
}

// Point asks for points. One question takes the place of another.
func (b *Board) Point(p Pointing) {
	b.letGo()
	b.SetMeasuring(false)
	b.unpoint()
	b.pointing = &pointing{Pointing: p}
	if b.OnMeasure != nil {
		b.OnMeasure(p.Hint)
	}
	b.invalidate()
}

// Pointing reports whether points are being asked for.
func (b *Board) Pointing() bool { return b.pointing != nil }

// unpoint gives the question up.
func (b *Board) unpoint() {
	if b.pointing != nil {
		b.endPointing(nil)
	}
}

func (b *Board) endPointing(points []mgl64.Vec3) {
	done := b.pointing.Done
	b.pointing = nil
	if b.OnMeasure != nil {
		b.OnMeasure("")
	}
	b.invalidate()
	done(points)
}

// pointAtPlane takes a point of the plane; the last one ends the question.
func (b *Board) pointAtPlane(x, y float64) {
	q := b.pointing
	q.at = append(q.at, b.camera().Unproject(x, y, q.Through))
	if len(q.at) == q.Points {
		b.endPointing(q.at)
		return
	}
	b.invalidate()
}

// pointed draws what has been pointed at so far.
func (p *Painter) pointed(f *frame, style *Style, points []mgl64.Vec3) {
	s := float32(p.scale)
	for _, at := range points {
		c := p.spotOf(at)
		f.line(spot{x: c.x - 9*s, y: c.y}, spot{x: c.x + 9*s, y: c.y}, pen{c: pack(style.Halo), width: 3 * s, alpha: 0.8})
		f.line(spot{x: c.x, y: c.y - 9*s}, spot{x: c.x, y: c.y + 9*s}, pen{c: pack(style.Halo), width: 3 * s, alpha: 0.8})
		f.line(spot{x: c.x - 9*s, y: c.y}, spot{x: c.x + 9*s, y: c.y}, pen{c: pack(style.Guide), width: 1.4 * s, alpha: 1})
		f.line(spot{x: c.x, y: c.y - 9*s}, spot{x: c.x, y: c.y + 9*s}, pen{c: pack(style.Guide), width: 1.4 * s, alpha: 1})
	}
}
