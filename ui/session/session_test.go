package session_test

import (
	"context"
	"errors"
	"slices"
	"sync"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/ui/session"
)

// desk is a session with work that the test runs by hand: nothing happens
// between two lines of a test unless the test says so.
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
		Solve: func(ctx context.Context, p route.Plan) (find.Solution, error) {
			d.solved = append(d.solved, p)
			return solutionOf(p), errors.Join(d.fail, ctx.Err())
		},
		Build: func(ctx context.Context, p route.Plan, _ find.Solution) (cutlist.List, error) {
			d.built++
			return cutlist.List{Plan: p}, ctx.Err()
		},
		Go:       func(work func()) { d.works = append(d.works, work) },
		Dispatch: func(task func()) { d.tasks = append(d.tasks, task) },
	}, func(s session.Snapshot) { d.shown = append(d.shown, s) })
	return d
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

func TestNothingOpen(t *testing.T) {
	d := newDesk(t)
	now := d.Now()
	if now.Open || now.Dirty || now.Undo != "" || now.Redo != "" || now.Current() {
		t.Errorf("a new session shows %+v, want nothing open", now)
	}
	if err := d.Edit("x", func(p route.Plan) route.Plan { return p }); !errors.Is(err, session.ErrNoPlan) {
		t.Errorf("Edit without a plan gave %v, want ErrNoPlan", err)
	}
	d.Undo()
	d.Redo()
	d.Stop()
	d.BeginDrag("x")
	d.EndDrag()
	d.DropDrag()
	if len(d.works) > 0 {
		t.Error("work was started without a plan")
	}
}

func TestEditUndoRedo(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.settle()
	d.must(d.MovePart("pump", mgl64.Vec3{1, 2, 3}))
	d.must(d.MovePart("plate", mgl64.Vec3{4, 5, 6}))
	d.settle()
	now := d.Now()
	if now.Undo != "Move plate" || !now.Dirty || !now.Current() {
		t.Fatalf("after two edits: undo %q, dirty %v, current %v", now.Undo, now.Dirty, now.Current())
	}
	d.Undo()
	if got, want := d.at("plate"), (mgl64.Vec3{200, 0, 0}); got != want {
		t.Errorf("undo put the plate at %v, want %v", got, want)
	}
	if now := d.Now(); now.Undo != "Move pump" || now.Redo != "Move plate" {
		t.Errorf("undo %q, redo %q", now.Undo, now.Redo)
	}
	d.Undo()
	if now := d.Now(); now.Dirty || now.Undo != "" {
		t.Errorf("all undone: dirty %v, undo %q; want neither", now.Dirty, now.Undo)
	}
	d.Redo()
	d.Redo()
	d.Redo()
	if got, want := d.at("plate"), (mgl64.Vec3{4, 5, 6}); got != want {
		t.Errorf("redo put the plate at %v, want %v", got, want)
	}
	d.Undo()
	d.must(d.MovePart("pump", mgl64.Vec3{7, 8, 9}))
	if now := d.Now(); now.Redo != "" {
		t.Errorf("an edit after undo leaves redo %q, want nothing", now.Redo)
	}
}

func TestAnEditNeverWritesToAnOlderPlan(t *testing.T) {
	d := newDesk(t)
	plan := twoParts()
	d.Begin(plan)
	before := d.Now()
	d.must(d.MovePart("pump", mgl64.Vec3{1, 2, 3}))
	d.must(d.SetOnHand("plug", 3))
	if got := before.Plan.Parts[0].At; got != (mgl64.Vec3{100, 10, 20}) {
		t.Errorf("the snapshot from before the edit now has the pump at %v", got)
	}
	if got := plan.Parts[0].At; got != (mgl64.Vec3{100, 10, 20}) {
		t.Errorf("the plan handed over now has the pump at %v", got)
	}
}

func TestDragIsOneStep(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.BeginDrag("Move pump")
	for x := range 20 {
		d.must(d.MovePart("pump", mgl64.Vec3{float64(100 + x), 10, 20}))
	}
	d.EndDrag()
	d.must(d.MovePart("pump", mgl64.Vec3{0, 0, 0}))
	d.Undo()
	if got := d.at("pump"); got[0] != 119 {
		t.Errorf("one undo after the edit gives x = %v, want 119, the drag's end", got[0])
	}
	d.Undo()
	if got := d.at("pump"); got[0] != 100 {
		t.Errorf("the drag undone gives x = %v, want 100", got[0])
	}
}

func TestDroppedDragLeavesNoTrace(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.must(d.MovePart("plate", mgl64.Vec3{1, 1, 1}))
	d.Undo()
	d.BeginDrag("Move pump")
	d.must(d.MovePart("pump", mgl64.Vec3{1, 2, 3}))
	d.must(d.MovePart("pump", mgl64.Vec3{2, 2, 3}))
	d.DropDrag()
	now := d.Now()
	if d.at("pump") != (mgl64.Vec3{100, 10, 20}) || now.Dirty || now.Undo != "" || now.Redo != "Move plate" {
		t.Errorf("after a dropped drag: pump at %v, dirty %v, undo %q, redo %q", d.at("pump"), now.Dirty, now.Undo, now.Redo)
	}
	d.BeginDrag("Move pump")
	d.EndDrag()
	if now := d.Now(); now.Dirty || now.Redo != "Move plate" {
		t.Errorf("a drag that moved nothing: dirty %v, redo %q", now.Dirty, now.Redo)
	}
}

func TestUndoInTheMiddleOfADragDropsIt(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.must(d.MovePart("plate", mgl64.Vec3{1, 1, 1}))
	d.BeginDrag("Move pump")
	d.must(d.MovePart("pump", mgl64.Vec3{1, 2, 3}))
	d.Undo()
	if d.at("pump") != (mgl64.Vec3{100, 10, 20}) || d.at("plate") != (mgl64.Vec3{1, 1, 1}) || d.Dragging() {
		t.Errorf("undo while dragging: pump %v, plate %v, dragging %v", d.at("pump"), d.at("plate"), d.Dragging())
	}
}

func TestNudgesInARowAreOneStep(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	for range 5 {
		d.must(d.NudgePart("pump", mgl64.Vec3{1, 0, 0}))
	}
	d.must(d.NudgePart("plate", mgl64.Vec3{1, 0, 0}))
	d.must(d.NudgePart("pump", mgl64.Vec3{1, 0, 0}))
	d.Undo()
	d.Undo()
	if got := d.at("pump"); got[0] != 105 {
		t.Errorf("two undos give x = %v, want 105", got[0])
	}
	d.must(d.NudgePart("pump", mgl64.Vec3{1, 0, 0}))
	d.Undo()
	if got := d.at("pump"); got[0] != 105 {
		t.Errorf("a nudge after an undo is a step of its own: x = %v, want 105", got[0])
	}
	d.Undo()
	if got := d.at("pump"); got[0] != 100 {
		t.Errorf("five nudges undone give x = %v, want 100", got[0])
	}
}

func TestTheLatestPlanWins(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.settle()
	d.must(d.MovePart("pump", mgl64.Vec3{1, 0, 0}))
	d.must(d.MovePart("pump", mgl64.Vec3{2, 0, 0}))
	d.must(d.MovePart("pump", mgl64.Vec3{3, 0, 0}))
	if len(d.works) != 1 {
		t.Fatalf("%d solves were started at once, want 1", len(d.works))
	}
	d.solved = nil
	d.settle()
	if n := len(d.solved); n != 2 || d.solved[1].Parts[0].At[0] != 3 {
		t.Errorf("%d plans were solved, want the one that ran and the newest", n)
	}
	if now := d.Now(); !now.Current() || now.List.Plan.Parts[0].At[0] != 3 {
		t.Errorf("the answer shown is of x = %v, want 3", now.List.Plan.Parts[0].At[0])
	}
}

func TestAnAnswerToAnOlderPlanIsNotShown(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.work() // solved, its news still on the way
	d.must(d.MovePart("pump", mgl64.Vec3{1, 0, 0}))
	d.tell()
	if now := d.Now(); now.Solved != 0 || now.Listed != 0 || !now.Solving {
		t.Errorf("solved %d, listed %d, solving %v; want nothing shown yet", now.Solved, now.Listed, now.Solving)
	}
	d.settle()
	if !d.Now().Current() {
		t.Error("the newest plan was never answered")
	}
}

func TestADragShowsAnswersThatAreAFrameLate(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.settle()
	d.BeginDrag("Move pump")
	d.must(d.MovePart("pump", mgl64.Vec3{1, 0, 0}))
	late := d.Now().Version
	d.work()
	d.must(d.MovePart("pump", mgl64.Vec3{2, 0, 0}))
	d.tell()
	if now := d.Now(); now.Solved != late || !now.Solving || now.Current() {
		t.Errorf("while dragging: solved %d of %d, solving %v; want %d", now.Solved, now.Version, now.Solving, late)
	}
	d.EndDrag()
	d.settle()
	if now := d.Now(); !now.Current() || now.List.Plan.Parts[0].At[0] != 2 {
		t.Errorf("after the drag the answer is not that of its end: %+v", now.List.Plan.Parts[0].At)
	}
}

func TestEndOfADragDoesNotSolveTwice(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.settle()
	d.BeginDrag("Move pump")
	d.must(d.MovePart("pump", mgl64.Vec3{1, 0, 0}))
	d.solved = nil
	d.EndDrag()
	d.settle()
	if len(d.solved) != 1 {
		t.Errorf("%d solves for one move, want 1", len(d.solved))
	}
}

func TestStopAndSolveAgain(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.Stop()
	d.settle()
	if now := d.Now(); now.Solving || !now.Stopped || now.Err != nil || now.Current() {
		t.Errorf("stopped: solving %v, stopped %v, err %v", now.Solving, now.Stopped, now.Err)
	}
	d.SolveAgain()
	d.settle()
	if now := d.Now(); !now.Current() || now.Stopped {
		t.Error("asked again, the plan was not answered")
	}
}

func TestAFailedSolveIsTold(t *testing.T) {
	d := newDesk(t)
	d.fail = errors.New("no paper")
	d.Begin(twoParts())
	d.settle()
	if now := d.Now(); now.Err == nil || now.Solving {
		t.Fatalf("err %v, solving %v; want the error, and rest", now.Err, now.Solving)
	}
	d.fail = nil
	d.must(d.MovePart("pump", mgl64.Vec3{1, 0, 0}))
	d.settle()
	if now := d.Now(); now.Err != nil || !now.Current() {
		t.Errorf("after a sound edit err is %v", now.Err)
	}
}

func TestAPanicOfThePlanningIsAnError(t *testing.T) {
	var tasks []func()
	s := session.New(session.Tools{
		Solve:    func(context.Context, route.Plan) (find.Solution, error) { panic("boom") },
		Go:       func(work func()) { work() },
		Dispatch: func(task func()) { tasks = append(tasks, task) },
	}, func(session.Snapshot) {})
	s.Begin(twoParts())
	for _, task := range tasks {
		task()
	}
	if err := s.Now().Err; err == nil || s.Now().Solving {
		t.Errorf("err %v, want one that names the panic", err)
	}
}

func TestOpeningDropsTheAnswerOfThePlanBefore(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.work()
	other := twoParts()
	other.Name = "other"
	d.Begin(other)
	d.tell()
	if d.Now().Solved != 0 {
		t.Error("the old plan's answer is shown with the new plan")
	}
	d.settle()
	if now := d.Now(); !now.Current() || now.List.Plan.Name != "other" || now.Dirty || now.Undo != "" {
		t.Errorf("after opening: current %v, list of %q, dirty %v", now.Current(), now.List.Plan.Name, now.Dirty)
	}
}

// TestWithRealGoroutines is for the race detector: workers run beside the
// session, and their news come through a queue.
func TestWithRealGoroutines(t *testing.T) {
	queue := make(chan func(), 1000)
	var busy sync.WaitGroup
	s := session.New(session.Tools{
		Solve: func(_ context.Context, p route.Plan) (find.Solution, error) { return solutionOf(p), nil },
		Build: func(_ context.Context, p route.Plan, _ find.Solution) (cutlist.List, error) {
			return cutlist.List{Plan: p.Clone()}, nil
		},
		Go:       func(work func()) { busy.Go(work) },
		Dispatch: func(task func()) { queue <- task },
	}, func(session.Snapshot) {})
	s.Begin(twoParts())
	for i := range 50 {
		if err := s.NudgePart("pump", mgl64.Vec3{1, 0, 0}); err != nil {
			t.Fatal(err)
		}
		if i%7 == 0 {
			s.Undo()
		}
		for len(queue) > 0 {
			(<-queue)()
		}
	}
	for s.Now().Solving {
		(<-queue)()
	}
	busy.Wait()
	now := s.Now()
	if !now.Current() || !slices.Equal(now.List.Plan.Parts[0].At[:], now.Plan.Parts[0].At[:]) {
		t.Errorf("at rest the list is of %v, the plan has %v", now.List.Plan.Parts[0].At, now.Plan.Parts[0].At)
	}
}
