package mesh_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/cutlist/mesh"
	"tubewright/route/clear"
)

type vec = mgl64.Vec3

// circle is how much of a circle's area its 48 flat sides hold: (n/2π) sin(2π/n).
const circle = 48 / (2 * math.Pi) * 0.13052619222005157

func near(t *testing.T, what string, got, want, part float64) {
	t.Helper()
	if math.Abs(got-want) > part*math.Abs(want) {
		t.Errorf("%s is %.6g, want %.6g within %g %%", what, got, want, part*100)
	}
}

func TestVolumesOfShapes(t *testing.T) {
	turned := mgl64.Rotate3DZ(0.4).Mul3(mgl64.Rotate3DX(1.1))
	tests := []struct {
		name  string
		shape clear.Shape
		want  float64
		part  float64
	}{
		{"block", clear.Box{Centre: vec{5, -3, 100}, Axes: turned, Half: vec{10, 20, 30}}, 48000, 1e-9},
		{"cylinder", clear.Cylinder{From: vec{1, 2, 3}, To: vec{1, 2, 53}, Radius: 10}, circle * math.Pi * 100 * 50, 1e-9},
		{"slanted cylinder", clear.Cylinder{From: vec{}, To: vec{30, 40, 0}, Radius: 10}, circle * math.Pi * 100 * 50, 1e-9},
		{"ball", clear.Rod{From: vec{7, 7, 7}, To: vec{7, 7, 7}, Radius: 10}, 4.0 / 3 * math.Pi * 1000, 0.015},
		{"rod", clear.Rod{From: vec{}, To: vec{0, 50, 0}, Radius: 10}, math.Pi*100*50 + 4.0/3*math.Pi*1000, 0.01},
		// Pappus: the area times the way of its centre, and two half balls.
		{"arc", clear.Arc{Centre: vec{1, 1, 1}, U: vec{1, 0, 0}, V: vec{0, 0, 1}, Bend: 32, Turn: 90, Radius: 8}, math.Pi*64*32*math.Pi/2 + 4.0/3*math.Pi*512, 0.01},
	}
	for _, tt := range tests {
		m := mesh.Solid(tt.shape)
		near(t, "volume of the "+tt.name, m.Volume(), tt.want, tt.part)
		wellMade(t, tt.name, m)
	}
	if m := mesh.Solid(clear.Cylinder{Radius: 3}); len(m.Faces) != 0 {
		t.Errorf("a cylinder without length has %d faces, want none", len(m.Faces))
	}
}

// wellMade checks that a surface is closed (each edge is met once each way) and
// that normals are unit and look out.
func wellMade(t *testing.T, name string, m mesh.Mesh) {
	t.Helper()
	spot := func(p vec) [3]int64 {
		var s [3]int64
		for i := range s {
			s[i] = int64(math.Round(p[i] * 1e5))
		}
		return s
	}
	edges := map[[2][3]int64]int{}
	for _, f := range m.Faces {
		a, b, c := m.Points[f[0]], m.Points[f[1]], m.Points[f[2]]
		face := b.Sub(a).Cross(c.Sub(a))
		for i, k := range f {
			from, to := spot(m.Points[k]), spot(m.Points[f[(i+1)%3]])
			if from != to { // a pole's triangles have a side without length
				edges[[2][3]int64{from, to}]++
			}
			n := m.Normals[k]
			if math.Abs(n.Len()-1) > 1e-9 {
				t.Fatalf("%s: a normal is %v long", name, n.Len())
			}
			if face.Len() > 1e-6 && face.Normalize().Dot(n) < 0.5 {
				t.Fatalf("%s: the face at %v looks %v, its normal %v", name, a, face.Normalize(), n)
			}
		}
	}
	for e, count := range edges {
		if back := edges[[2][3]int64{e[1], e[0]}]; back != count {
			t.Fatalf("%s: the edge %v is met %d times one way and %d the other", name, e, count, back)
		}
	}
}

func form(t *testing.T, corners ...vec) bends.Formed {
	t.Helper()
	f, err := bends.Form(bends.Tube{OD: 16, ID: 12, Radius: 32, LeastRadius: 28, StraightBetween: 20, StraightEnd: 26}, bends.Path{Corners: corners})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// tubes is a straight, a bend, two bends in different planes, and one that
// leaves the axes.
func tubes(t *testing.T) map[string]bends.Formed {
	return map[string]bends.Formed{
		"straight":   form(t, vec{0, 0, 0}, vec{200, 0, 0}),
		"one bend":   form(t, vec{106, 100, 50}, vec{250, 100, 50}, vec{250, 244, 50}),
		"two planes": form(t, vec{0, 0, 0}, vec{100, 0, 0}, vec{100, 120, 0}, vec{100, 120, 90}),
		"slanting":   form(t, vec{0, 0, 0}, vec{100, 10, 20}, vec{170, 120, 60}, vec{300, 150, -40}),
	}
}

func TestPipeHoldsWhatAPipeHolds(t *testing.T) {
	for name, f := range tubes(t) {
		e := bends.Ends{SeatGap: [2]float64{0.5, 0.75}}
		m := mesh.Pipe(f, e)
		near(t, "volume of "+name, m.Volume(), math.Pi/4*(16*16-12*12)*f.Cut(e, 0).Aim, 0.01)
		wellMade(t, name, m)
	}
}

// Each point of the surface stands off the true centreline by half a diameter,
// or by less on the rings that close the ends.
func TestPipeFollowsTheBends(t *testing.T) {
	for name, f := range tubes(t) {
		m := mesh.Pipe(f, bends.Ends{SeatGap: [2]float64{0.5, 0.5}})
		var centreline []vec
		for s := 0.0; s <= f.Developed; s += 0.25 {
			at, _ := f.At(s)
			centreline = append(centreline, at)
		}
		for i := 0; i < len(m.Points); i += 5 { // 5 and 48 share no divisor: every side has its turn
			p, best := m.Points[i], math.Inf(1)
			for _, at := range centreline {
				best = math.Min(best, at.Sub(p).Len())
			}
			// Places 0.25 mm apart: the nearest is at most 0.125 mm along from the true foot.
			if math.Abs(best-8) > 0.002 && math.Abs(best-6) > 0.002 {
				t.Fatalf("%s: the point %v is %.4f mm off the centreline, want 8 or 6", name, p, best)
			}
		}
	}
}

func TestPipeOfNothing(t *testing.T) {
	f := form(t, vec{0, 0, 0}, vec{60, 0, 0})
	if m := mesh.Pipe(f, bends.Ends{SeatGap: [2]float64{30, 30}}); len(m.Faces) != 0 {
		t.Errorf("a tube that the seat gaps use up has %d faces", len(m.Faces))
	}
	f.Tube.ID = 0
	m := mesh.Pipe(f, bends.Ends{})
	near(t, "volume of a solid rod", m.Volume(), circle*math.Pi*64*60, 1e-9)
	wellMade(t, "solid rod", m)
}
