package board

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route/clear"
)

// volume is what the triangles of a closed surface enclose, mm³, after the
// divergence theorem; triangles that turn the wrong way take from it.
func volume(m *mesh) float64 {
	v := 0.0
	for _, t := range m.tris {
		v += m.at[t[0]].wide().Dot(m.at[t[1]].wide().Cross(m.at[t[2]].wide())) / 6
	}
	return v
}

// polygon is the share of a circle's area that a regular polygon of n corners covers.
func polygon(n float64) float64 { return math.Sin(2*math.Pi/n) * n / (2 * math.Pi) }

func TestMeshesEncloseTheirVolume(t *testing.T) {
	turned := mgl64.Rotate3DZ(0.3).Mul3(mgl64.Rotate3DX(1.1))
	along := v3(1, 2, 2).Mul(1.0 / 3)
	tests := []struct {
		name   string
		make   func(*mesh)
		want   float64
		within float64 // part of want
		source string
	}{
		{"box", func(m *mesh) { m.box(v3(5, 6, 7), turned, v3(10, 20, 30)) }, 20 * 40 * 60, 1e-5, "2·10 × 2·20 × 2·30"},
		{"cylinder", func(m *mesh) { m.cylinder(v3(1, 2, 3), v3(1, 2, 3).Add(along.Mul(90)), 30) }, math.Pi * 900 * 90 * polygon(wideSides), 1e-4, "πr²h, less what 48 flat sides leave"},
		{"slim cylinder", func(m *mesh) { m.cylinder(v3(0, 0, 0), v3(0, 0, 50), 8) }, math.Pi * 64 * 50 * polygon(slimSides), 1e-4, "πr²h, less what 24 flat sides leave"},
		{"ball", func(m *mesh) { m.rod(v3(9, 9, 9), v3(9, 9, 9), 10) }, 4.0 / 3 * math.Pi * 1000, 0.03, "4/3·πr³, flat sides leave a little"},
		{"rod", func(m *mesh) { m.rod(v3(0, 0, 0), v3(0, 0, 40), 10) }, math.Pi*100*40 + 4.0/3*math.Pi*1000, 0.03, "a cylinder and a ball"},
	}
	for _, tt := range tests {
		var m mesh
		tt.make(&m)
		if got := volume(&m); math.Abs(got-tt.want) > tt.within*tt.want {
			t.Errorf("%s encloses %.1f mm³, want %.1f (%s)", tt.name, got, tt.want, tt.source)
		}
	}
}

// TestBendsVolume uses Pappus: a bend's volume is its cross-section times the
// way of its centre. The sweep is open at both ends, so it is closed by fans.
func TestBendsVolume(t *testing.T) {
	f, err := bends.Form(bends.Tube{OD: 16, ID: 12, Radius: 32}, bends.Path{Corners: []mgl64.Vec3{v3(0, 0, 0), v3(100, 0, 0), v3(100, 90, 0)}})
	if err != nil {
		t.Fatal(err)
	}
	var m mesh
	arc := f.Pieces()[1]
	n := sidesFor(8)
	m.sweep(&hose{ref: v3(0, 0, 1)}, arc, 8)
	first, last := int32(0), int32(len(m.at)-n)
	for i := range int32(n) {
		j := (i + 1) % int32(n)
		a, b := m.vertex(arc.From, v3(0, 0, 0)), m.vertex(arc.To, v3(0, 0, 0))
		m.tri(a, first+j, first+i)
		m.tri(b, last+i, last+j)
	}
	want := math.Pi * 64 * polygon(slimSides) * 32 * math.Pi / 2
	if got := volume(&m); math.Abs(got-want) > 0.005*want {
		t.Errorf("the bend encloses %.1f mm³, want %.1f (r² π · R π/2)", got, want)
	}
}

func TestNormalsPointOutOfConvexShapes(t *testing.T) {
	for _, shape := range []clear.Shape{
		clear.Box{Axes: mgl64.Ident3(), Half: v3(4, 5, 6)},
		clear.Cylinder{From: v3(0, -20, 0), To: v3(0, 20, 0), Radius: 9},
		clear.Rod{From: v3(-20, 0, 0), To: v3(20, 0, 0), Radius: 9},
	} {
		var m mesh
		m.shape(shape)
		for i, n := range m.normal {
			if out := n.wide().Dot(m.at[i].wide()); out <= 0 || math.Abs(n.wide().Len()-1) > 1e-5 {
				t.Fatalf("%T: the normal %v at %v", shape, n, m.at[i])
			}
		}
	}
}

// TestEdgesLieInTheirTriangles says that an edge lies in the planes of the two
// triangles it names.
func TestEdgesLieInTheirTriangles(t *testing.T) {
	m := &demoScene(t).mesh
	for i, e := range m.edges {
		for _, tri := range [2]int32{e.f, e.g} {
			for _, end := range [2]int32{e.a, e.b} {
				if d := fromPlane(m, m.tris[tri], m.at[end].wide()); d > 0.01 {
					t.Fatalf("edge %d ends at %v, %.3f mm off the plane of its triangle", i, m.at[end], d)
				}
			}
		}
	}
}

// fromPlane is how far a point is off the plane of a triangle, mm.
func fromPlane(m *mesh, tri [3]int32, p mgl64.Vec3) float64 {
	a, b, c := m.at[tri[0]].wide(), m.at[tri[1]].wide(), m.at[tri[2]].wide()
	return math.Abs(b.Sub(a).Cross(c.Sub(a)).Normalize().Dot(p.Sub(a)))
}

func TestShapesWithoutExtentAreLeftOut(t *testing.T) {
	var m mesh
	m.cylinder(v3(1, 1, 1), v3(1, 1, 1), 5)
	m.cylinder(v3(1, 1, 1), v3(2, 1, 1), 0)
	m.rod(v3(1, 1, 1), v3(2, 1, 1), 0)
	if len(m.at) != 0 {
		t.Errorf("%d vertices for nothing", len(m.at))
	}
}
