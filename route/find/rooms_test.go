package find

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// TestRoomsHoldTheirShapes: whatever comes nearer to a shape than asked for is in
// its rooms, and what is in them is at most a little farther away than that.
func TestRoomsHoldTheirShapes(t *testing.T) {
	const seed, keep = 31, 12.0
	r := rand.New(rand.NewPCG(seed, 0))
	// past a flat end the rooms are round: that much farther away may be in them
	slack := math.Hypot(12, flatEnd) - flatEnd + roomSlack
	inside := 0
	for range 300 {
		s := anyLimb(r)
		rooms := roomsOf(nil, worldAxes(), s, keep)
		for range 200 {
			p := v(r.Float64()*160-80, r.Float64()*160-80, r.Float64()*160-80)
			gap := clear.Between(s, clear.Rod{From: p, To: p}).Distance
			switch in := anyRoomHolds(rooms, p); {
			case in && gap > keep+slack:
				t.Fatalf("seed %d: %v is in the rooms of %#v though %.3f mm away", seed, p, s, gap)
			case !in && gap < keep-1e-6:
				t.Fatalf("seed %d: %v is not in the rooms of %#v though %.3f mm away", seed, p, s, gap)
			case in:
				inside++
			}
		}
	}
	if inside < 1000 {
		t.Errorf("only %d places were in a room", inside)
	}
}

// anyLimb is a rod, a collar or an arc, in half of all cases along the axes.
func anyLimb(r *rand.Rand) clear.Shape {
	turn := mgl64.Ident3()
	if r.IntN(2) == 0 {
		turn = mgl64.AnglesToQuat(6*r.Float64(), 6*r.Float64(), 6*r.Float64(), mgl64.XYZ).Mat4().Mat3()
	}
	at := v(r.Float64()*40-20, r.Float64()*40-20, r.Float64()*40-20)
	to := at.Add(turn.Col(0).Mul(15 + 60*r.Float64()))
	switch r.IntN(3) {
	case 0:
		return clear.Rod{From: at, To: to, Radius: 8}
	case 1:
		return clear.Cylinder{From: at, To: to, Radius: 12}
	}
	return clear.Arc{Centre: at, U: turn.Col(0), V: turn.Col(1), Bend: 32, Turn: 10 + 140*r.Float64(), Radius: 8}
}

func anyRoomHolds(rooms []wall, p vec) bool {
	for i := range rooms {
		w, gap := &rooms[i], 0.0
		for k := range p {
			gap = math.Hypot(gap, max(w.lo[k]-p[k], p[k]-w.hi[k], 0))
		}
		if gap < w.keep {
			return true
		}
	}
	return false
}
