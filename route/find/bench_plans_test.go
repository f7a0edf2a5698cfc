package find

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
)

// kit is what the test plans may use: one tube and a few fittings, with the
// numbers of the plan format's example.
func kit() (route.Tube, []route.Fitting) {
	tube := route.Tube{
		Name: "petg-16-12", Material: "petg", KnownFrom: route.Measured,
		Tube: bends.Tube{
			OD: 16, ID: 12, Radius: 32, LeastRadius: 28, StraightBetween: 20, StraightEnd: 26,
			Springback: bends.Springback{Degrees: 1, Percent: 1.5}, Trim: 15,
		},
	}
	socket := route.Fitting{
		Name: "socket-16", Kind: route.Socket, OD: 16, Thread: "G1/4", Stop: 6,
		Insertion: route.Insertion{Full: 12, Least: 9}, SeatGap: 0.5,
		Collar: route.Collar{OD: 24, Length: 20}, Give: route.Give{Sideways: 0.3, Degrees: 1}, Price: 6.20,
	}
	return tube, []route.Fitting{socket}
}

// extras are fittings that plans may be given besides.
func extras() []route.Fitting {
	return []route.Fitting{
		{Name: "extender-15", Kind: route.Extender, Thread: "G1/4", Length: 15, Body: 20, Price: 3.70},
		{Name: "extender-20", Kind: route.Extender, Thread: "G1/4", Length: 20, Body: 20, Price: 4.10},
		{Name: "offset-10", Kind: route.Offset, Thread: "G1/4", Length: 20, Sideways: 10, Rotary: true, Body: 20, Price: 8.60},
		{Name: "offset-15", Kind: route.Offset, Thread: "G1/4", Length: 22, Sideways: 15, Rotary: true, Body: 20, Price: 8.90},
		{Name: "elbow-45", Kind: route.Elbow, Thread: "G1/4", Turn: 45, Legs: [2]float64{13, 12}, Rotary: true, Body: 20, Price: 7.40},
		{Name: "elbow-90", Kind: route.Elbow, Thread: "G1/4", Turn: 90, Legs: [2]float64{14, 12}, Rotary: true, Body: 20, Price: 7.90},
	}
}

// hole is a part that is nothing but a port: a small plate behind it.
func hole(name string, at, facing mgl64.Vec3) route.Part {
	return route.Part{
		Name: name, At: at,
		Ports: []route.Port{{Name: "p", Facing: facing.Mul(1 / facing.Len()), Thread: "G1/4", Flow: route.Any}},
	}
}

// box is a part that only stands in the way.
func box(name string, from, to mgl64.Vec3) route.Part {
	return route.Part{Name: name, Solids: []route.Solid{{Box: true, From: from, To: to}}}
}

// between is a plan with one run "run" from a port to another in a large case.
func between(a, aFacing, b, bFacing mgl64.Vec3, more ...route.Part) route.Plan {
	plan := route.Defaults()
	tube, fittings := kit()
	plan.Tube, plan.Tubes, plan.Fittings = tube.Name, []route.Tube{tube}, fittings
	plan.Case = mgl64.Vec3{1000, 1000, 1000}
	plan.Parts = append([]route.Part{hole("a", a, aFacing), hole("b", b, bFacing)}, more...)
	plan.Runs = []route.Run{{Name: "run", From: route.PortRef{Part: "a", Port: "p"}, To: route.PortRef{Part: "b", Port: "p"}}}
	return plan
}

func v(x, y, z float64) mgl64.Vec3 { return mgl64.Vec3{x, y, z} }
