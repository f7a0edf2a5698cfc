package board

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/check"
)

// Scene is a solved plan as things to draw. It is made once for each change of
// the plan and never changed after; views share it.
type Scene struct {
	Case     mgl64.Vec3
	Units    route.Units
	Parts    []ScenePart
	Ports    []ScenePort
	Tubes    []SceneTube
	Findings []SceneFinding
	Under    []Underlay // lowest first

	targets []Target // by id; index 0 is Nothing
	solids  []solid
	mesh    mesh
}

// ScenePart is a part as the board shows it.
type ScenePart struct {
	Name   string
	Kind   string
	Origin mgl64.Vec3 // where the part's own origin stands
	Lo, Hi mgl64.Vec3 // the box around its solids

	id uint16
}

// ScenePort is a port as the board shows it.
type ScenePort struct {
	Ref    route.PortRef
	Frame  route.Frame
	Thread string
	Flow   route.Flow
	Run    string  // a run that ends here; "" when the port is free
	Radius float64 // of its disc, mm

	id uint16
}

// Used reports whether a run ends at the port.
func (p ScenePort) Used() bool { return p.Run != "" }

// SceneTube is a run's tube as the board shows it.
type SceneTube struct {
	Run     string
	Letter  string // "" without a tube
	Colour  int    // index into the style's tubes
	Corners []mgl64.Vec3
	OD      float64
	Drawn   bool // the person's own path
	Broken  bool // there is no tube; Corners say where one was asked for

	whole  uint16
	pieces []scenePiece
}

// scenePiece is a straight (even index) or a bend of a tube.
type scenePiece struct {
	id       uint16
	index    int
	from, to mgl64.Vec3
}

func (p scenePiece) straight() bool { return p.index%2 == 0 }

// SceneFinding is a finding that has a place.
type SceneFinding struct {
	Index    int // in the list's findings
	Severity check.Severity
	At       mgl64.Vec3
	Gap      string // its measure with the unit
	What     string

	about []Target
}

// Bounds gives the box around the case and everything in it.
func (s *Scene) Bounds() (lo, hi mgl64.Vec3) {
	hi = s.Case
	for _, v := range s.mesh.at {
		for k := range 3 {
			lo[k], hi[k] = min(lo[k], float64(v[k])), max(hi[k], float64(v[k]))
		}
	}
	return lo, hi
}

// Part gives the part called name.
func (s *Scene) Part(name string) (ScenePart, bool) {
	for _, p := range s.Parts {
		if p.Name == name {
			return p, true
		}
	}
	return ScenePart{}, false
}

// Port gives a port.
func (s *Scene) Port(ref route.PortRef) (ScenePort, bool) {
	for _, p := range s.Ports {
		if p.Ref == ref {
			return p, true
		}
	}
	return ScenePort{}, false
}

// Tube gives the tube of a run.
func (s *Scene) Tube(run string) (SceneTube, bool) {
	for _, t := range s.Tubes {
		if t.Run == run {
			return t, true
		}
	}
	return SceneTube{}, false
}

// WhyNot gives the reason why two ports cannot be joined by a run; "" when they
// can: a port takes one tube, and coolant does not run from outlet to outlet.
func (s *Scene) WhyNot(from, to route.PortRef) string {
	a, okA := s.Port(from)
	b, okB := s.Port(to)
	switch {
	case !okA || !okB:
		return "there is no such port"
	case from == to:
		return "a run needs two ports"
	case a.Used():
		return from.String() + " already holds " + a.Run
	case b.Used():
		return to.String() + " already holds " + b.Run
	case a.Flow == b.Flow && a.Flow == route.Out:
		return "both ports let coolant out"
	case a.Flow == b.Flow && a.Flow == route.In:
		return "both ports take coolant in"
	}
	return ""
}
