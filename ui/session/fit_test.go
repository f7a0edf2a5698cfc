package session_test

import (
	"context"
	"errors"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/insert"
	"tubewright/ui/session"
)

// fitter is a stand-in that finds a run a blocked while the pump stands left of
// x = 200, and remembers by the pump's place alone.
type fitter struct {
	asked int
	at    mgl64.Vec3
	told  bool
	fail  error
}

func (f *fitter) Known(p route.Plan, _ find.Solution) (insert.Report, bool) {
	return reportOf(p), f.told && f.at == p.Parts[0].At
}

func (f *fitter) Machine(ctx context.Context, p route.Plan, _ find.Solution) (insert.Report, error) {
	f.asked++
	if err := errors.Join(f.fail, ctx.Err()); err != nil {
		return insert.Report{}, err
	}
	f.told, f.at = true, p.Parts[0].At
	return reportOf(p), nil
}

func reportOf(p route.Plan) (r insert.Report) {
	if len(p.Runs) > 0 && p.Parts[0].At[0] < 200 {
		r.In = []insert.Result{{Run: "a", Verdict: insert.Impossible}}
		r.First = [][]string{nil}
	}
	return r
}

// fittingDesk is a desk with a look how tubes go in, a plan open with one run.
func fittingDesk(t *testing.T) (*desk, *fitter) {
	d, f := &desk{t: t}, &fitter{}
	d.Session = session.New(session.Tools{
		Solve: d.solve,
		Build: func(ctx context.Context, p route.Plan, _ find.Solution) (cutlist.List, error) {
			l := cutlist.List{Plan: p, Findings: []check.Finding{{Code: check.NoDrain, Severity: check.Warning}}}
			for _, r := range p.Runs {
				l.Tubes = append(l.Tubes, cutlist.Tube{Letter: "A", Run: r.Name})
			}
			return l, ctx.Err()
		},
		Insertion: func() session.Insertion { return f },
		Go:        func(work func()) { d.works = append(d.works, work) },
		Dispatch:  func(task func()) { d.tasks = append(d.tasks, task) },
	}, func(s session.Snapshot) { d.shown = append(d.shown, s) })
	p := twoParts()
	p.Runs = []route.Run{{Name: "a"}}
	d.Begin(p)
	return d, f
}

func codes(s session.Snapshot) (list []check.Code) {
	for _, f := range s.List.Findings {
		list = append(list, f.Code)
	}
	return list
}

func (d *desk) wantCodes(what string, want ...check.Code) {
	d.t.Helper()
	if got := codes(d.Now()); !slices.Equal(got, want) {
		d.t.Errorf("%s: findings %v, want %v", what, got, want)
	}
}

// solvedOnly runs the solving and nothing after it.
func (d *desk) solvedOnly() {
	d.t.Helper()
	d.work()
	d.tell()
}

func TestHowTheTubesGoInIsLookedAtBehindTheAnswer(t *testing.T) {
	d, f := fittingDesk(t)
	d.solvedOnly()
	if now := d.Now(); !now.Current() || !now.Fitting || f.asked != 0 {
		t.Fatalf("solved: current %v, fitting %v, asked %d times", now.Current(), now.Fitting, f.asked)
	}
	d.wantCodes("before it is known", check.NoDrain)
	d.settle()
	d.wantCodes("known", check.CannotBePutIn, check.NoDrain)
	if now := d.Now(); now.Fitting || now.List.PutIn == nil || !now.Current() {
		t.Errorf("known: fitting %v, current %v", now.Fitting, now.Current())
	}
	d.must(d.SetOnHand("plug", 3))
	d.solvedOnly()
	if now := d.Now(); now.Fitting || now.List.PutIn == nil || f.asked != 1 {
		t.Errorf("after an edit that does not matter: fitting %v, asked %d times", now.Fitting, f.asked)
	}
	d.wantCodes("after an edit that does not matter", check.CannotBePutIn, check.NoDrain)
}

func TestOldFindingsStayUntilLookedAtAgain(t *testing.T) {
	d, _ := fittingDesk(t)
	d.settle()
	d.must(d.MovePart("pump", mgl64.Vec3{300, 0, 0}))
	d.solvedOnly()
	d.wantCodes("moved, not looked at yet", check.CannotBePutIn, check.NoDrain)
	if now := d.Now(); !now.Fitting || now.List.PutIn != nil || len(now.List.WithoutOld().Findings) != 1 {
		t.Errorf("moved: fitting %v, %d findings are sure", now.Fitting, len(now.List.WithoutOld().Findings))
	}
	d.settle()
	d.wantCodes("looked at again", check.NoDrain)
	d.Undo()
	d.settle()
	d.wantCodes("undone", check.CannotBePutIn, check.NoDrain)
	d.must(d.RemoveRun("a"))
	d.solvedOnly()
	d.wantCodes("the run removed", check.NoDrain)
}

func TestALookAtAnOlderPlanIsDropped(t *testing.T) {
	d, f := fittingDesk(t)
	d.solvedOnly()
	d.work() // looked, its news still on the way
	d.must(d.MovePart("pump", mgl64.Vec3{300, 0, 0}))
	d.tell()
	if d.Now().List.PutIn != nil {
		t.Error("the order of an older plan is shown")
	}
	d.settle()
	d.wantCodes("moved", check.NoDrain)
	d.must(d.MovePart("pump", mgl64.Vec3{100, 0, 0}))
	d.solvedOnly()
	asked := f.asked
	d.must(d.MovePart("pump", mgl64.Vec3{310, 0, 0})) // before the look has begun
	d.settle()
	if f.asked != asked+1 {
		t.Errorf("looked %d times, want once, at the newest", f.asked-asked)
	}
}

func TestNobodyLooksInTheMiddleOfADrag(t *testing.T) {
	d, f := fittingDesk(t)
	d.settle()
	d.BeginDrag("Move pump")
	d.must(d.MovePart("pump", mgl64.Vec3{210, 0, 0}))
	d.settle()
	if now := d.Now(); f.asked != 1 || !now.Fitting {
		t.Errorf("dragging: asked %d times, fitting %v; want once and not known", f.asked, now.Fitting)
	}
	d.EndDrag()
	d.settle()
	if now := d.Now(); f.asked != 2 || now.Fitting {
		t.Errorf("let go: asked %d times, fitting %v", f.asked, now.Fitting)
	}
	d.wantCodes("let go", check.NoDrain)
}

func TestALookIsStoppedAndMadeAgain(t *testing.T) {
	d, f := fittingDesk(t)
	d.solvedOnly()
	d.Stop()
	d.settle()
	if now := d.Now(); now.Fitting || !errors.Is(now.Unfitted, session.ErrFittingStopped) || f.asked != 0 || now.Stopped {
		t.Errorf("stopped: %+v, asked %d times", now.Unfitted, f.asked)
	}
	d.SolveAgain()
	f.fail = errors.New("no room")
	d.settle()
	if now := d.Now(); now.Fitting || !errors.Is(now.Unfitted, f.fail) {
		t.Errorf("failed: fitting %v, why %v", now.Fitting, now.Unfitted)
	}
	f.fail = nil
	d.must(d.SetOnHand("plug", 3))
	d.settle()
	if now := d.Now(); now.Unfitted != nil || now.List.PutIn == nil {
		t.Errorf("after the next edit: %v", now.Unfitted)
	}
}

func TestWhatWasFoundGoesWithItsPlan(t *testing.T) {
	d, f := fittingDesk(t)
	d.settle()
	other := twoParts()
	other.Runs = []route.Run{{Name: "a"}}
	f.told = false
	d.Begin(other)
	d.solvedOnly()
	d.wantCodes("another plan with a run of that name", check.NoDrain)
}
