package find_test

import (
	"fmt"
	"math/rand/v2"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// hallPlan is a case with ports in rows on its left and its right wall, joined
// crosswise by chance, and blocks between them: more than most people build, and
// whether all its runs can go together is not known.
func hallPlan(seed uint64, runs, parts int, size mgl64.Vec3) route.Plan {
	r := rand.New(rand.NewPCG(seed, 13))
	plan := route.Defaults()
	plan.Name, plan.Tube, plan.Case = "hall", refereeTube.Name, size
	plan.Tubes, plan.Fittings = []route.Tube{refereeTube}, refereeFittings
	for i := range runs {
		at := mgl64.Vec3{25, 35 + float64(i%8)*55, 35 + float64(i/8)*55}
		plan.Parts = append(plan.Parts, plated(fmt.Sprintf("a%02d", i), at, mgl64.Vec3{1, 0, 0}))
		at[0] = size[0] - 25
		plan.Parts = append(plan.Parts, plated(fmt.Sprintf("b%02d", i), at, mgl64.Vec3{-1, 0, 0}))
	}
	for i, j := range r.Perm(runs) {
		plan.Runs = append(plan.Runs, route.Run{
			Name: fmt.Sprintf("run-%02d", i),
			From: route.PortRef{Part: fmt.Sprintf("a%02d", i), Port: "p"}, To: route.PortRef{Part: fmt.Sprintf("b%02d", j), Port: "p"},
		})
	}
	for n := len(plan.Parts); n < parts; n++ {
		half := mgl64.Vec3{between(r, 3, 20), between(r, 3, 20), between(r, 3, 20)}
		at := mgl64.Vec3{between(r, 110, size[0]-110), between(r, 20, size[1]-20), between(r, 20, size[2]-20)}
		plan.Parts = append(plan.Parts, route.Part{
			Name: fmt.Sprintf("block-%03d", n), At: at, Solids: []route.Solid{{Box: true, From: half.Mul(-1), To: half}},
		})
	}
	return plan
}
