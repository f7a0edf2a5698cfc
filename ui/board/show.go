package board

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// Show is what a picture shows besides the scene. The zero value is a quick
// picture of the bare scene.
type Show struct {
	Selection []Target
	Hover     Target
	Quality   Quality
	Scale     float64 // px of the picture per px of a plain screen; 0 counts as 1
	Words     bool    // names, letters, findings' measures
	Rulers    bool    // grid numbers, scale bar, axes
	Caption   string  // in the upper left corner
	Shift     Shift
	Guides    []Guide
	Greyed    []route.PortRef // ports that cannot be joined to the one in hand
	Rubber    *Rubber
	Path      *Path
	Measure   *Measure
	Points    []mgl64.Vec3 // clicked so far, of those asked for
	Focus     bool         // a line round the picture says that keys go here
	Frame     bool         // a fine line round the picture
}

// Shift draws a part elsewhere than the scene says, while it is dragged and the
// plan has not caught up.
type Shift struct {
	Part string
	By   mgl64.Vec3
}

// Guide is a line on which two ports look at each other.
type Guide struct {
	From, To route.PortRef
	A, B     mgl64.Vec3
	// Miss is how far the two still are from one line, across the look and so
	// not to be mended in it, mm; 0 when a straight tube would join them.
	Miss float64
}

// Rubber is the line from a port in hand to the pointer or to another port.
type Rubber struct {
	From, To mgl64.Vec3
	Why      string // why the two cannot be joined; "" when they can, or there is only one
	Joins    bool   // To is a port
}

// Path is the corners of a run that can be taken hold of.
type Path struct {
	Corners []mgl64.Vec3
	Chosen  int // index of the corner in hand, -1 for none
}

// Measure is a length taken with the measuring tool.
type Measure struct {
	A, B mgl64.Vec3
	Both bool // B counts
}

func (s *Show) scale() float64 {
	if s.Scale <= 0 {
		return 1
	}
	return s.Scale
}

func (s *Show) chosen(t Target) bool {
	for _, c := range s.Selection {
		if c.Same(t) {
			return true
		}
	}
	return false
}

// Text writes a measure: the distance, and its share along each axis.
func (m Measure) Text(u route.Units) string {
	d := m.B.Sub(m.A)
	return u.TextUnit(d.Len()) + "   x " + u.Text(d[0]) + "  y " + u.Text(d[1]) + "  z " + u.Text(d[2])
}

// hovered reports whether a target is under the pointer and not chosen.
func (s *Show) hovered(t Target) bool {
	return s.Hover.Kind != Nothing && s.Hover.Same(t) && !s.chosen(t)
}
