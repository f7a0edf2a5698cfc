package find

import (
	"context"
	"math"
	"testing"

	"tubewright/bends"
	"tubewright/route"
)

func TestUntidyOfOneRun(t *testing.T) {
	h := math.Sqrt2 / 2
	for _, c := range []struct {
		name   string
		path   []vec
		want   float64
		source string
	}{
		{"square", []vec{v(0, 0, 0), v(100, 0, 0), v(100, 100, 0), v(200, 100, 0)}, 0, "all legs along axes, one plane"},
		{"square, out of plane", []vec{v(0, 0, 0), v(100, 0, 0), v(100, 100, 0), v(100, 100, 100)}, 0, "a quarter turn between the planes"},
		{"a 45 between", []vec{v(0, 0, 0), v(100, 0, 0), v(150, 50, 0), v(250, 50, 0)}, 0.5, "one leg half-way between two axes"},
		{"a slant between", []vec{v(0, 0, 0), v(100, 0, 0), v(150, 20, 0), v(250, 20, 0)}, 1, "one leg along nothing"},
		{"a slant and a twist", []vec{v(0, 0, 0), v(100, 0, 0), v(150, 50, 50), v(150, 50, 150)}, 2, "the leg (1,1,1) is slant; the planes' normals (0,−1,1) and (1,−1,0) make 60°"},
		{"along its port", []vec{v(0, 0, 0), v(100*h, 100*h, 0), v(100*h, 100*h, 100), v(0, 0, 100)}, 0, "the first port faces aslant, the leg between is along z, all in one plane"},
	} {
		if got := untidyOf(c.path, c.path[1].Sub(c.path[0]).Normalize(), v(0, 0, 1)); got != c.want {
			t.Errorf("%s: %v untidy, want %v (%s)", c.name, got, c.want, c.source)
		}
	}
}

// legs is a tube of 16 mm with these corners.
func legs(corners ...vec) *bends.Formed {
	return &bends.Formed{Tube: bends.Tube{OD: 16}, Corners: corners}
}

func TestUntidyBetweenRuns(t *testing.T) {
	a := legs(v(0, 0, 0), v(200, 0, 0), v(200, 200, 0))
	for _, c := range []struct {
		name   string
		b      *bends.Formed
		want   float64
		source string
	}{
		{"one plane", legs(v(0, 40, 0), v(160, 40, 0), v(160, 200, 0)), 0, "40 mm beside it all the way"},
		{"another distance", legs(v(0, 40, 0), v(150, 40, 0), v(150, 200, 0)), 1, "40 mm, then 50"},
		{"almost one plane", legs(v(0, 40, 5), v(160, 40, 5), v(160, 200, 5)), 2, "both legs 5 mm out of the plane"},
		{"well out of the plane", legs(v(0, 40, 20), v(160, 40, 20), v(160, 200, 20)), 0, "20 mm out is meant so: more than 0.75·16"},
		{"far away", legs(v(0, 40, 105), v(160, 40, 105)), 0, "105 mm: farther than 4·16"},
		{"level too shortly", legs(v(180, 40, 5), v(400, 40, 5)), 0, "level over 20 mm of 25"},
		{"crossing", legs(v(100, -50, 20), v(100, 50, 20)), 0, "not parallel to the first leg, 100 mm from the second"},
	} {
		if got := untidyBetween(a, c.b); got != c.want {
			t.Errorf("%s: %v untidy, want %v (%s)", c.name, got, c.want, c.source)
		}
		if got := untidyBetween(c.b, a); got != c.want {
			t.Errorf("%s, seen from the other: %v untidy, want %v", c.name, got, c.want)
		}
	}
}

// two is a plan of two runs side by side, each in two square bends, whose
// crossings may stand anywhere along the way.
func twoBeside(tidy float64) route.Plan {
	plan := between(v(100, 100, 100), v(1, 0, 0), v(500, 300, 100), v(-1, 0, 0))
	plan.Parts = append(plan.Parts, hole("c", v(100, 140, 100), v(1, 0, 0)), hole("d", v(460, 340, 100), v(-1, 0, 0)))
	plan.Runs = append(plan.Runs, route.Run{Name: "run-2", From: route.PortRef{Part: "c", Port: "p"}, To: route.PortRef{Part: "d", Port: "p"}})
	plan.Weigh.Tidy = tidy
	return plan
}

// TestTidyPairsKeepTheirDistance: the two ports of each run stand 40 mm apart.
// With tidy the crossings of both runs do too, at no more tube.
func TestTidyPairsKeepTheirDistance(t *testing.T) {
	loose, tidy := waysOfAll(t, twoBeside(0)), waysOfAll(t, twoBeside(20))
	before, after := untidyBetween(&loose[0].Formed, &loose[1].Formed), untidyBetween(&tidy[0].Formed, &tidy[1].Formed)
	t.Logf("untidy between them: %v before, %v after; corners %v and %v, then %v and %v", before, after,
		loose[0].Formed.Corners, loose[1].Formed.Corners, tidy[0].Formed.Corners, tidy[1].Formed.Corners)
	if before == 0 || after != 0 {
		t.Errorf("untidy between them: %v without tidy, %v with it; want more than 0, then 0", before, after)
	}
	for i := range tidy {
		if more := tidy[i].Formed.Developed - loose[i].Formed.Developed; more > 20*before {
			t.Errorf("%q is %.1f mm longer for its looks", tidy[i].Run, more)
		}
	}
}

func waysOfAll(t *testing.T, plan route.Plan) (list []Way) {
	t.Helper()
	sol, err := Solve(context.Background(), plan)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sol.Runs {
		w, ok := s.Way()
		if !ok || s.Problem != nil {
			t.Fatalf("run %q: way %v, problem %v", s.Run.Name, ok, s.Problem)
		}
		list = append(list, w)
	}
	return list
}
