package board

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
)

// pxNoise is what rounding may move a projected point by, px.
const pxNoise = 1e-6

func cameras(w, h int) []Camera {
	var list []Camera
	for _, l := range Looks() {
		list = append(list, NewCamera(l, v3(430, 200, 400), w, h))
	}
	parallel := NewCamera(Turntable, v3(430, 200, 400), w, h)
	parallel.Perspective = false
	low := NewCamera(Turntable, v3(430, 200, 400), w, h)
	low.Yaw, low.Pitch = -140, 5
	return append(list, parallel, low)
}

func TestAxesAreRightHandedAndMatchTheLooksNames(t *testing.T) {
	for _, c := range cameras(900, 650) {
		r, u, b := c.Axes()
		if d := r.Cross(u).Sub(b).Len(); d > 1e-12 {
			t.Errorf("%v: right × up is off back by %g", c.Look, d)
		}
	}
	tests := []struct {
		look Look
		move mgl64.Vec3
		x, y float64 // sign of the move on the screen
	}{
		{Side, v3(1, 0, 0), 1, 0},
		{Side, v3(0, 1, 0), 0, -1},
		{Above, v3(1, 0, 0), 1, 0},
		{Above, v3(0, 0, 1), 0, 1}, // z runs down the screen
		{Front, v3(0, 0, 1), -1, 0},
		{Front, v3(0, 1, 0), 0, -1},
	}
	for _, tt := range tests {
		c := NewCamera(tt.look, v3(430, 200, 400), 900, 650)
		x0, y0 := c.Project(v3(100, 100, 100))
		x1, y1 := c.Project(v3(100, 100, 100).Add(tt.move))
		if got := [2]float64{(x1 - x0) / c.Zoom, (y1 - y0) / c.Zoom}; math.Abs(got[0]-tt.x) > 1e-9 || math.Abs(got[1]-tt.y) > 1e-9 {
			t.Errorf("%v: a move by %v goes by %v on the screen, want %g %g", tt.look, tt.move, got, tt.x, tt.y)
		}
	}
}

func TestProjectAndUnprojectAreInverse(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for _, c := range cameras(900, 650) {
		for range 200 {
			p := v3(rnd.Float64()*430, rnd.Float64()*200, rnd.Float64()*400)
			x, y, depth := c.project(p)
			if d := c.unproject(x, y, depth).Sub(p).Len(); d > 1e-9 {
				t.Fatalf("%v: %v comes back %g mm off", c.Look, p, d)
			}
			if d := c.Unproject(x, y, p).Sub(p).Len(); d > 1e-8 {
				t.Fatalf("%v: on the plane through itself %v comes back %g mm off", c.Look, p, d)
			}
		}
	}
}

func TestUnprojectStaysInThePlane(t *testing.T) {
	for _, c := range cameras(900, 650) {
		through := v3(100, 50, 80)
		n := c.PlaneNormal()
		p := c.Unproject(300, 400, through)
		if d := p.Sub(through).Dot(n); math.Abs(d) > 1e-9 {
			t.Errorf("%v: %g mm out of the plane", c.Look, d)
		}
		if x, y := c.Project(p); math.Abs(x-300) > pxNoise || math.Abs(y-400) > pxNoise {
			t.Errorf("%v: the point is seen at %g, %g instead of 300, 400", c.Look, x, y)
		}
	}
}

func TestZoomKeepsThePointUnderThePointer(t *testing.T) {
	for _, c := range cameras(900, 650) {
		before := c.unproject(612, 140, 0)
		zoom := c.Zoom
		c.ZoomAt(612, 140, 1.7)
		if x, y := c.Project(before); math.Abs(x-612) > pxNoise || math.Abs(y-140) > pxNoise {
			t.Errorf("%v: the point under the pointer went to %g, %g", c.Look, x, y)
		}
		if math.Abs(c.Zoom/zoom-1.7) > 1e-12 {
			t.Errorf("%v: zoom is %g times as large, want 1.7", c.Look, c.Zoom/zoom)
		}
	}
}

func TestZoomStopsAtItsLimits(t *testing.T) {
	c := NewCamera(Side, v3(430, 200, 400), 900, 650)
	c.ZoomAt(10, 10, 1e9)
	if c.Zoom != mostZoom {
		t.Errorf("zoom %g, want %g", c.Zoom, mostZoom)
	}
	c.ZoomAt(10, 10, 1e-12)
	if c.Zoom != leastZoom {
		t.Errorf("zoom %g, want %g", c.Zoom, leastZoom)
	}
}

func TestPanMovesThePicture(t *testing.T) {
	for _, c := range cameras(900, 650) {
		p := c.Centre // in perspective only the centre's plane moves by whole pixels
		x0, y0 := c.Project(p)
		c.Pan(30, -12)
		if x, y := c.Project(p); math.Abs(x-x0-30) > pxNoise || math.Abs(y-y0+12) > pxNoise {
			t.Errorf("%v: the picture moved by %g, %g instead of 30, -12", c.Look, x-x0, y-y0)
		}
	}
}

func TestOrbitFollowsThePointer(t *testing.T) {
	c := NewCamera(Turntable, v3(430, 200, 400), 900, 650)
	front := c.Centre
	_, _, back := c.Axes()
	front = front.Add(back.Mul(100)) // a point between the centre and the viewer
	x0, y0 := c.Project(front)
	c.Orbit(20, 10)
	if x, y := c.Project(front); x <= x0 || y <= y0 {
		t.Errorf("after dragging right and down the near side went from %g, %g to %g, %g", x0, y0, x, y)
	}
	c.Orbit(0, 1e6)
	if c.Pitch != steepest {
		t.Errorf("pitch %g, want it to stop at %g", c.Pitch, steepest)
	}
}

func TestFitShowsEverything(t *testing.T) {
	s := demoScene(t)
	for _, size := range [][2]int{{900, 650}, {320, 700}, {1200, 200}} {
		for _, c := range cameras(size[0], size[1]) {
			c.Fit(s, size[0], size[1])
			for _, v := range s.mesh.at {
				x, y := c.Project(v.wide())
				if x < float64(c.Inset[0]) || y < 0 || x > float64(c.W) || y > float64(c.H-c.Inset[3]) {
					t.Fatalf("%v at %v: %v is drawn at %.1f, %.1f", c.Look, size, v, x, y)
				}
			}
		}
	}
}

func TestPlaneSeenFromItsEdgeIsRefused(t *testing.T) {
	c := NewCamera(Side, v3(430, 200, 400), 900, 650)
	if p, ok := c.OnPlane(100, 100, v3(0, 50, 0), v3(0, 1, 0)); ok {
		t.Errorf("a level plane seen from the side gives %v", p)
	}
}
