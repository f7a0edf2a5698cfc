//go:build window

package ui

import (
	"path/filepath"

	"tubewright/cutlist"
	"tubewright/route/check"
	"tubewright/route/find"
)

// isTheMuseumsMachine compares the saved plan with the demo's: where parts and
// ports stand, and what is joined.
func (m museum) isTheMuseumsMachine(path string) {
	got := m.planIn(path)
	if len(got.Parts) != len(m.want.Parts) || len(got.Runs) != len(m.want.Runs) || got.Case != m.want.Case || got.Saw.Kerf != 1.4 {
		m.t.Errorf("saved are %d parts, %d runs, a case of %v and a kerf of %v", len(got.Parts), len(got.Runs), got.Case, got.Saw.Kerf)
	}
	for _, placed := range m.want.PlaceAll() {
		k, ok := got.FindPart(placed.Part.Name)
		if !ok || k.Kind != placed.Part.Kind || !near(k.At, placed.Part.At) || !near(k.Turn, placed.Part.Turn) {
			m.t.Errorf("%s is saved as %+v, want it at %v turned by %v", placed.Part.Name, k, placed.Part.At, placed.Part.Turn)
		}
		for _, q := range placed.Ports {
			p, ok := got.FindPort(q.Ref)
			if !ok || p.Frame.At.Sub(q.Frame.At).Len() > 1e-6 || p.Frame.Dir.Sub(q.Frame.Dir).Len() > 1e-9 || p.Flow != q.Flow {
				m.t.Errorf("%s is saved at %v facing %v with coolant %q, want %v, %v and %q", q.Ref, p.Frame.At, p.Frame.Dir, p.Flow, q.Frame.At, q.Frame.Dir, q.Flow)
			}
		}
	}
	for i, r := range m.want.Runs {
		if i < len(got.Runs) && (got.Runs[i].From != r.From || got.Runs[i].To != r.To) {
			m.t.Errorf("run %d goes from %s to %s, want %s to %s", i+1, got.Runs[i].From, got.Runs[i].To, r.From, r.To)
		}
	}
	if r, _ := got.FindRun("processor-to-card"); r.Pick == "" {
		m.t.Error("no other way is saved")
	}
}

// isCutFrom works the saved plan out afresh: every run has a tube, nothing is an
// error, and the sheets tell the same cuts.
func (m museum) isCutFrom(path, dir string) {
	plan := m.planIn(path)
	sol, err := find.Solve(m.t.Context(), plan)
	if err != nil {
		m.t.Fatal(err)
	}
	l, err := cutlist.Build(m.t.Context(), plan, sol)
	if err != nil {
		m.t.Fatal(err)
	}
	for _, f := range l.Findings {
		if f.Severity == check.Error {
			m.t.Errorf("an error is left: %s %s", f.What, f.Fix)
		}
	}
	answer := m.answerIn(dir)
	if len(l.Tubes) != len(plan.Runs) || len(answer.Tubes) != len(l.Tubes) {
		m.t.Fatalf("%d runs have %d tubes, and %d on the sheets", len(plan.Runs), len(l.Tubes), len(answer.Tubes))
	}
	for i, tube := range l.Tubes {
		if a := answer.Tubes[i]; a.Run != tube.Run || a.Cut.Aim-tube.Cut.Aim > answerRounding || tube.Cut.Aim-a.Cut.Aim > answerRounding {
			m.t.Errorf("the sheets cut %s to %.3f, the plan %s to %.3f", a.Run, a.Cut.Aim, tube.Run, tube.Cut.Aim)
		}
	}
	if pdf, err := filepath.Glob(filepath.Join(dir, "*.pdf")); err != nil || len(pdf) != 1 {
		m.t.Errorf("the sheets are %v, %v", pdf, err)
	}
}
