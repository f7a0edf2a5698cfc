package find

import (
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// turnedPlan is a plan of parts that are nothing but ports, all turned by one
// rotation about the origin, with no case around it.
func turnedPlan(p route.Plan, turn mgl64.Mat3) route.Plan {
	p = p.Clone()
	p.Case = mgl64.Vec3{}
	for i := range p.Parts {
		p.Parts[i].At = turn.Mul3x1(p.Parts[i].At)
		for j := range p.Parts[i].Ports {
			q := &p.Parts[i].Ports[j]
			q.Facing = turn.Mul3x1(q.Facing)
		}
	}
	return p
}

func anyTurn(rng *rand.Rand) mgl64.Mat3 {
	axis, _ := unit(v(rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()))
	return mgl64.QuatRotate(rng.Float64()*6.28, axis).Mat4().Mat3()
}

func onlyStraight(p route.Plan) route.Plan {
	p.Runs[0].Way = route.Straight
	return p
}

// TestTurnedPlansGiveTheSameTube: where nothing stands in the way, a plan turned
// as a whole has the same best way.
func TestTurnedPlansGiveTheSameTube(t *testing.T) {
	plans := []struct {
		name string
		plan route.Plan
	}{
		{"straight", between(v(100, 100, 100), v(1, 0, 0), v(300, 100, 100), v(-1, 0, 0))},
		{"one bend", worked()},
		{"offset bend", between(v(100, 100, 100), v(1, 0, 0), v(400, 160, 120), v(-1, 0, 0))},
		{"two square bends", between(v(100, 100, 100), v(1, 0, 0), v(120, 250, 100), v(1, 0, 0))},
		{"two bends", between(v(300, 300, 300), v(1, 0.3, 0.2), v(600, 500, 310), v(-0.2, 0.5, 0.7))},
		{"two offsets", onlyStraight(withExtras(between(v(100, 100, 100), v(1, 0, 0), v(300, 120, 100), v(-1, 0, 0))))},
	}
	for _, c := range plans {
		want := chosen(t, turnedPlan(c.plan, mgl64.Ident3()))
		for seed := range uint64(25) {
			turn := anyTurn(rand.New(rand.NewPCG(seed, 0)))
			got := chosen(t, turnedPlan(c.plan, turn))
			if got.Name != want.Name || !near(got.Formed.Developed, want.Formed.Developed, 0.01) {
				t.Fatalf("%s, seed %d: %q %.4f turned, %q %.4f as it stands", c.name, seed, got.Name, got.Formed.Developed, want.Name, want.Formed.Developed)
			}
			for i, corner := range want.Formed.Corners {
				if i < 2 && turn.Mul3x1(corner).Sub(got.Formed.Corners[i]).Len() > 0.01 && c.name != "two offsets" {
					t.Errorf("%s, seed %d: corner %d did not turn with the plan", c.name, seed, i)
				}
			}
		}
	}
}

// TestPartsTurnedBySquareTurns: a whole plan turned by right angles, its
// obstacle with it, keeps its best way.
func TestPartsTurnedBySquareTurns(t *testing.T) {
	plan := between(v(100, 100, 100), v(1, 0, 0), v(400, 110, 300), v(-1, 0, 0), box("wall", v(200, 0, 0), v(220, 300, 250)))
	plan.Case = mgl64.Vec3{}
	want := chosen(t, plan)
	for _, angles := range []mgl64.Vec3{v(90, 0, 0), v(0, 90, 0), v(0, 0, 90), v(180, 90, 0), v(90, 90, 90), v(0, 270, 180)} {
		turned := plan.Clone()
		m := route.Turned(angles)
		for i := range turned.Parts {
			turned.Parts[i].At = m.Mul3x1(turned.Parts[i].At)
			turned.Parts[i].Turn = angles
		}
		got := chosen(t, turned)
		if got.Name != want.Name || !near(got.Formed.Developed, want.Formed.Developed, 0.01) {
			t.Errorf("turned by %v: %q %.3f, as it stands %q %.3f", angles, got.Name, got.Formed.Developed, want.Name, want.Formed.Developed)
		}
	}
}
