package board

import (
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"github.com/go-gl/mathgl/mgl64"
)

// handlePx is how near a corner's handle catches the pointer, px of a plain screen.
const handlePx = 9.0

// path gives the corners of the one chosen run, as they stand in hand; nil when
// no run is chosen or nobody changes runs.
func (b *Board) path() []mgl64.Vec3 {
	if g, ok := b.hand.grip.(*pathGrip); ok {
		return g.corners
	}
	if len(b.selection) != 1 || b.selection[0].Kind != OnRun || b.OnPath == nil {
		return nil
	}
	t, _ := b.scene.Tube(b.selection[0].Run)
	return t.Corners
}

// cornerNear is the inner corner of the chosen run's path at a pixel, −1 for none.
func (b *Board) cornerNear(x, y float64) int {
	path, best, least := b.path(), -1, handlePx*b.ratio
	for i := 1; i < len(path)-1; i++ {
		px, py := b.camera().Project(path[i])
		if d := math.Hypot(px-x, py-y); d < least {
			best, least = i, d
		}
	}
	return best
}

// pathGrip moves corners of a run's path together: one, or the two of a straight.
type pathGrip struct {
	run     string
	before  []mgl64.Vec3
	corners []mgl64.Vec3
	moves   []int
	along   mgl64.Vec3 // a straight does not move along itself; zero for a corner
	at      mgl64.Vec3
	from    mgl64.Vec3
	told    bool
}

func (b *Board) grabPath(p press, at, along mgl64.Vec3, moves ...int) grip {
	path := b.path()
	return &pathGrip{
		run: b.selection[0].Run, before: slices.Clone(path), corners: slices.Clone(path),
		moves: moves, along: along, at: at, from: b.camera().Unproject(p.x, p.y, at),
	}
}

// takeCorner takes hold of a corner's handle; nil when none is there.
func (b *Board) takeCorner(p press) grip {
	i := b.cornerNear(p.x, p.y)
	if i < 0 || p.button != desktop.MouseButtonPrimary {
		return nil
	}
	b.corner = i
	return b.grabPath(p, b.path()[i], mgl64.Vec3{}, i)
}

// takeStraight takes hold of a straight of the chosen run. The first and the
// last stand on their ports and stay.
func (b *Board) takeStraight(p press) grip {
	path := b.path()
	if len(path) == 0 || !b.isChosen(p.on) || p.on.Piece < 0 || p.on.Piece%2 != 0 {
		return nil
	}
	i, at := b.legAt(path, p)
	if i == 0 || i == len(path)-2 {
		b.say("the first and the last straight stand on their ports; add a corner with a double click")
		return nil
	}
	return b.grabPath(p, at, path[i+1].Sub(path[i]).Normalize(), i, i+1)
}

// legAt is the leg of a path that passes nearest to a pixel, and the point of it there.
func (b *Board) legAt(path []mgl64.Vec3, p press) (leg int, at mgl64.Vec3) {
	least := math.Inf(1)
	for i := range len(path) - 1 {
		ax, ay := b.camera().Project(path[i])
		bx, by := b.camera().Project(path[i+1])
		dx, dy := bx-ax, by-ay
		k := min(max(((p.x-ax)*dx+(p.y-ay)*dy)/max(dx*dx+dy*dy, 1e-9), 0), 1)
		if d := math.Hypot(ax+k*dx-p.x, ay+k*dy-p.y); d < least {
			leg, at, least = i, path[i].Add(path[i+1].Sub(path[i]).Mul(k)), d
		}
	}
	return leg, at
}

func (g *pathGrip) move(b *Board, x, y float64) bool {
	normal := b.camera().PlaneNormal()
	by := b.camera().Unproject(x, y, g.at).Sub(g.from)
	by = by.Sub(normal.Mul(by.Dot(normal)))
	by = by.Sub(g.along.Mul(by.Dot(g.along)))
	if b.keys()&fyne.KeyModifierAlt == 0 {
		by = b.toGrid(g.before[g.moves[0]], by)
	}
	next := slices.Clone(g.before)
	for _, i := range g.moves {
		next[i] = g.before[i].Add(by)
	}
	changed := !slices.Equal(next, g.corners) || !g.told
	if changed {
		g.corners, g.told = next, true
		b.OnPath(g.run, inner(next), false)
	}
	b.say(g.run + ": moved " + b.scene.Units.TextUnit(by.Len()))
	return changed
}

// toGrid lengthens or shortens a way so that a point ends on the grid along
// each axis it moves on.
func (b *Board) toGrid(at, by mgl64.Vec3) mgl64.Vec3 {
	step := b.snapStep()
	for k := range 3 {
		if step > 0 && math.Abs(by[k]) > onLine {
			by[k] = math.Round((at[k]+by[k])/step)*step - at[k]
		}
	}
	return by
}

func inner(corners []mgl64.Vec3) []mgl64.Vec3 {
	if len(corners) < 2 {
		return nil
	}
	return slices.Clone(corners[1 : len(corners)-1])
}

func (g *pathGrip) end(b *Board, kept bool) {
	if kept {
		b.OnPath(g.run, inner(g.corners), true)
	} else {
		b.OnPath(g.run, nil, true)
	}
}

func (g *pathGrip) show(*Board, *Show) {}

// addCorner puts a corner into the chosen run's path where a straight was
// clicked twice. It reports whether it did.
func (b *Board) addCorner(p press) bool {
	path := b.path()
	if len(path) == 0 || p.on.Kind != OnRun || !b.isChosen(p.on) {
		return false
	}
	leg, at := b.legAt(path, p)
	b.OnPath(b.selection[0].Run, inner(slices.Insert(slices.Clone(path), leg+1, at)), true)
	b.corner = leg + 1
	return true
}

// dropCorner takes the chosen corner out of the path. It reports whether it did.
func (b *Board) dropCorner() bool {
	path := b.path()
	if b.corner < 1 || b.corner >= len(path)-1 {
		return false
	}
	b.OnPath(b.selection[0].Run, inner(slices.Delete(slices.Clone(path), b.corner, b.corner+1)), true)
	b.corner = -1
	return true
}
