// Package survey takes ports measured in the case back into a plan: which wall
// each distance is taken from, what a part's ports say of the part together, and
// the plan that comes of it.
//
// Lengths are millimetres and angles degrees, in the case's frame. Plans are
// values: nothing here writes to the plan it is given.
package survey

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// Wall is a face of the case that a distance is taken from.
type Wall string

// The six faces: x runs from left to right, y from the floor to the top, z from
// the back to the front, which is the open side.
const (
	Left  Wall = "left"
	Right Wall = "right"
	Floor Wall = "floor"
	Top   Wall = "top"
	Back  Wall = "back"
	Front Wall = "front"
)

// walls by axis: the near one, from which coordinates count, and the far one.
var walls = [3][2]Wall{{Left, Right}, {Floor, Top}, {Back, Front}}

// place is the axis of a wall and whether it is the far one.
func (w Wall) place() (axis int, far, ok bool) {
	for a, pair := range walls {
		for i, name := range pair {
			if name == w {
				return a, i == 1, true
			}
		}
	}
	return 0, false, false
}

// String names the wall in a sentence: "left wall", "floor".
func (w Wall) String() string {
	switch w {
	case Floor, Top, Front:
		return string(w)
	case Left, Right, Back:
	}
	return string(w) + " wall"
}

// Row is one port on the survey sheet.
type Row struct {
	Ref    route.PortRef
	Letter string     // of the port on its part's drawing: a, b, c, ...
	From   [3]Wall    // the faces to measure x, y and z from
	Plan   [3]float64 // what the plan has, mm from those faces
	Facing string     // as the plan has it, in the case: "+x", or three numbers
	Thread string
	Known  route.KnownFrom
}

// Group is the ports of one part.
type Group struct {
	Part string
	Rows []Row
}

// Groups lists the ports of every part that has some, in the plan's order.
//
// Which wall: z always from the back, since the front is open while one works.
// x and y from the wall that is nearer to the middle of the part's ports: short
// distances are read better; the left wall and the floor where it is a draw. All
// ports of a part are measured from the same walls, so that they can be held
// against each other even where the case is a little off.
func Groups(plan route.Plan) (all []Group) {
	for _, part := range plan.PlaceAll() {
		if len(part.Ports) == 0 {
			continue
		}
		from := wallsFor(plan.Case, part.Ports)
		g := Group{Part: part.Part.Name}
		for i, q := range part.Ports {
			g.Rows = append(g.Rows, Row{
				Ref: q.Ref, Letter: Letter(i), From: from, Plan: Distances(plan.Case, q.Frame.At, from),
				Facing: FacingText(q.Frame.Dir), Thread: q.Thread, Known: q.KnownFrom,
			})
		}
		all = append(all, g)
	}
	return all
}

// Letter is what the port at a place of its part is called: a, b, ... z, aa, ...
// It is empty below 0.
func Letter(n int) string {
	if n < 0 {
		return ""
	}
	return Letter(n/26-1) + string(rune('a'+n%26))
}

// aDraw is how much nearer the far wall must be to be taken, mm: less is no help.
const aDraw = 5.0

func wallsFor(size mgl64.Vec3, ports []route.PlacedPort) [3]Wall {
	var sum mgl64.Vec3
	for _, q := range ports {
		sum = sum.Add(q.Frame.At)
	}
	mid := sum.Mul(1 / float64(len(ports)))
	from := [3]Wall{Left, Floor, Back}
	for axis := range 2 {
		if near := mid[axis]; size[axis]-near < near-aDraw {
			from[axis] = walls[axis][1]
		}
	}
	return from
}

// Distances are how far a point is from three walls, one for each axis, mm.
func Distances(size, at mgl64.Vec3, from [3]Wall) (d [3]float64) {
	for axis, w := range from {
		d[axis] = at[axis]
		if _, far, _ := w.place(); far {
			d[axis] = size[axis] - at[axis]
		}
	}
	return d
}

// Reading is a port as it was measured.
type Reading struct {
	Ref      route.PortRef
	From     [3]Wall    // of x, y and z
	Distance [3]float64 // from those faces, mm
	Facing   mgl64.Vec3 // unit, in the case; zero: as the plan has it
	Thread   string     // empty: as the plan has it
}

// At is the point the reading means, in the case.
func (r Reading) At(size mgl64.Vec3) (at mgl64.Vec3) {
	for axis, w := range r.From {
		at[axis] = r.Distance[axis]
		if _, far, _ := w.place(); far {
			at[axis] = size[axis] - r.Distance[axis]
		}
	}
	return at
}
