package board

import (
	"fyne.io/fyne/v2/driver/desktop"
	"github.com/go-gl/mathgl/mgl64"
)

// grip is a thing taken hold of, until it is let go.
type grip interface {
	// move follows the pointer, at most once per frame, and reports whether that
	// changes the picture.
	move(b *Board, x, y float64) bool
	// end lets go; kept is false when the person gave it up.
	end(b *Board, kept bool)
	// show adds to the picture what is in hand.
	show(b *Board, s *Show)
}

// take decides what a drag from a press takes hold of.
func (b *Board) take(p press) grip {
	pan := &panGrip{p.x, p.y}
	if p.button == desktop.MouseButtonTertiary || b.hand.space {
		return pan
	}
	if p.button != desktop.MouseButtonPrimary {
		return nil
	}
	if !b.measuring && b.pointing == nil {
		if g := b.takeThing(p); g != nil {
			return g
		}
		if g := b.takeUnder(p); g != nil {
			return g
		}
	}
	if b.look == Turntable {
		return &orbitGrip{p.x, p.y}
	}
	return pan
}

// takeThing is take for what the scene holds; nil when it is nothing to drag.
func (b *Board) takeThing(p press) grip {
	if g := b.takeCorner(p); g != nil {
		return g
	}
	switch p.on.Kind {
	case OnPort:
		if q, _ := b.scene.Port(p.on.Port); !q.Used() && b.OnJoin != nil {
			return b.takePort(p.on.Port)
		}
		return b.takePart(p.on.Port.Part, p)
	case OnPart:
		return b.takePart(p.on.Part, p)
	case OnRun:
		return b.takeStraight(p)
	case OnFinding: // a mark may lie on a port
		if t, ok := b.painter.HitPort(p.x, p.y); ok {
			p.on = t
			return b.takeThing(p)
		}
	case Nothing:
	}
	return nil
}

// panGrip moves the picture.
type panGrip struct{ x, y float64 }

func (g *panGrip) move(b *Board, x, y float64) bool {
	b.camera().Pan(x-g.x, y-g.y)
	b.roamed[b.look] = true
	g.x, g.y = x, y
	return true
}
func (g *panGrip) end(*Board, bool)   {}
func (g *panGrip) show(*Board, *Show) {}

// orbitGrip turns the turntable.
type orbitGrip struct{ x, y float64 }

func (g *orbitGrip) move(b *Board, x, y float64) bool {
	b.camera().Orbit((x-g.x)/b.ratio, (y-g.y)/b.ratio)
	g.x, g.y = x, y
	return true
}
func (g *orbitGrip) end(*Board, bool)   {}
func (g *orbitGrip) show(*Board, *Show) {}

// grabbed is the point of the case that a press took hold of: what is drawn
// there, else the middle of something.
func (b *Board) grabbed(p press, middle mgl64.Vec3) mgl64.Vec3 {
	if at, ok := b.painter.Surface(p.x, p.y); ok {
		return at
	}
	return middle
}
