// Package draw holds a drawing as a list of lines, arcs, fills and texts in
// millimetres on paper, so that a page, a file and the window show the same
// picture. x runs right and y down from the drawing's upper left corner.
package draw

// Colour is red, green, blue; 0 to 255.
type Colour struct{ R, G, B uint8 }

// Point is a place on the paper, mm.
type Point struct{ X, Y float64 }

// Stroke is how a line looks. Dash is lengths of line and gap in turn; nil is solid.
type Stroke struct {
	Width  float64 // mm
	Colour Colour
	Dash   []float64
}

// Item is one thing drawn: a Line, Arc, Fill or Text.
type Item interface{ item() }

// Line joins its points in turn.
type Line struct {
	Points []Point
	Stroke Stroke
}

// Arc is part of a circle from angle From over Sweep degrees; 0 points right, 90 down.
type Arc struct {
	Centre              Point
	Radius, From, Sweep float64
	Stroke              Stroke
}

// Fill is a closed polygon filled with a colour and, when Stroke has a width, outlined.
type Fill struct {
	Points []Point
	Colour Colour
	Stroke Stroke
}

// Align says which point of a text stands at its At.
type Align int

// Along the text; the baseline counts across.
const (
	Left Align = iota
	Centre
	Right
)

// Text is one line of writing. Size is the height of the type in mm; Turn is
// degrees clockwise.
type Text struct {
	At     Point
	Text   string
	Size   float64
	Bold   bool
	Align  Align
	Turn   float64
	Colour Colour
}

func (Line) item() {}
func (Arc) item()  {}
func (Fill) item() {}
func (Text) item() {}

// Drawing is a list of items, painted in order, and its size in mm.
type Drawing struct {
	W, H  float64
	Items []Item
}

// Add paints items on top.
func (d *Drawing) Add(items ...Item) { d.Items = append(d.Items, items...) }
