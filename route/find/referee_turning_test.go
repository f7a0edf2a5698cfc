package find_test

import (
	"fmt"

	"tubewright/route"
)

// turnLook is how finely a fitting is turned to see what it runs into, degrees.
const turnLook = 2

// turning checks that a fitting in one piece can be screwed in: what of it lies
// off the axis it turns about goes all the way round and enters neither a part,
// nor the case, nor what it does not stand on of its chain.
func (j *judged) turning() {
	for _, end := range []struct {
		port   route.PortRef
		bodies []route.Body
		laid   chainLaid
	}{{j.run.From, j.Start.Bodies, j.start}, {j.run.To, j.End.Bodies, j.end}} {
		at := portStand(j.plan, end.port)
		for i, b := range end.bodies {
			if (b.Fitting.Kind == route.Elbow || b.Fitting.Kind == route.Offset) && !b.Fitting.Rotary {
				j.goesRound(fmt.Sprintf("fitting %d on %s", i+1, end.port), at, b.Fitting, end.laid.bodies[:max(0, i-1)])
			}
			at = at.Mul4(step(b.Fitting, b.Roll))
		}
	}
}

func (j *judged) goesRound(name string, at stand, f route.Fitting, below [][]stick) {
	solids := obstacles(j.plan)
	for roll := 0; roll < 360; roll += turnLook {
		sticks := sticksOf(at, f, float64(roll))
		for _, p := range sticks[len(sticks)-1].points() {
			for _, o := range solids {
				if !o.farther(p, 1) {
					j.gap(name+" going round", o.part, o.distance(p), 0)
				}
			}
			j.gap(name+" going round", "the case", inCase(j.plan, p), 0)
			for _, body := range below {
				for _, s := range body {
					j.gap(name+" going round", "its own chain", s.distance(p), 0)
				}
			}
		}
	}
}
