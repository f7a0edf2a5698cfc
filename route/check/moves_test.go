package check_test

import (
	"testing"

	"tubewright/route"
	"tubewright/route/check"
)

var moveTests = []struct {
	name   string
	change func(*scene)
	code   check.Code
	move   check.Move
	source string
}{
	{
		"two parts", gpu(20, 66.2), check.PartHitsPart,
		check.Move{Part: "gpu", By: vec{-6.2, 0, 0}, Free: true},
		"66.2 − 60",
	},
	{
		"a wall behind", gpu(3, 66.2), check.PartHitsPart,
		check.Move{Part: "pump", By: vec{6.2, 0, 0}, Free: true},
		"gpu would stand at −3.2",
	},
	{
		"past a wall", gpu(400, 436.2), check.PartOutsideCase,
		check.Move{Part: "gpu", By: vec{-6.2, 0, 0}, Free: true},
		"436.2 − 430",
	},
	{
		"past a wall, another part in the way back",
		func(s *scene) {
			gpu(400, 436.2)(s)
			s.add(route.Part{Name: "drive", Solids: box(vec{390, 80, 30}, vec{400, 120, 170})})
		},
		check.PartOutsideCase,
		check.Move{Part: "gpu", By: vec{-6.2, 0, 0}},
		"393.8 is in drive",
	},
	{
		"in a tube's way", beam(95.2), check.TubeHitsPart,
		check.Move{Part: "beam", By: vec{0, -7.2, 0}, Free: true},
		"95.2 − 92, and 4 clear besides",
	},
	{
		"in a tube's way, on the floor", func(s *scene) {
			beam(95.2)(s)
			s.part("beam").Solids[0].From[1] = 5
		},
		check.TubeHitsPart,
		check.Move{Part: "beam", By: vec{0, -7.2, 0}},
		"it would stand 2.2 below the floor",
	},
}

func TestTheWayOutInNumbers(t *testing.T) {
	for _, tt := range moveTests {
		t.Run(tt.name, func(t *testing.T) {
			s := sound()
			tt.change(s)
			f := only(t, s, tt.code)
			if f.Move == nil || f.Move.Part != tt.move.Part || f.Move.Free != tt.move.Free || f.Move.By.Sub(tt.move.By).Len() > 1e-6 {
				t.Errorf("move %+v, want %+v: %s", f.Move, tt.move, tt.source)
			}
		})
	}
}

// only gives the one finding of a code.
func only(t *testing.T, s *scene, code check.Code) check.Finding {
	t.Helper()
	var found []check.Finding
	list := s.findings(t)
	for _, f := range list {
		if f.Code == code {
			found = append(found, f)
		}
	}
	if len(found) != 1 {
		t.Fatalf("%d findings of %s, want one:%s", len(found), code, told(list))
	}
	return found[0]
}

// Where the way out is not to move a part there is no move.
func TestNoMoveWhereNoneIsTold(t *testing.T) {
	s := sound()
	gpu(0, 450)(s)
	if f := only(t, s, check.PartOutsideCase); f.Move != nil {
		t.Errorf("move %+v of a part longer than the case", f.Move)
	}
	s = sound()
	s.part("pump").Solids = append(s.part("pump").Solids, box(vec{130, 80, 30}, vec{135, 94, 70})...)
	if f := only(t, s, check.TubeHitsPart); f.Move != nil {
		t.Errorf("move %+v of the part that carries the tube", f.Move)
	}
}

// Past two walls by the same the first is told, however the last bit falls.
func TestATieBetweenWallsGoesToTheFirst(t *testing.T) {
	for _, noise := range []float64{-1e-9, 0, 1e-9} {
		s := sound()
		s.add(route.Part{Name: "drive", Solids: box(vec{400, 280, 200}, vec{435, 305 + noise, 300})})
		if f := only(t, s, check.PartOutsideCase); f.What != "Part drive stands 5.0 mm past the right wall of the case." {
			t.Errorf("noise %v: %s", noise, f.What)
		}
	}
}
