package session_test

import (
	"context"
	"errors"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/ui/session"
)

type desk struct {
	*session.Session
	t      *testing.T
	works  []func() // started, not run
	tasks  []func() // sent to the session's goroutine, not run
	shown  []session.Snapshot
	solved []route.Plan // plans the solver was given
	built  int
	fail   error // what the solver gives
}

func newDesk(t *testing.T) *desk {
	d := &desk{t: t}
	d.Session = session.New(session.Tools{
		Solve: d.solve, Build: d.build,
		Go:       func(work func()) { d.works = append(d.works, work) },
		Dispatch: func(task func()) { d.tasks = append(d.tasks, task) },
	}, func(s session.Snapshot) { d.shown = append(d.shown, s) })
	return d
}

func (d *desk) solve(ctx context.Context, p route.Plan) (find.Solution, error) {
	d.solved = append(d.solved, p)
	return solutionOf(p), errors.Join(d.fail, ctx.Err())
}

func (d *desk) build(ctx context.Context, p route.Plan, _ find.Solution) (cutlist.List, error) {
	d.built++
	return cutlist.List{Plan: p}, ctx.Err()
}

// solutionOf is a stand-in that can be told from that of another plan.
func solutionOf(p route.Plan) find.Solution {
	var s find.Solution
	for _, r := range p.Runs {
		s.Runs = append(s.Runs, find.Solved{Run: r, Chosen: -1})
	}
	return s
}

// work runs the oldest started work, and not what it sent.
func (d *desk) work() {
	d.t.Helper()
	if len(d.works) == 0 {
		d.t.Fatal("no work was started")
	}
	next := d.works[0]
	d.works = d.works[1:]
	next()
}

// tell runs what was sent to the session's goroutine.
func (d *desk) tell() {
	for len(d.tasks) > 0 {
		next := d.tasks[0]
		d.tasks = d.tasks[1:]
		next()
	}
}

// settle runs everything until nothing is left.
func (d *desk) settle() {
	for len(d.works)+len(d.tasks) > 0 {
		d.tell()
		if len(d.works) > 0 {
			d.work()
		}
	}
}

func (d *desk) at(part string) mgl64.Vec3 {
	d.t.Helper()
	k, ok := d.Now().Plan.FindPart(part)
	if !ok {
		d.t.Fatalf("the plan has no part %q", part)
	}
	return k.At
}

func (d *desk) must(err error) {
	d.t.Helper()
	if err != nil {
		d.t.Fatal(err)
	}
}

func twoParts() route.Plan {
	p := route.Defaults()
	p.Name, p.Case = "bench", mgl64.Vec3{430, 200, 400}
	p.Parts = []route.Part{
		{Name: "pump", Solids: []route.Solid{{Box: true, To: mgl64.Vec3{40, 20, 60}}}, At: mgl64.Vec3{100, 10, 20}},
		{Name: "plate", At: mgl64.Vec3{200, 0, 0}},
	}
	p.Runs = []route.Run{{Name: "pump-to-plate", From: route.PortRef{Part: "pump", Port: "out"}, To: route.PortRef{Part: "plate", Port: "in"}}}
	return p
}
