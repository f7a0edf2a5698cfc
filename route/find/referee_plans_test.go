package find_test

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
)

var refereeTube = route.Tube{Name: "petg", Material: "petg", Tube: bends.Tube{
	OD: 16, ID: 12, Radius: 32, LeastRadius: 28, StraightBetween: 20, StraightEnd: 26,
	Springback: bends.Springback{Degrees: 1, Percent: 1.5}, Trim: 15,
}}

var refereeFittings = []route.Fitting{
	{
		Name: "socket", Kind: route.Socket, Thread: "G1/4", OD: 16, Stop: 6, SeatGap: 0.5, Bore: 10,
		Insertion: route.Insertion{Full: 12, Least: 9}, Collar: route.Collar{OD: 24, Length: 20},
		Give: route.Give{Sideways: 0.3, Degrees: 1}, Price: 6.2,
	},
	{Name: "extender", Kind: route.Extender, Thread: "G1/4", Length: 15, Body: 20, Price: 4},
	{Name: "offset", Kind: route.Offset, Thread: "G1/4", Length: 22, Sideways: 15, Rotary: true, Body: 20, Price: 9},
	{Name: "elbow", Kind: route.Elbow, Thread: "G1/4", Turn: 90, Legs: [2]float64{14, 12}, Rotary: true, Body: 20, Price: 8},
	{Name: "elbow-fixed", Kind: route.Elbow, Thread: "G1/4", Turn: 90, Legs: [2]float64{14, 14}, Rolls: []float64{0, 90, 180, -90}, Body: 19, Price: 5},
}

// anyPlan is a case with two to ten parts apart from each other, a fifth of them
// turned any way, and one to four runs between ports not used twice.
func anyPlan(r *rand.Rand) route.Plan {
	plan := route.Defaults()
	plan.Name, plan.Tube = "referee", refereeTube.Name
	plan.Tubes, plan.Fittings = []route.Tube{refereeTube}, refereeFittings
	plan.Case = mgl64.Vec3{between(r, 350, 600), between(r, 250, 450), between(r, 250, 450)}
	for range 2 + r.IntN(9) {
		if p, ok := anyPart(r, plan, len(plan.Parts) < 2); ok {
			p.Name = fmt.Sprintf("part-%d", len(plan.Parts)+1)
			plan.Parts = append(plan.Parts, p)
		}
	}
	return withRuns(r, plan)
}

func between(r *rand.Rand, lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }

// anyPart is a box or a cylinder about its own origin with a port on some of its
// faces, put where it keeps clear of the others and of the case; false when no
// place was found.
func anyPart(r *rand.Rand, plan route.Plan, must bool) (route.Part, bool) {
	half := mgl64.Vec3{between(r, 15, 60), between(r, 15, 60), between(r, 15, 60)}
	p := route.Part{Solids: []route.Solid{{Box: true, From: half.Mul(-1), To: half}}}
	if r.IntN(3) == 0 {
		half[2] = half[0]
		p.Solids = []route.Solid{{From: mgl64.Vec3{0, -half[1], 0}, To: mgl64.Vec3{0, half[1], 0}, Radius: half[0]}}
	}
	p.Ports = anyPorts(r, half, p.Solids[0].Box)
	for i := range p.Turn {
		p.Turn[i] = float64(r.IntN(4)) * 90
		if r.IntN(15) == 0 {
			p.Turn[i] = between(r, -180, 180)
		}
	}
	for range 40 {
		if p.At = anyPlace(r, plan.Case, half.Len()); apart(plan, p, half.Len()) {
			return p, true
		}
	}
	return p, must
}

func anyPlace(r *rand.Rand, size mgl64.Vec3, reach float64) (at mgl64.Vec3) {
	for i := range at {
		at[i] = between(r, min(reach, size[i]/2), max(size[i]-reach, size[i]/2))
	}
	return at
}

// apart reports whether a part's ball keeps 30 mm from those of the others: what
// stands closer leaves little to find.
func apart(plan route.Plan, p route.Part, reach float64) bool {
	return !slices.ContainsFunc(plan.Parts, func(q route.Part) bool {
		s := q.Solids[0]
		other := s.To.Sub(s.From).Len() / 2
		if !s.Box {
			other += s.Radius
		}
		return p.At.Sub(q.At).Len() < reach+other+30
	})
}

// anyPorts are one to four ports on different faces of a part.
func anyPorts(r *rand.Rand, half mgl64.Vec3, box bool) (ports []route.Port) {
	faces := r.Perm(6)
	for i, face := range faces[:1+r.IntN(4)] {
		axis, sign := face/2, float64(face%2*2-1)
		q := route.Port{Name: fmt.Sprintf("p%d", i+1), Thread: "G1/4"}
		for k := range q.At {
			if room := half[k] - 12; box && room > 0 {
				q.At[k] = between(r, -room, room)
			}
		}
		q.At[axis], q.Facing[axis] = sign*half[axis], sign
		ports = append(ports, q)
	}
	return ports
}

// open reports whether a person would use a port: there is room ahead of it for a
// socket and a bend.
func open(plan route.Plan, ref route.PortRef) bool {
	at := portStand(plan, ref)
	for _, far := range []float64{15, 40, 65, 90} {
		p := place(at.Mul4(shift(far, 0, 0)))
		if inCase(plan, p) < 20 || slices.ContainsFunc(obstacles(plan), func(o obstacle) bool { return o.distance(p) < 10 }) {
			return false
		}
	}
	return true
}

// withRuns asks for one to four runs between ports picked by chance; one run in
// ten has its start chain prescribed.
func withRuns(r *rand.Rand, plan route.Plan) route.Plan {
	var refs []route.PortRef
	for _, p := range plan.Parts {
		for _, q := range p.Ports {
			ref := route.PortRef{Part: p.Name, Port: q.Name}
			if open(plan, ref) || r.IntN(30) == 0 {
				refs = append(refs, ref)
			}
		}
	}
	r.Shuffle(len(refs), func(i, j int) { refs[i], refs[j] = refs[j], refs[i] })
	for n := range min(1+r.IntN(4), len(refs)/2) {
		run := route.Run{Name: fmt.Sprintf("run-%d", n+1), From: refs[2*n], To: refs[2*n+1]}
		if r.IntN(10) == 0 {
			run.Start = route.Chain{{Fitting: "extender"}, {Fitting: "socket"}}
		}
		plan.Runs = append(plan.Runs, run)
	}
	return plan
}
