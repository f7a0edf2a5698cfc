package bends_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"tubewright/bends"
)

// drawTable draws a tube of one to eight bends whose turns are 5 to 150 degrees.
func drawTable(t *rapid.T) bends.Table {
	between := func(lo, hi float64, name string) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	table := bends.Table{Last: between(26, 200, "last")}
	for i := range rapid.IntRange(1, 8).Draw(t, "bends") {
		least, roll := plastic.StraightBetween, 0.0
		if i == 0 {
			least = plastic.StraightEnd
		} else {
			roll = between(-179.9, 180, "roll")
		}
		table.Rows = append(table.Rows, bends.Row{
			Length: between(least, 200, "length"), Roll: roll,
			Turn: between(5, 150, "turn"), Radius: between(28, 80, "radius"),
		})
	}
	return table
}

// drawMotion draws a rigid motion.
func drawMotion(t *rapid.T) motion {
	angle := rapid.Float64Range(-math.Pi, math.Pi)
	turn := mgl64.Rotate3DX(angle.Draw(t, "about x")).
		Mul3(mgl64.Rotate3DY(angle.Draw(t, "about y"))).Mul3(mgl64.Rotate3DZ(angle.Draw(t, "about z")))
	far := rapid.Float64Range(-500, 500)
	return motion{turn, mgl64.Vec3{far.Draw(t, "x"), far.Draw(t, "y"), far.Draw(t, "z")}}
}

// motion turns about the origin and then shifts.
type motion struct {
	turn  mgl64.Mat3
	shift mgl64.Vec3
}

func (m motion) of(points []mgl64.Vec3) []mgl64.Vec3 {
	moved := make([]mgl64.Vec3, len(points))
	for i, p := range points {
		moved[i] = m.turn.Mul3x1(p).Add(m.shift)
	}
	return moved
}

func (m motion) back() motion {
	return motion{m.turn.Transpose(), m.turn.Transpose().Mul3x1(m.shift).Mul(-1)}
}

// standing is the motion that takes a path from its home place (from the origin
// along +x, first turn toward +y) to where its first three corners stand. It
// never mirrors.
func standing(corners []mgl64.Vec3) motion {
	x := corners[1].Sub(corners[0]).Normalize()
	out := corners[2].Sub(corners[1])
	y := out.Sub(x.Mul(out.Dot(x))).Normalize()
	return motion{mgl64.Mat3FromCols(x, y, x.Cross(y)), corners[0]}
}

func formTable(t *rapid.T, table bends.Table, m motion) bends.Formed {
	path := table.Path()
	path.Corners = m.of(path.Corners)
	f, err := bends.Form(plastic, path)
	if err != nil {
		t.Fatalf("Form(%v): %v", path, err)
	}
	return f
}

func TestTableAndCornersAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := drawTable(t)
		f := formTable(t, table, drawMotion(t))
		got := f.Table()
		for i, row := range table.Rows {
			g := got.Rows[i]
			if off(g.Length, row.Length) || off(g.Turn, row.Turn) || off(g.Roll, row.Roll) || g.Radius != row.Radius {
				t.Fatalf("row %d came back as %v, want %v", i+1, g, row)
			}
		}
		if off(got.Last, table.Last) || off(f.Developed, table.Developed()) {
			t.Fatalf("came back with %v last of %v, want %v of %v", got.Last, f.Developed, table.Last, table.Developed())
		}
		sameCorners(t, standing(f.Corners).of(bends.Corners(got)), f.Corners)
		sameCorners(t, bends.Corners(got), standing(f.Corners).back().of(f.Corners))
	})
}

// Only a length, and of each bend where it starts, its turn, its roll and its
// radius: enough to get the corners back.
func TestMarksAndRollsGiveTheCorners(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := formTable(t, drawTable(t), drawMotion(t))
		marks := make([]bends.Bend, len(f.Bends))
		for i, b := range f.Bends {
			marks[i] = bends.Bend{Start: b.Start, Turn: b.Turn, Roll: b.Roll, Radius: b.Radius}
		}
		sameCorners(t, standing(f.Corners).of(bends.Corners(bends.Marked(f.Developed, marks))), f.Corners)
	})
}

func off(got, want float64) bool { return !(math.Abs(got-want) <= near) }

func sameCorners(t *rapid.T, got, want []mgl64.Vec3) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%d corners, want %d", len(got), len(want))
	}
	for i := range got {
		if !(got[i].Sub(want[i]).Len() <= near) {
			t.Fatalf("corner %d is %v, want %v", i+1, got[i], want[i])
		}
	}
}

// A roll of 180 must stay one after any motion: −180 would wrap the tube the
// other way round.
func TestRollsStayInRange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := drawTable(t)
		for i := range table.Rows {
			table.Rows[i].Roll = rapid.SampledFrom([]float64{0, 180, -180, 540, 90, -90}).Draw(t, "roll")
		}
		f := formTable(t, table, drawMotion(t))
		for i, b := range f.Bends {
			if b.Roll <= -180 || b.Roll > 180 || (b.Roll != 0 && math.Abs(b.Roll) < 1) {
				t.Fatalf("bend %d rolls %v", i+1, b.Roll)
			}
		}
	})
}
