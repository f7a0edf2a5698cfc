// Package session holds the open plan: its file, its history of edits and the
// answer to it, solved in the background. It knows no widget and no window.
//
// A session lives on one goroutine, the window's: its methods are called there,
// and what its workers find comes back there through [Tools.Dispatch]. A plan
// is never written to: an edit works on a copy, and workers get plans that no
// one changes any more. Lengths are millimetres, angles degrees.
package session

import (
	"context"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
	"tubewright/route/insert"
	"tubewright/route/mend"
)

// Tools are what a session works with. Any may be replaced in tests; those of
// [NewTools] are the real ones.
type Tools struct {
	Solve func(context.Context, route.Plan) (find.Solution, error)
	// Solver gives what to solve a newly opened plan with, so that what was learnt
	// of one plan goes when it is closed; nil: Solve serves every plan.
	Solver func() func(context.Context, route.Plan) (find.Solution, error)
	Build  func(context.Context, route.Plan, find.Solution) (cutlist.List, error)
	// Advise looks for ways out of a finding.
	Advise func(context.Context, route.Plan, find.Solution, check.Finding, mend.Search) (mend.Advice, error)
	// Insertion gives what looks how the tubes of a newly opened plan go in; nil:
	// nobody does.
	Insertion func() Insertion
	// Rest waits until the person has likely made the next edit, or the context
	// ends; nil: not at all.
	Rest func(context.Context)
	// Go starts work off the session's goroutine.
	Go func(work func())
	// Dispatch runs a task on the session's goroutine, later or at once, and
	// tasks in the order they came.
	Dispatch func(task func())
}

// Insertion looks how tubes go in. It is asked by several goroutines at a time.
type Insertion interface {
	// Known tells it where nothing has to be looked for.
	Known(route.Plan, find.Solution) (insert.Report, bool)
	Machine(context.Context, route.Plan, find.Solution) (insert.Report, error)
}

// Snapshot is all that a window shows of a session. Plan is the newest;
// Solution and List may still belong to an older one while Solving.
type Snapshot struct {
	Plan     route.Plan
	Solution find.Solution
	List     cutlist.List

	Version int // of Plan: grows with every edit, undo, redo and opening
	Solved  int // version the Solution belongs to; 0: none yet
	Listed  int // version the List belongs to; 0: none yet
	Solving bool
	Stopped bool // the person stopped the solving of this version
	Err     error
	Trouble error // with the journal; nil: none

	Path       string // of the file; empty: not saved yet
	Dirty      bool   // changed since it was opened or saved
	Undo, Redo string // what each would take back or do again; empty: nothing
	Units      route.Units
	Open       bool // there is a plan at all
	WayOut     WayOut

	// Fitting says that it is not known yet how the tubes of the newest List go in:
	// it is being looked at, or will be when the part that is dragged is let go.
	// Findings about it in the List are of an older plan then.
	Fitting bool
	// Unfitted says why nobody looks, though it is not known: [ErrFittingStopped], or
	// what the look broke off with.
	Unfitted error
}

// Current reports whether the answer belongs to the plan that is shown.
func (s Snapshot) Current() bool {
	return s.Open && !s.Solving && s.Err == nil && s.Listed == s.Version
}

// Session is the open plan. See the package comment for who may call it.
type Session struct {
	tools   Tools
	watch   func(Snapshot)
	history history
	file    file
	units   route.Units
	version int
	answer  answer
	solver  solver
	journal *Journal
	trouble error
	outlook *outlook // nil: nobody asked for ways out

	insertion Insertion // of the open plan; nil: nobody looks how tubes go in
	fitting   *fitting  // nil: it is not being looked how the tubes go in
}

// answer is the newest that the workers brought.
type answer struct {
	solution       find.Solution
	list           cutlist.List
	solved, listed int
	stopped        bool
	err            error
	old            []check.Finding // the newest of how tubes go in
	unfitted       error
}

// New gives a session with no plan. watch is told every change, on the
// session's goroutine.
func New(tools Tools, watch func(Snapshot)) *Session {
	if tools.Advise == nil {
		tools.Advise = cutlist.Offers
	}
	return &Session{tools: tools, watch: watch, units: route.Millimetres}
}

// Now gives what the window should show at this moment.
func (s *Session) Now() Snapshot {
	now := Snapshot{
		Plan: s.history.plan(), Solution: s.answer.solution, List: s.answer.list,
		Version: s.version, Solved: s.answer.solved, Listed: s.answer.listed,
		Solving: s.solver.busy(), Stopped: s.answer.stopped, Err: s.answer.err, Trouble: s.trouble,
		Path: s.file.path, Dirty: s.history.dirty(),
		Undo: s.history.undoName(), Redo: s.history.redoName(),
		Units: s.units, Open: s.history.open(),
		Unfitted: s.answer.unfitted,
	}
	now.Fitting = s.insertion != nil && now.Current() && now.List.PutIn == nil && now.Unfitted == nil
	if s.outlook != nil {
		now.WayOut = s.outlook.now
	}
	return now
}

func (s *Session) publish() { s.watch(s.Now()) }

// SetUnits says what lengths are shown in. It changes no plan and no file.
func (s *Session) SetUnits(u route.Units) {
	s.units = u
	s.publish()
}

// Begin shows a plan that comes from no file.
func (s *Session) Begin(plan route.Plan) { s.begin(plan, file{}) }

// begin shows a plan that was just opened, with no answer yet.
func (s *Session) begin(plan route.Plan, from file) {
	s.history = newHistory(plan)
	s.file = from
	s.units = plan.Units
	s.answer = answer{}
	if s.tools.Solver != nil {
		s.tools.Solve = s.tools.Solver()
	}
	s.insertion = nil
	if s.tools.Insertion != nil {
		s.insertion = s.tools.Insertion()
	}
	s.changed()
}

// changed is called after every change of the plan.
func (s *Session) changed() {
	s.version++
	s.forgetWayOut()
	s.endFitting()
	s.answer.stopped, s.answer.err = false, nil
	s.solve()
	s.publish()
}
