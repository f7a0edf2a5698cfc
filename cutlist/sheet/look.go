package sheet

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist/draw"
)

// Look is a direction from which the machine is drawn, without perspective.
type Look int

// The looks.
const (
	Side     Look = iota // through the open side: x right, y up
	Above                // x right, z down the page
	Front                // z left, y up
	Parallel             // from the right, above and in front at once
)

// looksInOrder lists the looks in the order of the sheets.
var looksInOrder = [...]Look{Side, Above, Front}

// everyLook lists the looks in the order of their files.
var everyLook = [...]Look{Side, Above, Front, Parallel}

// String gives the look's name as printed.
func (k Look) String() string {
	return [...]string{"Through the open side", "From above", "From the front", "From the right, above and in front"}[k]
}

// word is the look's name in a file's.
func (k Look) word() string { return [...]string{"side", "above", "front", "parallel"}[k] }

// axes says which way the machine's axes run on the page.
func (k Look) axes() string {
	return [...]string{"x right, y up", "x right, z down", "z left, y up", "x right, y up, z toward you"}[k]
}

// view turns points of the machine into points on the page.
type view struct {
	right, up, toward mgl64.Vec3 // unit, right handed; toward points at the reader
	scale             float64    // mm on paper for one mm of machine
	zero              draw.Point // where the machine's origin falls
}

func (k Look) view() view {
	v := view{right: mgl64.Vec3{1, 0, 0}, up: mgl64.Vec3{0, 1, 0}, scale: 1}
	switch k {
	case Above:
		v.up = mgl64.Vec3{0, 0, -1}
	case Front:
		v.right = mgl64.Vec3{0, 0, -1}
	case Parallel:
		v.right, v.up = fromTheCorner()
	case Side:
	}
	v.toward = v.right.Cross(v.up)
	return v
}

// How far the parallel view is turned from the side look, degrees: to the right
// round the case, and up.
const (
	turnedRight = 30.0
	turnedUp    = 25.0
)

// fromTheCorner is right and up of the parallel view.
func fromTheCorner() (right, up mgl64.Vec3) {
	s, c := math.Sincos(turnedRight * math.Pi / 180)
	sUp, cUp := math.Sincos(turnedUp * math.Pi / 180)
	return mgl64.Vec3{c, 0, -s}, mgl64.Vec3{-s * sUp, cUp, -c * sUp}
}

// on gives the point of the page.
func (v view) on(p mgl64.Vec3) draw.Point {
	return draw.Point{X: v.zero.X + v.scale*p.Dot(v.right), Y: v.zero.Y - v.scale*p.Dot(v.up)}
}

// noise is rounding of what is drawn: a length in mm, or the sine or cosine of
// a unit direction. Near 1 m one float64 step is 1e-13 mm, and no printer shows
// a thousandth of a millimetre.
const noise = 1e-6

// leastScale is the least scale of a drawing: a machine of no size, or one of a
// kilometre, still has one.
const leastScale = 1e-4

// heading is the unit direction of a step on the page; zero where the step
// comes at the reader.
func heading(step draw.Point) draw.Point {
	l := math.Hypot(step.X, step.Y)
	if l <= noise {
		return draw.Point{}
	}
	return step.Times(1 / l)
}

// depth is how far toward the reader a point stands, mm of machine.
func (v view) depth(p mgl64.Vec3) float64 { return p.Dot(v.toward) }

// frame is an upright box on the page that grows around points.
type frame struct{ lo, hi draw.Point }

func emptyFrame() frame {
	return frame{draw.Point{X: math.Inf(1), Y: math.Inf(1)}, draw.Point{X: math.Inf(-1), Y: math.Inf(-1)}}
}

func (f frame) with(points ...draw.Point) frame {
	for _, p := range points {
		f.lo = draw.Point{X: math.Min(f.lo.X, p.X), Y: math.Min(f.lo.Y, p.Y)}
		f.hi = draw.Point{X: math.Max(f.hi.X, p.X), Y: math.Max(f.hi.Y, p.Y)}
	}
	return f
}

func (f frame) w() float64 { return f.hi.X - f.lo.X }
func (f frame) h() float64 { return f.hi.Y - f.lo.Y }

// grown is the frame with this much more on every side.
func (f frame) grown(by float64) frame {
	d := draw.Point{X: by, Y: by}
	return frame{f.lo.Minus(d), f.hi.Plus(d)}
}

// meets reports whether two frames overlap.
func (f frame) meets(g frame) bool {
	return f.lo.X < g.hi.X && g.lo.X < f.hi.X && f.lo.Y < g.hi.Y && g.lo.Y < f.hi.Y
}

// holds reports whether a frame lies inside.
func (f frame) holds(g frame) bool {
	return f.lo.X <= g.lo.X && g.hi.X <= f.hi.X && f.lo.Y <= g.lo.Y && g.hi.Y <= f.hi.Y
}

// has reports whether a point lies inside.
func (f frame) has(p draw.Point) bool {
	return f.lo.X <= p.X && p.X <= f.hi.X && f.lo.Y <= p.Y && p.Y <= f.hi.Y
}

func (f frame) middle() draw.Point { return f.lo.Plus(f.hi).Times(0.5) }

// scales are the scales of drawings on paper, so that a ruler and a head can
// work with them: 1 : n.
var scales = [...]float64{1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100}

// roundScale is the largest of the scales that is at most fit, and how it is
// written; below the smallest it is fit itself, "not to scale".
func roundScale(fit float64) (scale float64, said string) {
	for _, n := range scales {
		if 1/n <= fit {
			return 1 / n, "scale 1 : " + trimmed(n)
		}
	}
	return fit, "not to scale"
}
