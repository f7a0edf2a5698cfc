package find

import (
	"reflect"
	"slices"

	"tubewright/route"
	"tubewright/route/clear"
)

// scene is a plan made ready for searching. But for its racks it is never written
// to once made.
type scene struct {
	plan     route.Plan
	placed   []route.Placed
	fittings []route.Fitting
	parts    []solid // every solid of every part, part by part
	first    []int   // of each part its first solid; one more for the end
	index    *clear.Index
	walls    []wall           // of the parts, in the case's frame
	racks    map[string]*rack // by thread, filled as they are asked for
}

// solid is something a run must keep away from.
type solid struct {
	shape  clear.Shape
	lo, hi vec    // bounds of the shape
	part   int    // index among the placed parts; −1 for another run's
	name   string // of the part or the run
}

func newSolid(shape clear.Shape, part int, name string) solid {
	lo, hi := shape.Bounds()
	return solid{shape, lo, hi, part, name}
}

func newScene(plan route.Plan) *scene {
	sc := &scene{plan: plan, placed: plan.PlaceAll(), fittings: plan.AllFittings(), racks: map[string]*rack{}}
	var shapes []clear.Shape
	for i, p := range sc.placed {
		sc.first = append(sc.first, len(sc.parts))
		for _, s := range p.Solids {
			sc.parts, shapes = append(sc.parts, newSolid(s, i, p.Part.Name)), append(shapes, s)
			sc.walls = append(sc.walls, newWall(worldAxes(), s, 0))
		}
	}
	sc.first = append(sc.first, len(sc.parts))
	sc.index = clear.NewIndex(shapes)
	return sc
}

// borrow takes over the racks of a scene with the same fittings: they take long to
// fill.
func (sc *scene) borrow(from *scene) {
	if reflect.DeepEqual(sc.fittings, from.fittings) {
		sc.fittings, sc.racks = from.fittings, from.racks
	}
}

// solidsOf are the solids of a part.
func (sc *scene) solidsOf(part int) []solid { return sc.parts[sc.first[part]:sc.first[part+1]] }

// port finds a port where it stands, and the index of its part.
func (sc *scene) port(ref route.PortRef) (route.PlacedPort, int, bool) {
	for i, p := range sc.placed {
		for _, q := range p.Ports {
			if q.Ref == ref {
				return q, i, true
			}
		}
	}
	return route.PlacedPort{}, 0, false
}

// fitting finds a fitting by name.
func (sc *scene) fitting(name string) (*route.Fitting, bool) {
	i := slices.IndexFunc(sc.fittings, func(f route.Fitting) bool { return f.Name == name })
	if i < 0 {
		return nil, false
	}
	return &sc.fittings[i], true
}

// longestStock is the longest bar a tube can be cut from; 0 when the plan lists
// none, which leaves the length open.
func (sc *scene) longestStock(tube string) float64 {
	longest := 0.0
	for _, s := range sc.plan.Stock {
		if s.Tube == tube {
			longest = max(longest, s.Length)
		}
	}
	if longest == 0 {
		return 0
	}
	for _, o := range sc.plan.Offcuts {
		if o.Tube == tube {
			longest = slices.Max(append([]float64{longest}, o.Lengths...))
		}
	}
	return longest
}
