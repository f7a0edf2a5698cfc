package insert

import (
	"context"
	"reflect"
	"sync"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/find"
)

// Memory answers as [Machine] with the zero [Options] does, and remembers its last
// answer: it holds as long as all it rests on is the same. The zero value
// remembers nothing. It may be used by several goroutines at a time.
type Memory struct {
	lock  sync.Mutex
	told  bool
	of    basis
	given Report
}

// basis is all that the order of putting in rests on.
type basis struct {
	units route.Units // of the words
	size  mgl64.Vec3
	parts []obstacle
	runs  []standing
}

// standing is what a run's piece is made of.
type standing struct {
	name       string
	start, end route.Laid
	formed     bends.Formed
	ends       bends.Ends
	od         float64
}

func (m *machine) basis() basis {
	b := basis{units: m.plan.Units, size: m.plan.Case, parts: m.parts}
	for i := range m.runs {
		w := &m.runs[i].way
		b.runs = append(b.runs, standing{m.runs[i].name, w.Start, w.End, w.Formed, w.Ends, w.Tube.OD})
	}
	return b
}

// Known gives the answer where nothing has to be looked for: the plan as solved
// is in all that matters here the one looked at last.
func (y *Memory) Known(plan route.Plan, sol find.Solution) (Report, bool) {
	return y.known(newMachine(context.Background(), plan, sol, Options{}).basis())
}

func (y *Memory) known(b basis) (Report, bool) {
	if len(b.runs) == 0 {
		return Report{}, true
	}
	y.lock.Lock()
	defer y.lock.Unlock()
	if !y.told || !reflect.DeepEqual(b, y.of) {
		return Report{}, false
	}
	return y.given, true
}

// Machine finds an order of putting in, or remembers it. The error is the
// context's.
func (y *Memory) Machine(ctx context.Context, plan route.Plan, sol find.Solution) (Report, error) {
	m := newMachine(ctx, plan, sol, Options{})
	b := m.basis()
	if r, ok := y.known(b); ok {
		return r, nil
	}
	r, err := m.order(ctx)
	if err != nil {
		return r, err
	}
	y.lock.Lock()
	defer y.lock.Unlock()
	y.told, y.of, y.given = true, b, r
	return r, nil
}
