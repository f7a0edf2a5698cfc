package sheet

import (
	"math"
	"slices"

	"tubewright/cutlist/draw"
)

// Sizes of a template on paper, mm.
const (
	templateAir = 9.0  // left around a template for its marks and their writing
	overlap     = 12.0 // of two sheets of one template
)

// tile is one sheet of a template: what of it is seen.
type tile struct {
	col, row int
	window   frame
	core     frame // the part that is this tile's alone
}

// tiling is a template turned and laid over sheets.
type tiling struct {
	template template
	tiles    []tile // row by row, the empty ones left out
	cols     int
	rows     int
}

// laidOut turns a template so that it takes the fewest sheets with this room,
// and of those the least height; the first such way in a fixed order. End A is
// to the left of B, or above it.
func laidOut(t template, room draw.Point) tiling {
	t.lay(0)
	best := t.bestAngle(room)
	t.lay(best)
	// A hundredth of a millimetre: level is level whatever the last bit says.
	a, b := t.pieces[0].start, t.pieces[len(t.pieces)-1].end
	if b.X < a.X-0.01 || math.Abs(b.X-a.X) <= 0.01 && b.Y < a.Y {
		t.lay(best + 180)
	}
	l := tiled(t.skin(), room)
	l.template = t
	return l
}

// bestAngle is how to turn a template as laid out at 0. Its outline alone tells
// whether it goes on one sheet; how many it takes when it does not, its skin.
func (t template) bestAngle(room draw.Point) float64 {
	skin := t.skin()
	outline := hull(skin)
	best, least := 0.0, math.Inf(1)
	for _, angle := range angles(outline) {
		turned := turnedAll(outline, angle)
		l := tiled(turned, room)
		if n := l.cols * l.rows; n > 1 && least < 2*perSheet {
			continue
		} else if n > 1 {
			l = tiled(turnedAll(skin, angle), room)
		}
		cost := float64(len(l.tiles))*perSheet + math.Ceil(emptyFrame().with(turned...).h()-noise)
		if cost < least {
			best, least = angle, cost
		}
	}
	return best
}

// perSheet is what a sheet counts against millimetres of height: more than any
// height.
const perSheet = 1e6

// turnedAll is points turned about the origin, degrees clockwise on the page.
func turnedAll(points []draw.Point, degrees float64) []draw.Point {
	x, out := compass(degrees), make([]draw.Point, len(points))
	for i, p := range points {
		out[i] = draw.Point{X: p.X*x.X - p.Y*x.Y, Y: p.X*x.Y + p.Y*x.X}
	}
	return out
}

// angles is the ways to lay a template that are tried: its first straight level
// or upright, each side of its outline level or upright, and every 15 degrees.
func angles(outline []draw.Point) []float64 {
	all := []float64{0, 90}
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		level := -math.Atan2(b.Y-a.Y, b.X-a.X) * 180 / math.Pi
		// To a thousandth of a degree: the last bits of an outline differ by machine.
		level = math.Round(level*1000) / 1000
		all = append(all, level, level+90)
	}
	for a := 15.0; a < 180; a += 15 {
		all = append(all, a)
	}
	return all
}

// tiled lays the skin of a template over sheets.
func tiled(skin []draw.Point, room draw.Point) tiling {
	box := emptyFrame().with(skin...).grown(templateAir)
	l := tiling{cols: sheets(box.w(), room.X), rows: sheets(box.h(), room.Y)}
	if l.cols*l.rows == 1 {
		l.tiles = []tile{{window: box, core: box}}
		return l
	}
	step := draw.Point{X: room.X - overlap, Y: room.Y - overlap}
	corner := box.middle().Minus(draw.Point{X: float64(l.cols)*step.X + overlap, Y: float64(l.rows)*step.Y + overlap}.Times(0.5))
	for row := range l.rows {
		for col := range l.cols {
			lo := corner.Plus(draw.Point{X: float64(col) * step.X, Y: float64(row) * step.Y})
			one := tile{col: col, row: row, window: frame{lo, lo.Plus(room)}}
			one.core = one.window.grown(-overlap / 2)
			if slices.ContainsFunc(skin, one.core.has) {
				l.tiles = append(l.tiles, one)
			}
		}
	}
	return l
}

// sheets is how many sheets a length takes.
func sheets(length, room float64) int {
	return max(1, int(math.Ceil((length-overlap)/(room-overlap)-noise)))
}

// joint is a cross that stands on two sheets, so that one can be laid on the
// other. Both call it by one letter.
type joint struct {
	at     draw.Point
	letter string
	tiles  [2]int
}

// jointArm is half of a cross, mm.
const jointArm = 4.0

// joints is two crosses for each two sheets that lie side by side, as far apart
// as the tube lets them be.
func (l tiling) joints() (all []joint) {
	busy := l.template.crowded()
	for i, a := range l.tiles {
		for k := i + 1; k < len(l.tiles); k++ {
			b := l.tiles[k]
			if abs(a.col-b.col)+abs(a.row-b.row) != 1 {
				continue
			}
			both := frame{
				draw.Point{X: math.Max(a.window.lo.X, b.window.lo.X), Y: math.Max(a.window.lo.Y, b.window.lo.Y)},
				draw.Point{X: math.Min(a.window.hi.X, b.window.hi.X), Y: math.Min(a.window.hi.Y, b.window.hi.Y)},
			}
			for _, at := range crosses(both, busy) {
				all = append(all, joint{at, jointName(len(all)), [2]int{i, k}})
			}
		}
	}
	return all
}

func abs(n int) int { return max(n, -n) }

// jointName is a, b, ... z, aa, ...
func jointName(n int) string {
	if n >= 26 {
		return jointName(n/26-1) + jointName(n%26)
	}
	return string(rune('a' + n))
}

// crowded is frames around the tube that a cross should keep off.
func (t template) crowded() (busy []frame) {
	for _, p := range t.skin() {
		busy = append(busy, frame{p, p}.grown(jointArm+tickReach))
	}
	return busy
}

// crosses is two places in the middle of a strip, each as near to one of its
// ends as it can be off the tube; over the tube when it must.
func crosses(strip frame, busy []frame) [2]draw.Point {
	along := draw.Point{X: 1}
	length := strip.w()
	if strip.h() > strip.w() {
		along, length = draw.Point{Y: 1}, strip.h()
	}
	const step = 4.0
	most := length/2 - overlap
	var out [2]draw.Point
	for i, sign := range []float64{-1, 1} {
		out[i] = strip.middle().Plus(along.Times(sign * most))
		for off := most; off > length/8; off -= step {
			at := strip.middle().Plus(along.Times(sign * off))
			if !slices.ContainsFunc(busy, func(f frame) bool { return f.has(at) }) {
				out[i] = at
				break
			}
		}
	}
	return out
}
