package draw

import (
	"image"
	"image/color"
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// Raster paints a drawing into a picture with smoothed edges. The drawing's
// upper left corner falls on that of the picture's bounds; scale is pixels per
// millimetre. What reaches past the picture is cut off; the picture's own
// background shows where nothing is painted. Items with a point that is not a
// finite number are left out.
func Raster(img *image.RGBA, d Drawing, scale float64) {
	r := &rasterPen{img: img, scale: scale}
	for _, it := range d.Items {
		r.paint(it)
	}
}

type rasterPen struct {
	img   *image.RGBA
	scale float64
	ink   vector.Rasterizer
	buf   sfnt.Buffer
}

func (r *rasterPen) paint(it Item) {
	switch it := it.(type) {
	case Line:
		r.line(it.Points, it.Stroke)
	case Arc:
		r.line(r.chords(it), it.Stroke)
	case Fill:
		if len(it.Points) < 3 {
			return
		}
		r.fill([][]Point{r.pixels(it.Points)}, it.Colour)
		r.line(append(it.Points[:len(it.Points):len(it.Points)], it.Points[0]), it.Stroke)
	case Text:
		r.text(it)
	}
}

// flat is how far a chord may leave its arc, in pixels: too little to see.
const flat = 0.05

// chords gives an arc as points near enough to look round.
func (r *rasterPen) chords(a Arc) []Point {
	px := math.Max(a.Radius*r.scale, 2*flat)
	step := 2 * math.Acos(1-flat/px) * 180 / math.Pi
	n := max(1, min(int(math.Abs(a.Sweep)/step)+1, 2000))
	points := make([]Point, n+1)
	for i := range points {
		points[i] = a.At(a.From + a.Sweep*float64(i)/float64(n))
	}
	return points
}

func (r *rasterPen) pixels(points []Point) []Point {
	out := make([]Point, len(points))
	for i, p := range points {
		out[i] = p.Times(r.scale)
	}
	return out
}

// hairline is the thinnest line that is painted, in pixels: thinner ones would
// fade where they should only be fine.
const hairline = 0.6

// line strokes points in mm with a width in mm.
func (r *rasterPen) line(points []Point, s Stroke) {
	if s.Width <= 0 || len(points) < 2 {
		return
	}
	half := math.Max(s.Width*r.scale, hairline) / 2
	var shapes [][]Point
	for _, part := range dashed(points, s.Dash, s.Skip) {
		shapes = append(shapes, outline(r.pixels(part), half)...)
	}
	r.fill(shapes, s.Colour)
}

// fill paints polygons in pixels as one shape; they all go round the same way,
// so where they overlap they are painted once.
func (r *rasterPen) fill(polygons [][]Point, c Colour) {
	box := r.box(polygons)
	if box.Empty() {
		return
	}
	r.ink.Reset(box.Dx(), box.Dy())
	at := Point{float64(box.Min.X), float64(box.Min.Y)}
	for _, poly := range polygons {
		for i, p := range poly {
			q := p.Minus(at)
			if i == 0 {
				r.ink.MoveTo(float32(q.X), float32(q.Y))
			} else {
				r.ink.LineTo(float32(q.X), float32(q.Y))
			}
		}
		r.ink.ClosePath()
	}
	r.pour(box, c)
}

// pour puts what the rasterizer holds into the picture.
func (r *rasterPen) pour(box image.Rectangle, c Colour) {
	src := image.NewUniform(color.RGBA{c.R, c.G, c.B, 255})
	r.ink.Draw(r.img, box.Add(r.img.Rect.Min), src, image.Point{})
}

// box is the part of the picture, counted from its corner, that polygons reach.
func (r *rasterPen) box(polygons [][]Point) image.Rectangle {
	lo, hi := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, poly := range polygons {
		for _, p := range poly {
			if math.IsNaN(p.X-p.X) || math.IsNaN(p.Y-p.Y) { // NaN or infinite
				return image.Rectangle{}
			}
			lo = Point{math.Min(lo.X, p.X), math.Min(lo.Y, p.Y)}
			hi = Point{math.Max(hi.X, p.X), math.Max(hi.Y, p.Y)}
		}
	}
	size := r.img.Rect.Size()
	w, h := float64(size.X), float64(size.Y)
	return image.Rect(int(clamp(math.Floor(lo.X), w)), int(clamp(math.Floor(lo.Y), h)),
		int(clamp(math.Ceil(hi.X), w)), int(clamp(math.Ceil(hi.Y), h)))
}

func clamp(v, most float64) float64 { return math.Max(0, math.Min(v, most)) }

// text paints the outlines of letters, each at its own fraction of a pixel.
func (r *rasterPen) text(t Text) {
	fc := faceFor(t.Bold)
	size := t.Size * r.scale
	if size <= 0 || math.IsNaN(size-size) {
		return
	}
	x := t.start()
	for _, c := range Writable(t.Text) {
		at := t.At.Plus(Point{x, 0}.turned(t.Turn)).Times(r.scale)
		r.glyph(fc, c, at, size, t)
		x += fc.advance[c] * t.Size
	}
}

// glyph paints one letter of a size in pixels with its origin at a point.
func (r *rasterPen) glyph(fc *face, c rune, at Point, size float64, t Text) {
	segments := fc.outline(&r.buf, c)
	place := func(p fixed.Point26_6) Point {
		k := size / fc.units / 64
		return Point{float64(p.X) * k, float64(p.Y) * k}.turned(t.Turn).Plus(at)
	}
	var corners []Point
	for _, s := range segments {
		for _, p := range s.Args[:args(s.Op)] {
			corners = append(corners, place(p))
		}
	}
	box := r.box([][]Point{corners})
	if len(corners) == 0 || box.Empty() {
		return
	}
	r.ink.Reset(box.Dx(), box.Dy())
	from := Point{float64(box.Min.X), float64(box.Min.Y)}
	r.trace(segments, func(p fixed.Point26_6) (x, y float32) {
		q := place(p).Minus(from)
		return float32(q.X), float32(q.Y)
	})
	r.pour(box, t.Colour)
}

// args is how many points a segment of a letter has.
func args(op sfnt.SegmentOp) int {
	switch op {
	case sfnt.SegmentOpQuadTo:
		return 2
	case sfnt.SegmentOpCubeTo:
		return 3
	case sfnt.SegmentOpMoveTo, sfnt.SegmentOpLineTo:
	}
	return 1
}

// trace draws a letter's outline. TrueType letters have lines and quadratic
// curves only.
func (r *rasterPen) trace(segments sfnt.Segments, place func(fixed.Point26_6) (x, y float32)) {
	for i, s := range segments {
		x, y := place(s.Args[0])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				r.ink.ClosePath()
			}
			r.ink.MoveTo(x, y)
		case sfnt.SegmentOpLineTo:
			r.ink.LineTo(x, y)
		case sfnt.SegmentOpQuadTo:
			x2, y2 := place(s.Args[1])
			r.ink.QuadTo(x, y, x2, y2)
		case sfnt.SegmentOpCubeTo:
			panic("draw: embedded font: a cubic curve in a TrueType letter")
		}
	}
	r.ink.ClosePath()
}
