package board

import (
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"github.com/go-gl/mathgl/mgl64"
)

// partGrip moves a part in the plane of the look.
type partGrip struct {
	part   string
	at     mgl64.Vec3 // where it was taken hold of
	origin mgl64.Vec3 // where the part's own origin was
	from   mgl64.Vec3 // the pointer's place on the plane at first
	by     mgl64.Vec3
	told   bool
	guides []Guide
}

// takePart takes hold of a part; nil when there is none or nobody moves it.
func (b *Board) takePart(name string, p press) grip {
	part, ok := b.scene.Part(name)
	if !ok || b.OnMove == nil {
		return nil
	}
	if !b.isChosen(PartTarget(name)) {
		b.choose(PartTarget(name))
	}
	at := b.grabbed(p, part.Lo.Add(part.Hi).Mul(0.5))
	return &partGrip{part: name, at: at, origin: part.Origin, from: b.camera().Unproject(p.x, p.y, at)}
}

func (b *Board) isChosen(t Target) bool {
	s := Show{Selection: b.selection}
	return s.chosen(t)
}

func (g *partGrip) move(b *Board, x, y float64) bool {
	normal := b.camera().PlaneNormal()
	raw := b.camera().Unproject(x, y, g.at).Sub(g.from)
	raw = raw.Sub(normal.Mul(raw.Dot(normal)))
	by, guides := raw, []Guide(nil)
	if b.keys()&fyne.KeyModifierAlt == 0 {
		by, guides = b.snap(g, raw, normal)
	}
	changed := by != g.by || !g.told || !slices.Equal(guides, g.guides)
	g.guides = guides
	if by != g.by || !g.told {
		g.by, g.told = by, true
		b.OnMove(g.part, by, false)
	}
	b.say(b.moveWords(g))
	return changed
}

func (g *partGrip) end(b *Board, kept bool) {
	if !kept {
		g.by = mgl64.Vec3{}
	}
	b.hand.settle = Shift{Part: g.part, By: g.origin.Add(g.by)}
	b.OnMove(g.part, g.by, true)
}

func (g *partGrip) show(_ *Board, s *Show) { s.Guides = g.guides }

// shift is how far the part in hand, or the one just put down, is drawn from
// where the scene still has it.
func (b *Board) shift() Shift {
	want := b.hand.settle
	if g, ok := b.hand.grip.(*partGrip); ok {
		want = Shift{g.part, g.origin.Add(g.by)}
	}
	part, ok := b.scene.Part(want.Part)
	if !ok {
		return Shift{}
	}
	return Shift{want.Part, want.By.Sub(part.Origin)}
}

// moveWords tells where a part in hand stands and how far it has come.
func (b *Board) moveWords(g *partGrip) string {
	u, at := b.scene.Units, g.origin.Add(g.by)
	return g.part + " at " + u.Text(at[0]) + ", " + u.Text(at[1]) + ", " + u.Text(at[2]) +
		" " + string(unitsOf(u)) + ", moved " + u.TextUnit(g.by.Len())
}

// snapPx is how near a line of ports must be to draw a part to it, px of a plain screen.
const snapPx = 7.0

// snap draws a part's way to lines of ports and, along the axes they leave
// free, to the grid.
func (b *Board) snap(g *partGrip, raw, normal mgl64.Vec3) (mgl64.Vec3, []Guide) {
	reach := snapPx * b.ratio / b.camera().Zoom
	by, locked := raw, [3]bool{}
	lines := b.portLines(g, normal)
	for range 2 {
		best, ok := nearestLine(lines, by, reach, locked)
		if !ok {
			break
		}
		by = by.Add(best.off(by))
		for k := range locked {
			locked[k] = locked[k] || best.locks(k)
		}
	}
	step := b.snapStep()
	for k := range 3 {
		if !locked[k] && math.Abs(normal[k]) < 0.5 && step > 0 {
			by[k] = math.Round((g.origin[k]+by[k])/step)*step - g.origin[k]
		}
	}
	return by, guidesOn(lines, by)
}
