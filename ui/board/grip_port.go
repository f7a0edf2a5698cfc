package board

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// portGrip is a port in hand, on its way to another.
type portGrip struct {
	from   ScenePort
	greyed []route.PortRef
	to     route.PortRef
	tip    mgl64.Vec3
	why    string
	joins  bool
}

// takePort takes hold of a free port and greys those it cannot be joined to.
func (b *Board) takePort(ref route.PortRef) grip {
	p, _ := b.scene.Port(ref)
	g := &portGrip{from: p, tip: p.Frame.At}
	for _, q := range b.scene.Ports {
		if q.Ref != ref && b.whyNot(ref, q.Ref) != "" {
			g.greyed = append(g.greyed, q.Ref)
		}
	}
	return g
}

func (g *portGrip) move(b *Board, x, y float64) bool {
	g.why, g.joins = "", false
	g.tip = b.camera().Unproject(x, y, g.from.Frame.At)
	text := "from " + g.from.Ref.String()
	if t, ok := b.painter.HitPort(x, y); ok && t.Port != g.from.Ref {
		q, _ := b.scene.Port(t.Port)
		g.to, g.tip, g.joins = t.Port, q.Frame.At, true
		g.why = b.whyNot(g.from.Ref, t.Port)
		text += " to " + t.Port.String()
	}
	if g.why != "" {
		text += ": " + g.why
	}
	b.say(text)
	return true
}

func (g *portGrip) end(b *Board, kept bool) {
	if kept && g.joins && g.why == "" {
		b.OnJoin(g.from.Ref, g.to)
	}
}

func (g *portGrip) show(_ *Board, s *Show) {
	s.Greyed = g.greyed
	s.Rubber = &Rubber{From: g.from.Frame.At, To: g.tip, Why: g.why, Joins: g.joins}
}
