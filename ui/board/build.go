package board

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/clear"
	"tubewright/route/find"
)

// NewScene makes a scene of a plan and what was found for it. The
// findings are the list's. Neither plan nor answers are written to.
func NewScene(plan route.Plan, list cutlist.List, sol find.Solution) Scene {
	s := Scene{Case: plan.Case, Units: plan.Units, targets: []Target{{}}, mesh: newMesh()}
	ends := runEnds(plan, sol)
	all := plan.PlaceAll()
	tints := tintsOf(all)
	for i, placed := range all {
		s.addPart(placed, tints[i])
		for _, port := range placed.Ports {
			s.addPort(port, ends[port.Ref])
		}
	}
	for i, solved := range sol.Runs {
		s.addRun(i, solved)
	}
	for i, f := range list.Findings {
		s.addFinding(i, f)
	}
	return s
}

// runEnd is a run that ends at a port and the size of what stands on it there.
type runEnd struct {
	run    string
	radius float64
}

// runEnds tells for each port which run ends there; the plan's first has it.
func runEnds(plan route.Plan, sol find.Solution) map[route.PortRef]runEnd {
	ends := map[route.PortRef]runEnd{}
	add := func(ref route.PortRef, e runEnd) {
		if _, taken := ends[ref]; !taken {
			ends[ref] = e
		}
	}
	for _, solved := range sol.Runs {
		if way, ok := solved.Way(); ok {
			add(solved.Run.From, runEnd{solved.Run.Name, foot(way.Start)})
			add(solved.Run.To, runEnd{solved.Run.Name, foot(way.End)})
		}
	}
	for _, r := range plan.Runs {
		add(r.From, runEnd{run: r.Name})
		add(r.To, runEnd{run: r.Name})
	}
	return ends
}

// foot is the radius of the fitting that stands on the port, mm.
func foot(laid route.Laid) float64 {
	if len(laid.Bodies) == 0 {
		return 0
	}
	f := laid.Bodies[0].Fitting
	if f.Kind == route.Socket {
		return f.Collar.OD / 2
	}
	return f.Body / 2
}

// id gives a target its number.
func (s *Scene) id(t Target) uint16 {
	if len(s.targets) > math.MaxUint16 {
		return 0 // so many that a pixel's width would hold thousands; they are drawn but cannot be pointed at
	}
	s.targets = append(s.targets, t)
	return uint16(len(s.targets) - 1)
}

func (s *Scene) addPart(placed route.Placed, tint ink) {
	p := placed.Part
	id := s.id(PartTarget(p.Name))
	first := len(s.mesh.at)
	for _, shape := range placed.Solids {
		s.body(id, len(s.Parts), tint, func(m *mesh) { m.shape(shape) })
	}
	lo, hi := p.At, p.At
	if len(s.mesh.at) > first {
		l, h := bounds(s.mesh.at[first:])
		lo, hi = l.wide(), h.wide()
	}
	s.Parts = append(s.Parts, ScenePart{Name: p.Name, Kind: p.Kind, Origin: p.At, Lo: lo, Hi: hi, id: id})
}

// tintsOf chooses each part's tint by its kind, else by its name, so that a part
// keeps its tint when others come and go. Where two would share one, the later
// takes the next that is free while there is any.
func tintsOf(parts []route.Placed) []ink {
	const n = int(inkTube - inkTint)
	tints, owner := make([]ink, len(parts)), [n]string{}
	for i, p := range parts {
		word := p.Part.Kind
		if word == "" {
			word = p.Part.Name
		}
		first := int(hash(word) % uint32(n))
		tints[i] = inkTint + ink(first)
		for k := range n {
			if t := (first + k) % n; owner[t] == "" || owner[t] == word {
				tints[i], owner[t] = inkTint+ink(t), word
				break
			}
		}
	}
	return tints
}

// hash is FNV-1a in 32 bits: the same on every machine.
func hash(word string) uint32 {
	h := uint32(2166136261)
	for i := range len(word) {
		h = (h ^ uint32(word[i])) * 16777619
	}
	return h
}

// shape adds one of the shapes that parts and fittings are made of.
func (m *mesh) shape(shape clear.Shape) {
	switch k := shape.(type) {
	case clear.Box:
		m.box(k.Centre, k.Axes, k.Half)
	case clear.Cylinder:
		m.cylinder(k.From, k.To, k.Radius)
	case clear.Rod:
		m.rod(k.From, k.To, k.Radius)
	}
}

func (s *Scene) addFinding(i int, f check.Finding) {
	if !f.Placed {
		return
	}
	mark := SceneFinding{
		Index: i, Severity: f.Severity, At: mgl64.Vec3(f.At), Gap: gapText(s.Units, f), What: f.What,
	}
	for _, r := range f.Runs {
		mark.about = append(mark.about, RunTarget(r))
	}
	for _, p := range f.Parts {
		mark.about = append(mark.about, PartTarget(p))
	}
	s.Findings = append(s.Findings, mark)
}

// gapText writes a finding's measure; "" when it has none.
func gapText(u route.Units, f check.Finding) string {
	switch f.Unit {
	case "mm":
		return u.TextUnit(f.Measure)
	case "deg":
		return route.Degrees(f.Measure)
	case "":
		return ""
	}
	return route.Millimetres.Text(f.Measure) + " " + f.Unit
}
