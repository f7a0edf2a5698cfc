package check

import (
	"cmp"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/find"
)

const (
	// Rounding is what a gap may lack without a finding, mm: noise of the
	// arithmetic and of the arcs' chords, a tenth of what is written.
	Rounding = 0.001
	// PartSlack is how deep parts may overlap, or stand past a wall, without a
	// finding, mm: parts are meant to touch (a fan on its radiator, a card in
	// its board), and their sizes are not known better than this.
	PartSlack = 0.05
)

// severities is the severity of each kind of finding.
var severities = map[Code]Severity{
	LoopOpen:    Warning,
	MixedMetals: Warning,
	NoDrain:     Warning,
	NoFill:      Warning,
	InOrderOnly: Note, ServiceBlocked: Note,
	PortOpen: Note, StockAssumed: Note, TrialDiffers: Note,
}

// SeverityOf gives the severity of a kind of finding.
func SeverityOf(code Code) Severity {
	if s, ok := severities[code]; ok {
		return s
	}
	return Error
}

// Findings lists what is wrong in a plan as solved, or wants a look: the
// gravest first, then by code, runs and parts. Of each pair of things that come
// too near only the worst place is told. Runs without a way have no tube and no
// fittings to check. Findings about stock are package tubewright/cutlist's.
func Findings(plan route.Plan, sol find.Solution) []Finding {
	r := referee{plan: plan, parts: standing(plan)}
	for _, s := range sol.Runs {
		r.assemble(s)
	}
	r.checkForming(sol)
	r.checkSeats()
	r.checkMade()
	r.checkRunsAndParts()
	r.checkRuns()
	r.checkTurning()
	r.checkParts()
	r.checkWalls()
	r.checkPorts()
	r.checkSizes()
	r.checkThreads()
	r.checkCoolant(sol)
	r.checkTrials()
	Sort(r.found)
	return r.found
}

// referee is one reading of a plan.
type referee struct {
	plan  route.Plan
	parts []standPart
	runs  []laidRun // those with a way
	found []Finding
}

// tell adds a finding. Its severity is that of its code.
func (r *referee) tell(f Finding) {
	f.Severity = SeverityOf(f.Code)
	f.Runs, f.Parts = notNil(f.Runs), notNil(f.Parts)
	r.found = append(r.found, f)
}

// notNil gives a list that JSON writes as [] when it is empty.
func notNil(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

// at places a finding.
func (f Finding) at(p mgl64.Vec3) Finding {
	f.At, f.Placed = p, true
	return f
}

// Sort puts findings in their order: gravest first, then code, runs, parts and
// the sentence.
func Sort(list []Finding) {
	slices.SortStableFunc(list, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(grave(a.Severity), grave(b.Severity)),
			cmp.Compare(a.Code, b.Code),
			slices.Compare(a.Runs, b.Runs),
			slices.Compare(a.Parts, b.Parts),
			cmp.Compare(a.What, b.What),
		)
	})
}

func grave(s Severity) int {
	switch s {
	case Error:
		return 0
	case Warning:
		return 1
	case Note:
	}
	return 2
}
