package board

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// The limits of a camera.
const (
	// leastZoom and mostZoom bound the scale, px per mm: a case of 10 m on a
	// small view, and a tenth of a millimetre seen as a bar.
	leastZoom, mostZoom = 0.02, 200.0
	// steepest is the pitch in degrees at which the turntable stops: straight
	// up or down its yaw would mean nothing.
	steepest = 89.0
	// eyeFar is the eye's distance in diagonals of the case. Nearer, boxes look
	// like wide-angle photographs; farther, the perspective is lost.
	eyeFar = 2.2
	// nearClip is how far toward the eye things are drawn, as part of its distance.
	nearClip = 0.9
	// fitMargin is what Fit leaves free around the scene, as part of the view.
	fitMargin = 0.07
)

// Camera is how a view looks at the case. The zero value is of no use; begin
// with [NewCamera].
type Camera struct {
	Look        Look
	W, H        int        // size of the view, px
	Centre      mgl64.Vec3 // the point of the case in the middle of the view
	Zoom        float64    // px per mm, in perspective at the centre
	Yaw, Pitch  float64    // turntable, degrees: to the right round the case, and up
	Perspective bool       // turntable only
	Eye         float64    // perspective: distance of the eye from the centre, mm
	// Inset is what rulers and the like take of the view, px: left, top, right, bottom.
	Inset [4]int
}

// NewCamera is a camera for a look that shows a case whole.
func NewCamera(look Look, size mgl64.Vec3, w, h int) Camera {
	c := Camera{Look: look, W: w, H: h, Zoom: 1, Yaw: 32, Pitch: 28, Perspective: true}
	if look.Flat() {
		c.Inset = [4]int{rulerWide, 0, 0, rulerHigh}
	}
	c.Eye = eyeOf(mgl64.Vec3{}, size)
	c.FitBox(mgl64.Vec3{}, size)
	return c
}

// Axes gives the unit directions of the view: right and up on the screen, and
// back, toward the viewer.
func (c *Camera) Axes() (right, up, back mgl64.Vec3) {
	switch c.Look {
	case Side:
		return mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{0, 0, 1}
	case Above:
		return mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 0, -1}, mgl64.Vec3{0, 1, 0}
	case Front:
		return mgl64.Vec3{0, 0, -1}, mgl64.Vec3{0, 1, 0}, mgl64.Vec3{1, 0, 0}
	case Turntable:
	}
	sy, cy := math.Sincos(c.Yaw * math.Pi / 180)
	sp, cp := math.Sincos(c.Pitch * math.Pi / 180)
	right = mgl64.Vec3{cy, 0, -sy}
	back = mgl64.Vec3{sy * cp, sp, cy * cp}
	return right, back.Cross(right), back
}

// deep reports whether far things are drawn smaller.
func (c *Camera) deep() bool { return c.Look == Turntable && c.Perspective && c.Eye > 0 }

// middle is the pixel at which the centre is drawn.
func (c *Camera) middle() (x, y float64) {
	return float64(c.W+c.Inset[0]-c.Inset[2]) / 2, float64(c.H+c.Inset[1]-c.Inset[3]) / 2
}

// Project gives the pixel of a point of the case.
func (c *Camera) Project(p mgl64.Vec3) (x, y float64) {
	x, y, _ = c.project(p)
	return x, y
}

// project is Project with the depth that the picture's buffer keeps: larger is
// nearer, and it runs evenly along a straight line on the screen.
func (c *Camera) project(p mgl64.Vec3) (x, y, depth float64) {
	right, up, back := c.Axes()
	d := p.Sub(c.Centre)
	z, s := d.Dot(back), 1.0
	if c.deep() {
		s = c.Eye / (c.Eye - min(z, nearClip*c.Eye))
	}
	mx, my := c.middle()
	return mx + d.Dot(right)*s*c.Zoom, my - d.Dot(up)*s*c.Zoom, z * s
}

// unproject is the point of the case seen at a pixel at a depth of the buffer.
func (c *Camera) unproject(x, y, depth float64) mgl64.Vec3 {
	right, up, back := c.Axes()
	z, s := depth, 1.0
	if c.deep() {
		s = 1 + depth/c.Eye
		z = depth / s
	}
	mx, my := c.middle()
	k := 1 / (s * c.Zoom)
	return c.Centre.Add(right.Mul((x - mx) * k)).Add(up.Mul((my - y) * k)).Add(back.Mul(z))
}

// Ray is the line of sight through a pixel: a point on it and its unit
// direction away from the viewer.
func (c *Camera) Ray(x, y float64) (at, dir mgl64.Vec3) {
	_, _, back := c.Axes()
	at = c.unproject(x, y, 0)
	if !c.deep() {
		return at, back.Mul(-1)
	}
	eye := c.Centre.Add(back.Mul(c.Eye))
	return at, at.Sub(eye).Normalize()
}

// OnPlane gives the point where the line of sight through a pixel meets the
// plane through a point, square to normal. ok is false when it runs along it.
func (c *Camera) OnPlane(x, y float64, through, normal mgl64.Vec3) (p mgl64.Vec3, ok bool) {
	at, dir := c.Ray(x, y)
	across := dir.Dot(normal)
	if math.Abs(across) < edgeOn {
		return mgl64.Vec3{}, false
	}
	return at.Add(dir.Mul(through.Sub(at).Dot(normal) / across)), true
}

// edgeOn is the sine of the angle below which a plane counts as seen from its
// edge: a pixel there would stand for twenty pixels' worth of depth.
const edgeOn = 0.05

// Unproject gives the point seen at a pixel on the look's plane through the
// given point: the plane of the screen for a flat look, the level plane for the
// turntable or, when that is seen from its edge, the upright one that faces
// the viewer most.
func (c *Camera) Unproject(x, y float64, through mgl64.Vec3) mgl64.Vec3 {
	p, ok := c.OnPlane(x, y, through, c.PlaneNormal())
	if !ok {
		return through
	}
	return p
}

// lowest is the sine of the pitch under which the turntable drags in an upright plane.
const lowest = 0.26

// PlaneNormal is the unit axis square to the plane in which things are dragged.
func (c *Camera) PlaneNormal() mgl64.Vec3 {
	_, _, back := c.Axes()
	if c.Look.Flat() {
		return back
	}
	if math.Abs(back[1]) > lowest {
		return mgl64.Vec3{0, 1, 0}
	}
	if math.Abs(back[0]) > math.Abs(back[2]) {
		return mgl64.Vec3{1, 0, 0}
	}
	return mgl64.Vec3{0, 0, 1}
}

// Resize tells the view's size in px; the centre stays in the middle.
func (c *Camera) Resize(w, h int) { c.W, c.H = w, h }

// ZoomAt scales by factor and keeps what is under the pixel where it is.
func (c *Camera) ZoomAt(x, y, factor float64) {
	before := c.unproject(x, y, 0)
	c.Zoom = min(max(c.Zoom*factor, leastZoom), mostZoom)
	c.Centre = c.Centre.Add(before.Sub(c.unproject(x, y, 0)))
}

// Pan moves the picture by pixels.
func (c *Camera) Pan(dx, dy float64) {
	right, up, _ := c.Axes()
	c.Centre = c.Centre.Sub(right.Mul(dx / c.Zoom)).Add(up.Mul(dy / c.Zoom))
}

// orbitSpeed is how many degrees a pixel of dragging turns the turntable.
const orbitSpeed = 0.4

// Orbit turns the turntable by pixels of dragging; the case follows the pointer.
func (c *Camera) Orbit(dx, dy float64) {
	c.Yaw = math.Mod(c.Yaw-dx*orbitSpeed, 360)
	c.Pitch = min(max(c.Pitch+dy*orbitSpeed, -steepest), steepest)
}

// Fit shows the whole scene in a view of w by h pixels.
func (c *Camera) Fit(s *Scene, w, h int) {
	c.Resize(w, h)
	lo, hi := s.Bounds()
	c.Eye = eyeOf(lo, hi)
	c.FitBox(lo, hi)
}

// eyeOf is how far from a scene of this extent the eye stands, mm.
func eyeOf(lo, hi mgl64.Vec3) float64 { return eyeFar * max(hi.Sub(lo).Len(), 1) }

// FitBox shows a box of the case whole, as large as it goes. The eye keeps its
// distance, so that a small thing is not seen from within another.
func (c *Camera) FitBox(lo, hi mgl64.Vec3) {
	c.Centre = lo.Add(hi).Mul(0.5)
	free := 1 - 2*fitMargin
	w := max(float64(c.W-c.Inset[0]-c.Inset[2])*free, 1)
	h := max(float64(c.H-c.Inset[1]-c.Inset[3])*free, 1)
	// In perspective moving the centre changes the spread: a few rounds settle it.
	for range 4 {
		c.Zoom = 1
		x0, y0, x1, y1 := c.spread(lo, hi)
		zoom := min(w/max(x1-x0, 1), h/max(y1-y0, 1))
		mx, my := c.middle()
		c.Zoom = min(max(zoom, leastZoom), mostZoom)
		c.Pan((mx-(x0+x1)/2)*c.Zoom, (my-(y0+y1)/2)*c.Zoom)
	}
}

// spread is the rectangle on the screen around the corners of a box.
func (c *Camera) spread(lo, hi mgl64.Vec3) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for i := range 8 {
		x, y := c.Project(boxCorner(lo, hi, i))
		x0, x1, y0, y1 = min(x0, x), max(x1, x), min(y0, y), max(y1, y)
	}
	return x0, y0, x1, y1
}

// boxCorner is corner i of 8: bit k of i chooses hi along axis k.
func boxCorner(lo, hi mgl64.Vec3, i int) mgl64.Vec3 {
	p := lo
	for k := range 3 {
		if i>>k&1 == 1 {
			p[k] = hi[k]
		}
	}
	return p
}
