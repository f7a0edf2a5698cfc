package find_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/find"
)

const (
	// joints is how many port pairs the normal suite looks at: 22 s of one core, 27
	// for 500, of which all have been looked at. TUBEWRIGHT_JOINTS
	// asks for another number.
	joints = 400
	// sameCostWithin is how far two costs may lie apart, mm of tube: both sides
	// polish rolls to far less.
	sameCostWithin = 0.01
)

// smallShelf is a small catalogue, its sizes by chance.
func smallShelf(r *rand.Rand) []route.Fitting {
	socket := refereeFittings[0]
	fits := []route.Fitting{socket}
	if r.IntN(3) == 0 {
		socket.Name, socket.Price, socket.Stop, socket.Give = "socket-loose", 8.9, 8, route.Give{Sideways: 0.6, Degrees: 1.5}
		fits = append(fits, socket)
	}
	pick := func(list ...float64) float64 { return list[r.IntN(len(list))] }
	for i := range 2 {
		l := pick(5, 10, 15, 20, 30)
		fits = append(fits, route.Fitting{Name: fmt.Sprintf("extender-%d-%v", i, l), Kind: route.Extender, Length: l, Body: 20, Price: 3 + l/10})
	}
	for i := range 2 {
		d := pick(7.5, 10, 15, 20)
		fits = append(fits, route.Fitting{Name: fmt.Sprintf("offset-%d-%v", i, d), Kind: route.Offset, Length: 22, Sideways: d, Rotary: true, Body: 20, Price: 8 + d/20})
	}
	for i := range 2 {
		turn := pick(30, 45, 60, 90)
		fits = append(fits, route.Fitting{Name: fmt.Sprintf("elbow-%d-%v", i, turn), Kind: route.Elbow, Turn: turn, Legs: [2]float64{14, 12}, Rotary: true, Body: 20, Price: 7 + turn/100})
	}
	turn := pick(45, 90)
	return append(fits, route.Fitting{Name: fmt.Sprintf("fixed-%v", turn), Kind: route.Elbow, Turn: turn, Legs: [2]float64{11, 11}, Rolls: []float64{0, 90, 180, -90}, Body: 19, Price: 5})
}

// anyChain is up to most fittings at rolls by chance, by quarters where square.
func anyChain(r *rand.Rand, fits []route.Fitting, most int, squarely bool) (chain []link) {
	for range r.IntN(most + 1) {
		f := &fits[r.IntN(len(fits))]
		l := link{fit: f, roll: between(r, -180, 180)}
		if squarely {
			l.roll = float64(r.IntN(4)) * 90
		}
		if len(f.Rolls) > 0 {
			l.roll = f.Rolls[r.IntN(len(f.Rolls))]
		}
		if f.Kind != route.Socket {
			chain = append(chain, l)
		}
	}
	return chain
}

// anyJoint is two ports that some straight joins: a tube is laid from a chain by
// chance, and the second port put where another chain by chance must stand.
func anyJoint(r *rand.Rand) *joint {
	fits := smallShelf(r)
	squarely := r.IntN(2) == 0
	facing := func() mgl64.Vec3 {
		if squarely {
			var d mgl64.Vec3
			d[r.IntN(3)] = float64(r.IntN(2)*2 - 1)
			return d
		}
		return mgl64.Vec3{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Normalize()
	}
	for {
		p, q := route.NewFrame(mgl64.Vec3{1200, 1200, 1200}, facing()), route.NewFrame(mgl64.Vec3{}, facing())
		most := r.IntN(4)
		end, tail := along(p, anyChain(r, fits, most, squarely)), anyChain(r, fits, min(3, 4-most), squarely)
		if !squarely {
			q = turnedTo(q, tail, end.Dir.Mul(-1))
		}
		e := along(q, tail)
		if askewness(e.Dir, end.Dir) > 0.01 {
			continue
		}
		gap := 2*refereeFittings[0].Stop + between(r, 30, 160)
		q.At = end.Ahead(gap).Sub(e.At)
		if r.IntN(3) == 0 { // within what two sockets give
			q.At = q.At.Add(end.Side(between(r, 0, 360)).Mul(between(r, 0, 0.5)))
		}
		return newJoint(fits, p, q)
	}
}

// turnedTo turns a port so that its chain lets go in a direction: it may take
// more than one turn, for the rolls of the chain count from a reference that does
// not turn along.
func turnedTo(q route.Frame, tail []link, want mgl64.Vec3) route.Frame {
	for range 50 {
		turn := mgl64.QuatBetweenVectors(along(q, tail).Dir, want)
		q = route.NewFrame(mgl64.Vec3{}, turn.Rotate(q.Dir))
	}
	return q
}

func newJoint(fits []route.Fitting, p, q route.Frame) *joint {
	plan := route.Defaults()
	plan.Weigh.Tidy, plan.Weigh.Miss = 0, 0 // of fittings, tube and money alone
	plan.Case = mgl64.Vec3{2400, 2400, 2400}
	plan.Tube, plan.Tubes, plan.Fittings = refereeTube.Name, []route.Tube{refereeTube}, fits
	for i, f := range []route.Frame{p, q} {
		plan.Parts = append(plan.Parts, route.Part{
			Name: []string{"a", "b"}[i], At: f.At,
			Ports: []route.Port{{Name: "p", Facing: f.Dir}},
		})
	}
	plan.Runs = []route.Run{{Name: "run", From: route.PortRef{Part: "a", Port: "p"}, To: route.PortRef{Part: "b", Port: "p"}, Way: route.Straight}}
	j := &joint{plan: plan, ports: [2]route.Frame{p, q}, weigh: plan.Weigh, aims: map[string][][]float64{}}
	for i := range fits {
		if fits[i].Kind == route.Socket {
			j.sockets = append(j.sockets, &fits[i])
		}
	}
	j.chains = everyChain(fits)
	return j
}

// TestStraightsAreComplete: the best straight of each of many port pairs costs
// what the best of all chains at all rolls costs.
func TestStraightsAreComplete(t *testing.T) {
	count := joints
	if asked, err := strconv.Atoi(os.Getenv("TUBEWRIGHT_JOINTS")); err == nil {
		count = asked
	} else if testing.Short() {
		count /= 10
	}
	made := map[int]int{}
	for seed := range uint64(count) {
		j := anyJoint(rand.New(rand.NewPCG(seed, 17)))
		j.search()
		sol, err := find.Solve(context.Background(), j.plan)
		if err != nil {
			t.Fatal(err)
		}
		w, ok := sol.Runs[0].Way()
		got := math.Inf(1)
		if ok {
			got = w.Cost
			if faults := judge(j.plan, j.plan.Runs[0], w).faults; len(faults) > 0 {
				t.Errorf("seed %d: %d faults, first: %s", seed, len(faults), faults[0])
			}
			made[w.Fittings()-2]++
		}
		if ok != !math.IsInf(j.best, 1) || ok && math.Abs(got-j.best) > sameCostWithin {
			t.Errorf("seed %d: found %.4f (%s), of all %.4f (%s)", seed, got, w.Name, j.best, j.with)
		}
	}
	t.Logf("fittings besides sockets, and how many straights have them: %v", made)
}
