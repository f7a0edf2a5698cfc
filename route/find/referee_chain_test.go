package find_test

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// The referee works everything out a second time, by slow and plain means: 4×4
// matrices for where things stand, points on surfaces for what they run into.
// It takes from the program only the plan, the chains' fittings and rolls, and
// the corners and radii of the tubes found.

// stand is a place and three axes as one matrix: x goes on, rolls count from y.
type stand = mgl64.Mat4

func rad(degrees float64) float64 { return degrees * math.Pi / 180 }

// partMatrix is a part's own frame in the case: turned about x, then y, then z.
func partMatrix(p route.Part) stand {
	return mgl64.Translate3D(p.At[0], p.At[1], p.At[2]).
		Mul4(mgl64.HomogRotate3DZ(rad(p.Turn[2]))).
		Mul4(mgl64.HomogRotate3DY(rad(p.Turn[1]))).
		Mul4(mgl64.HomogRotate3DX(rad(p.Turn[0])))
}

// portMatrix is a port in its part: x out of it, y the part of up square to it.
func portMatrix(q route.Port) stand {
	x := q.Facing.Normalize()
	up := mgl64.Vec3{0, 1, 0}
	if math.Abs(x[1]) > 0.9 {
		up = mgl64.Vec3{0, 0, 1}
	}
	z := x.Cross(up).Normalize()
	y := z.Cross(x)
	return mgl64.Mat4FromCols(x.Vec4(0), y.Vec4(0), z.Vec4(0), q.At.Vec4(1))
}

func place(m stand) mgl64.Vec3 { return m.Col(3).Vec3() }
func ahead(m stand) mgl64.Vec3 { return m.Col(0).Vec3() }

// shift moves along the frame's own axes.
func shift(x, y, z float64) stand { return mgl64.Translate3D(x, y, z) }

// rolledBy does something in a frame rolled by degrees about its own way.
func rolledBy(roll float64, does ...stand) stand {
	m := mgl64.HomogRotate3DX(rad(roll))
	for _, d := range does {
		m = m.Mul4(d)
	}
	return m.Mul4(mgl64.HomogRotate3DX(rad(-roll)))
}

// step is the motion of a fitting, in the frame it stands on.
func step(f route.Fitting, roll float64) stand {
	switch f.Kind {
	case route.Socket:
		return shift(f.Stop, 0, 0)
	case route.Offset:
		return rolledBy(roll, shift(f.Length, f.Sideways, 0))
	case route.Elbow:
		return rolledBy(roll, shift(f.Legs[0], 0, 0), mgl64.HomogRotate3DZ(rad(f.Turn)), shift(f.Legs[1], 0, 0))
	default:
		return shift(f.Length, 0, 0)
	}
}

// chainLaid is a chain as the referee lays it.
type chainLaid struct {
	stop   stand
	bodies [][]stick // of each fitting
	mouth  float64   // from the stop along the tube to the end of the collar, mm
	centre mgl64.Vec3
	reach  float64 // radius of a ball about centre that holds the bodies, mm
}

// ball sets a ball about the stop that holds a net over the bodies, with a
// millimetre for what a net leaves of the surface between its points.
func (c *chainLaid) ball(net []mgl64.Vec3) {
	c.centre = place(c.stop)
	for _, p := range net {
		c.reach = max(c.reach, p.Sub(c.centre).Len()+1)
	}
}

// layChain lays a chain's fittings and rolls on a port of the plan.
func layChain(plan route.Plan, port route.PortRef, bodies []route.Body) chainLaid {
	laid := chainLaid{stop: portStand(plan, port)}
	for _, b := range bodies {
		laid.bodies = append(laid.bodies, sticksOf(laid.stop, b.Fitting, b.Roll))
		laid.stop = laid.stop.Mul4(step(b.Fitting, b.Roll))
		laid.mouth = b.Fitting.Collar.Length - b.Fitting.Stop
	}
	return laid
}

func portStand(plan route.Plan, ref route.PortRef) stand {
	for _, p := range plan.Parts {
		for _, q := range p.Ports {
			if p.Name == ref.Part && q.Name == ref.Port {
				return partMatrix(p).Mul4(portMatrix(q))
			}
		}
	}
	panic("the referee's plan has no port " + ref.String())
}

// sticksOf is the room of a fitting that stands at m.
func sticksOf(m stand, f route.Fitting, roll float64) []stick {
	r := f.Body / 2
	at := func(does ...stand) mgl64.Vec3 { return place(m.Mul4(rolledBy(roll, does...))) }
	switch f.Kind {
	case route.Socket:
		return []stick{{place(m), at(shift(f.Collar.Length, 0, 0)), f.Collar.OD / 2, false}}
	case route.Offset:
		a, c := at(shift(f.Length/2, 0, 0)), at(shift(f.Length/2, f.Sideways, 0))
		return []stick{{place(m), a, r, false}, {a, c, r, true}, {c, at(shift(f.Length, f.Sideways, 0)), r, false}}
	case route.Elbow:
		corner := at(shift(f.Legs[0], 0, 0))
		end := place(m.Mul4(step(f, roll)))
		return []stick{{place(m), corner, r, false}, {corner, corner, r, true}, {corner, end, r, false}}
	default:
		return []stick{{place(m), at(shift(f.Length, 0, 0)), r, false}}
	}
}
