package check_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/clear"
	"tubewright/route/find"
)

// crowded is a board with memory 54 high, so that its tops are at z 256, and a
// radiator before it whose own far face is at z.
func crowded(s *scene, z float64, stack route.Stack) {
	s.plan.Case = vec{430, 400, 400}
	s.add(route.Part{Name: "board", At: vec{0, 130, 200}, Solids: append(box(vec{0, 0, 0}, vec{50, 200, 2}), box(vec{20, 20, 2}, vec{50, 150, 56})...)})
	s.add(route.Part{Name: "front", At: vec{0, 130, z}, Stack: stack})
}

// Memory's tops are at 200 + 56 = 256. A radiator 30 thick with fans of 25 on its
// far side and its own far face at z 274.8 reaches down to 249.8: 6.2 too deep.
func TestARadiatorWithFansBeforeTallMemory(t *testing.T) {
	stack := route.Stack{Fan: 120, Fans: 1, Thickness: 30, FanThickness: 25, Sides: route.FarSide}
	tests := []struct {
		name  string
		z     float64
		sides route.Sides
		want  float64
	}{
		{"fans on the far side", 274.8, route.FarSide, 6.2},
		{"on both sides", 274.8, route.BothSides, 6.2},
		{"on the near side only", 274.8, route.NearSide, 0},
		{"on the near side, the radiator itself too deep", 249.8, route.NearSide, 6.2},
		{"a near miss", 281, route.FarSide, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := sound()
			stack.Sides = tt.sides
			crowded(s, tt.z, stack)
			if tt.want == 0 {
				for _, f := range s.findings(t) {
					if f.Code == check.PartHitsPart {
						t.Errorf("found%s", told([]check.Finding{f}))
					}
				}
				return
			}
			f := only(t, s, check.PartHitsPart)
			if math.Abs(f.Measure+tt.want) > 1e-9 || f.Fix != "Move front 6.2 mm in +z." || f.Move.By.Sub(vec{0, 0, tt.want}).Len() > 1e-9 || !f.Move.Free {
				t.Errorf("found%s with the move %+v", told([]check.Finding{f}), f.Move)
			}
			if f.Least != nil {
				t.Errorf("a shorter move %+v than straight out", f.Least)
			}
		})
	}
}

// A block turned 45° about z with its edge 3 into a face: square to the face is
// 3; along the axis it takes no more, though its far edge is much farther.
func TestTheWayOutOfATurnedPart(t *testing.T) {
	s := sound()
	s.add(route.Part{Name: "a", Solids: box(vec{300, 20, 200}, vec{340, 60, 240})})
	half := 10 * math.Sqrt2 // of the diagonal of a block of 20
	s.add(route.Part{Name: "b", At: vec{340 - 3 + half, 40, 220}, Turn: vec{0, 0, 45}, Solids: box(vec{-10, -10, -10}, vec{10, 10, 10})})
	f := only(t, s, check.PartHitsPart)
	if math.Abs(f.Measure+3) > 1e-6 || f.Move.Part != "b" || f.Move.By.Sub(vec{3, 0, 0}).Len() > 1e-6 {
		t.Errorf("found%s with the move %+v, want 3 in +x", told([]check.Finding{f}), f.Move)
	}
}

// Two blocks turned 45°, a corner of one against the face of the other: square
// to the face is d, along an axis d·√2.
func TestTheShortestMoveOfTurnedParts(t *testing.T) {
	s := sound()
	turned := box(vec{-10, -10, -10}, vec{10, 10, 10})
	away := (20 - 4) / math.Sqrt2 // along each axis: the faces overlap by 4
	s.add(route.Part{Name: "a", At: vec{300, 40, 220}, Turn: vec{0, 0, 45}, Solids: turned})
	s.add(route.Part{Name: "b", At: vec{300 + away, 40 + away, 220}, Turn: vec{0, 0, 45}, Solids: turned})
	f := only(t, s, check.PartHitsPart)
	if math.Abs(f.Move.By.Len()-4*math.Sqrt2) > 1e-6 {
		t.Errorf("along an axis it takes %v, want 4·√2", f.Move.By)
	}
	if f.Least == nil || f.Least.By.Sub(vec{4 / math.Sqrt2, 4 / math.Sqrt2, 0}).Len() > 1e-6 {
		t.Errorf("the shortest move is %+v, want 4 at 45°", f.Least)
	}
}

func anyPart(r *rand.Rand, name string) route.Part {
	p := route.Part{Name: name, At: vec{200 + 40*r.Float64(), 150 + 40*r.Float64(), 200 + 40*r.Float64()}}
	if r.IntN(2) == 0 {
		p.Turn = vec{360 * r.Float64(), 360 * r.Float64(), 360 * r.Float64()}
	}
	for range 1 + r.IntN(3) {
		from := vec{30 * r.Float64(), 30 * r.Float64(), 30 * r.Float64()}
		size := vec{5 + 30*r.Float64(), 5 + 30*r.Float64(), 5 + 30*r.Float64()}
		if r.IntN(3) == 0 {
			p.Solids = append(p.Solids, route.Solid{From: from, To: from.Add(size), Radius: 3 + 10*r.Float64()})
			continue
		}
		p.Solids = append(p.Solids, box(from, from.Add(size))...)
	}
	return p
}

// overlapOf is the deepest overlap of a part, moved, with another, mm.
func overlapOf(moved, still route.Placed, by vec) (worst float64) {
	for _, a := range moved.Solids {
		for _, b := range still.Solids {
			worst = max(worst, -clear.Between(clear.Moved(a, by), b).Distance)
		}
	}
	return worst
}

// Moving by what is told parts the two, whichever way it goes; by 1 % and a
// tenth less along the same axis, or by less along any other, they still overlap.
func TestMovesPartAndNothingShorterAlongAnAxisDoes(t *testing.T) {
	met := 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 3))
		plan := route.Defaults()
		plan.Parts = []route.Part{anyPart(r, "a"), anyPart(r, "b")}
		a, b := plan.Place(plan.Parts[0]), plan.Place(plan.Parts[1])
		for _, f := range check.Findings(plan, find.Solution{}) {
			if f.Code != check.PartHitsPart {
				continue
			}
			met++
			moved, still := a, b
			if f.Move.Part == "b" {
				moved, still = b, a
			}
			for _, m := range []*check.Move{f.Move, f.Least} {
				if m == nil {
					continue
				}
				if m.Part != moved.Part.Name {
					moved, still = still, moved
				}
				if deep := overlapOf(moved, still, m.By); deep > check.PartSlack+1e-6 {
					t.Errorf("seed %d: moved by %+v they overlap by %v", seed, m, deep)
				}
				if m.By.Len() > f.Move.By.Len()+1e-9 {
					t.Errorf("seed %d: the shortest move %+v is longer than %+v", seed, m, f.Move)
				}
			}
			for axis := range 3 {
				for _, sign := range []float64{-1, 1} {
					for part := 0.04; part < 0.99; part += 0.05 {
						var by vec
						by[axis] = sign * max(0, part*f.Move.By.Len()-0.1)
						if deep := overlapOf(a, b, by); deep <= check.PartSlack-1e-6 {
							t.Errorf("seed %d: a moved by %v is free, told was %v", seed, by, f.Move.By)
						}
					}
				}
			}
		}
	}
	if met < 50 {
		t.Errorf("only %d pairs overlapped", met)
	}
}

// A plan turned by a right angle has moves of the same length.
func TestMovesTurnWithThePlan(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 3))
		plan := route.Defaults()
		plan.Parts = []route.Part{anyPart(r, "a"), anyPart(r, "b")}
		turned := plan.Clone()
		quarter := route.Turned(vec{0, 0, 90})
		for i := range turned.Parts {
			p := &turned.Parts[i]
			if p.Turn != (vec{}) {
				p.Turn = vec{}
				plan.Parts[i].Turn = vec{}
			}
			p.At, p.Turn = quarter.Mul3x1(p.At), vec{0, 0, 90}
		}
		f, g := check.Findings(plan, find.Solution{}), check.Findings(turned, find.Solution{})
		if len(f) != len(g) {
			t.Fatalf("seed %d: %d findings, turned %d", seed, len(f), len(g))
		}
		for i := range f {
			if f[i].Move != nil && math.Abs(f[i].Move.By.Len()-g[i].Move.By.Len()) > 1e-6 {
				t.Errorf("seed %d: move %v, turned %v", seed, f[i].Move.By, g[i].Move.By)
			}
		}
	}
}
