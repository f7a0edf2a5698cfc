package board

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

const (
	// facingEach is how far the facings of two ports may be from opposite, as
	// the cosine of the angle: a tenth of a degree.
	facingEach = -0.9999985
	// onLine is how near a port must be to a line to stand on it, mm: rounding
	// of a drag, far below what a saw can cut.
	onLine = 1e-6
	// leastApart is how far apart two ports must be for a tube between them, mm.
	leastApart = 1.0
)

// portLine is a port of the dragged part and another that looks at it.
type portLine struct {
	from, to   route.PortRef
	at, target mgl64.Vec3 // where the two are when the drag begins
	dir        mgl64.Vec3 // the way the dragged port faces
	normal     mgl64.Vec3 // square to the plane of the drag
}

// portLines lists the pairs a straight tube could join, in the scene's order.
func (b *Board) portLines(g *partGrip, normal mgl64.Vec3) []portLine {
	part, _ := b.scene.Part(g.part)
	home := g.origin.Sub(part.Origin) // the scene may already have moved the part
	var lines []portLine
	for _, p := range b.scene.Ports {
		if p.Ref.Part != g.part || !square(p.Frame.Dir.Dot(normal)) {
			continue
		}
		for _, q := range b.scene.Ports {
			if q.Ref.Part != g.part && p.Frame.Dir.Dot(q.Frame.Dir) <= facingEach && b.mayJoin(p, q) {
				lines = append(lines, portLine{
					from: p.Ref, to: q.Ref, at: p.Frame.At.Add(home), target: q.Frame.At,
					dir: p.Frame.Dir, normal: normal,
				})
			}
		}
	}
	return lines
}

// square reports whether a cosine belongs to a direction in the plane or right
// across it; ports that look askew out of the plane make no line in it.
func square(cos float64) bool { return math.Abs(cos) < 1e-3 || math.Abs(cos) > 1-1e-6 }

// mayJoin reports whether a straight tube between two ports is of any use: a
// run joins them already, or one may.
func (b *Board) mayJoin(p, q ScenePort) bool {
	if p.Used() || q.Used() {
		return p.Run == q.Run
	}
	return b.whyNot(p.Ref, q.Ref) == ""
}

// whyNot is the owner's rule for joining two ports, or the board's own.
func (b *Board) whyNot(from, to route.PortRef) string {
	if b.CanJoin != nil {
		return b.CanJoin(from, to)
	}
	return b.scene.WhyNot(from, to)
}

// miss is from the dragged port's line to the other port when the part has
// gone by; apart is how far ahead the other one is.
func (l portLine) miss(by mgl64.Vec3) (aside mgl64.Vec3, apart float64) {
	d := l.target.Sub(l.at.Add(by))
	apart = d.Dot(l.dir)
	return d.Sub(l.dir.Mul(apart)), apart
}

// off is how far the part must still go, in the plane, to stand in line.
func (l portLine) off(by mgl64.Vec3) mgl64.Vec3 {
	aside, _ := l.miss(by)
	return aside.Sub(l.normal.Mul(aside.Dot(l.normal)))
}

// across is what the plane leaves of the miss, mm.
func (l portLine) across(by mgl64.Vec3) float64 {
	aside, _ := l.miss(by)
	return math.Abs(aside.Dot(l.normal))
}

// locks reports whether standing in line fixes a part along axis k.
func (l portLine) locks(k int) bool {
	return math.Abs(l.dir[k]) < 0.5 && math.Abs(l.normal[k]) < 0.5
}

// nearestLine is the line nearest to a part that has gone by, within reach and
// free along what is not locked yet. True lines go before those that only seem
// so in this look; ties go to the first in the scene's order.
func nearestLine(lines []portLine, by mgl64.Vec3, reach float64, locked [3]bool) (best portLine, ok bool) {
	least, seeming := 0.0, false
	for _, l := range lines {
		off := l.off(by)
		_, apart := l.miss(by)
		if apart < leastApart || off.Len() > reach || l.fights(locked) {
			continue
		}
		s := l.across(by) > onLine
		if !ok || seeming && !s || s == seeming && off.Len() < least-onLine {
			best, ok, least, seeming = l, true, off.Len(), s
		}
	}
	return best, ok
}

// fights reports whether the line would move a part along an axis that is
// locked, or has nothing left to fix.
func (l portLine) fights(locked [3]bool) bool {
	free := false
	for k := range 3 {
		if l.locks(k) {
			if locked[k] {
				return true
			}
			free = true
		}
	}
	return !free
}

// guidesOn lists the lines on which a part that has gone by stands.
func guidesOn(lines []portLine, by mgl64.Vec3) []Guide {
	var guides []Guide
	for _, l := range lines {
		if _, apart := l.miss(by); apart >= leastApart && l.off(by).Len() <= onLine {
			g := Guide{From: l.from, To: l.to, A: l.at.Add(by), B: l.target}
			if g.Miss = l.across(by); g.Miss <= onLine {
				g.Miss = 0
			}
			guides = append(guides, g)
		}
	}
	return guides
}
