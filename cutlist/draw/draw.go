// Package draw holds a drawing as a list of lines, arcs, fills and texts in
// millimetres on paper, so that a page, a file and the window show the same
// picture. x runs right and y down from the drawing's upper left corner.
//
// [PDF] writes drawings as the pages of a document, [SVG] one as a scalable
// picture, [Raster] paints one into a picture of pixels, and [TextWidth] measures
// writing for all of them: they share the Go fonts, which hold the Latin, Greek
// and Cyrillic letters.
package draw

// Colour is red, green, blue; 0 to 255.
type Colour struct{ R, G, B uint8 }

// Point is a place on the paper, mm.
type Point struct{ X, Y float64 }

// Stroke is how a line looks. Dash is lengths of line and gap in turn; nil is
// solid. Ends are cut square at the last point, corners are round.
type Stroke struct {
	Width  float64 // mm
	Colour Colour
	Dash   []float64
	Skip   float64 // how far into Dash the line starts, mm, 0 or more
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

// Text is one line of writing. Size is the height of the type (its em) in mm;
// Turn is degrees clockwise about At. Characters that the fonts lack are
// written as a hollow square, see [Writable].
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
	Name  string // of a page, for a document's outline; may be empty
	Items []Item
}

// Add paints items on top.
func (d *Drawing) Add(items ...Item) { d.Items = append(d.Items, items...) }

// Place paints another drawing on top with its upper left corner at a point.
func (d *Drawing) Place(other Drawing, at Point) {
	for _, it := range other.Items {
		d.Items = append(d.Items, moved(it, at))
	}
}

// moved gives an item shifted by a distance.
func moved(it Item, by Point) Item {
	switch it := it.(type) {
	case Line:
		it.Points = movedAll(it.Points, by)
		return it
	case Fill:
		it.Points = movedAll(it.Points, by)
		return it
	case Arc:
		it.Centre = it.Centre.Plus(by)
		return it
	case Text:
		it.At = it.At.Plus(by)
		return it
	}
	return it
}

func movedAll(points []Point, by Point) []Point {
	out := make([]Point, len(points))
	for i, p := range points {
		out[i] = p.Plus(by)
	}
	return out
}

// Plus is p shifted by q.
func (p Point) Plus(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Minus is p as seen from q.
func (p Point) Minus(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times is p stretched from the origin.
func (p Point) Times(k float64) Point { return Point{p.X * k, p.Y * k} }
