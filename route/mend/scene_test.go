package mend_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/mend"
)

type vec = mgl64.Vec3

// bench is an empty plan with the tube and the socket of the plan format's
// example, and a glass tube of the same size that cannot be bent. All its
// fittings have the same thread.
func bench() route.Plan {
	plan := route.Defaults()
	plan.Name, plan.Case, plan.Tube = "mend", vec{500, 300, 300}, "petg-16-12"
	plan.Tubes = []route.Tube{
		{Name: "petg-16-12", Material: "petg", Tube: bends.Tube{
			OD: 16, ID: 12, Radius: 32, LeastRadius: 28, StraightBetween: 20, StraightEnd: 26, Trim: 15,
		}},
		{Name: "glass-16-12", Material: "glass", Tube: bends.Tube{OD: 16, ID: 12, StraightEnd: 20}},
	}
	plan.Fittings = []route.Fitting{
		{
			Name: "socket-16", Kind: route.Socket, OD: 16, Thread: "G1/4", Stop: 6, Insertion: route.Insertion{Full: 12, Least: 9},
			SeatGap: 0.5, Collar: route.Collar{OD: 24, Length: 20}, Give: route.Give{Sideways: 0.3, Degrees: 1},
		},
	}
	return plan
}

func extender(length float64) route.Fitting {
	return route.Fitting{Name: fmt.Sprintf("extender-%.0f", length), Kind: route.Extender, Thread: "G1/4", Length: length, Body: 20}
}

func box(name string, from, to vec) route.Part {
	return route.Part{Name: name, Solids: []route.Solid{{Box: true, From: from, To: to}}}
}

// with gives the part a port; all ports share one thread.
func with(k route.Part, name string, at, facing vec, flow route.Flow) route.Part {
	k.Ports = append(k.Ports, route.Port{Name: name, At: at, Facing: facing, Thread: "G1/4", Flow: flow})
	return k
}

// hole is nothing but a port called p.
func hole(name string, at, facing vec) route.Part {
	return with(route.Part{Name: name}, "p", at, facing, route.Any)
}

func ref(s string) route.PortRef {
	part, name, _ := strings.Cut(s, ".")
	return route.PortRef{Part: part, Port: name}
}

func run(name, from, to string) route.Run { return route.Run{Name: name, From: ref(from), To: ref(to)} }

func solve(t testing.TB, plan route.Plan) find.Solution {
	t.Helper()
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		t.Fatal(err)
	}
	return sol
}

// finding is the first of a code in the plan as solved.
func finding(t testing.TB, plan route.Plan, code check.Code) (find.Solution, check.Finding) {
	t.Helper()
	sol := solve(t, plan)
	list := check.Findings(plan, sol)
	for _, f := range list {
		if f.Code == code {
			return sol, f
		}
	}
	t.Fatalf("no finding %s, but %s", code, told(list))
	return sol, check.Finding{}
}

// advice is what a search says about the first finding of a code.
func advice(t testing.TB, plan route.Plan, code check.Code, search mend.Search) mend.Advice {
	t.Helper()
	sol, f := finding(t, plan, code)
	a, err := search.Advise(context.Background(), plan, sol, f)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func told(list []check.Finding) string {
	var b strings.Builder
	for _, f := range list {
		fmt.Fprintf(&b, "\n\t%s %s %v %v: %s", f.Severity, f.Code, f.Runs, f.Parts, f.What)
	}
	return b.String()
}

// words lists offers for a failure and for comparing.
func words(offers []mend.Offer) (list []string) {
	for _, o := range offers {
		list = append(list, o.Words)
	}
	return list
}
