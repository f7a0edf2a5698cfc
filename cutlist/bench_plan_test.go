package cutlist_test

import (
	"context"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

type vec = mgl64.Vec3

// bench is a plan with its solution made by hand: no file, no search.
type bench struct {
	plan route.Plan
	sol  find.Solution
}

func socket(known route.KnownFrom) route.Fitting {
	return route.Fitting{
		Name: "socket-16", Kind: route.Socket, OD: 16, Thread: "G1/4", Stop: 6,
		Insertion: route.Insertion{Full: 12, Least: 9}, SeatGap: 0.5, Price: 6.2, KnownFrom: known,
	}
}

func newBench() *bench {
	b := &bench{plan: route.Defaults()}
	b.plan.Name, b.plan.Spares = "bench", route.Spares{}
	b.plan.Case = vec{2000, 2000, 2000}
	b.plan.Tubes = []route.Tube{{
		Name: "petg-16-12", Material: "petg", KnownFrom: route.Measured,
		Tube: bends.Tube{OD: 16, ID: 12, Radius: 32, LeastRadius: 28, StraightBetween: 20, StraightEnd: 26, Trim: 15},
	}}
	b.plan.Tube = "petg-16-12"
	b.plan.Fittings = []route.Fitting{socket(route.Measured)}
	return b
}

// add puts a run between two parts of its own. length is developed, from stop to
// stop; bent makes it one right angle. Blank is length − 1 + 2, and 30 when bent.
func (b *bench) add(t *testing.T, name string, length float64, bent bool, more ...route.Fitting) {
	t.Helper()
	y := 100 + 100*float64(len(b.plan.Runs))
	from, to := vec{100, y, 100}, vec{100 + length + 12, y, 100}
	corners := []vec{{106, y, 100}, {106 + length, y, 100}}
	facing := vec{-1, 0, 0}
	if bent {
		leg := (length + 64 - 16*3.141592653589793) / 2
		corners = []vec{{106, y, 100}, {106 + leg, y, 100}, {106 + leg, y, 100 + leg}}
		to, facing = vec{106 + leg, y, 106 + leg}, vec{0, 0, -1}
	}
	run := route.Run{
		Name: name, From: b.part(name+"-a", from, vec{1, 0, 0}), To: b.part(name+"-b", to, facing), Tube: b.plan.Tube,
	}
	b.plan.Runs = append(b.plan.Runs, run)
	tube, _ := b.plan.FindTube(b.plan.Tube)
	formed, err := bends.Form(tube.Tube, bends.Path{Corners: corners})
	if err != nil {
		t.Fatalf("the bench's run %q: %v", name, err)
	}
	way := find.Way{
		Run: name, Name: "by hand", Tube: tube, Formed: formed,
		Start: b.laid(run.From, append(more, b.plan.Fittings[0])...), End: b.laid(run.To, b.plan.Fittings[0]),
		Ends: bends.Ends{SeatGap: [2]float64{0.5, 0.5}, Play: [2]float64{3, 3}},
	}
	b.sol.Runs = append(b.sol.Runs, find.Solved{Run: run, Ways: []find.Way{way}})
}

func (b *bench) part(name string, at, facing vec) route.PortRef {
	b.plan.Parts = append(b.plan.Parts, route.Part{
		Name: name, KnownFrom: route.Measured, Ports: []route.Port{{Name: "p", At: at, Facing: facing, Thread: "G1/4"}},
	})
	return route.PortRef{Part: name, Port: "p"}
}

func (b *bench) laid(ref route.PortRef, fits ...route.Fitting) route.Laid {
	port, _ := b.plan.FindPort(ref)
	laid := route.Laid{Port: port, Stop: port.Frame}
	for _, f := range fits {
		laid.Bodies = append(laid.Bodies, route.Body{Fitting: f, From: laid.Stop})
		laid.Stop = laid.Stop.Past(&f, 0)
	}
	laid.Socket = fits[len(fits)-1]
	return laid
}

func (b *bench) stock(length, price float64, most int) {
	b.plan.Stock = append(b.plan.Stock, route.Stock{Tube: b.plan.Tube, Length: length, Price: price, Most: most})
}

func (b *bench) list(t *testing.T) cutlist.List {
	t.Helper()
	list, err := cutlist.Build(context.Background(), b.plan, b.sol)
	if err != nil {
		t.Fatalf("Build: %v", err)
	}
	return list
}

// told gives the findings of a code.
func told(l cutlist.List, code check.Code) []check.Finding {
	var list []check.Finding
	for _, f := range l.Findings {
		if f.Code == code {
			list = append(list, f)
		}
	}
	return list
}
