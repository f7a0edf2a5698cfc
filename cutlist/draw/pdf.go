package draw

import (
	"fmt"
	"io"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// About is what a document says of itself beside its pages.
type About struct{ Title, Subject string }

// made is the date in every document: a fixed one, so that the same plan gives
// the same bytes.
var made = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// family is what the embedded fonts are called inside a document.
const family = "go"

// PDF writes drawings as the pages of one document, each at its own size, with
// the letters that are used embedded. Pages with a Name stand in the outline.
func PDF(w io.Writer, about About, pages ...Drawing) error {
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}})
	f.SetCatalogSort(true)
	f.SetCreationDate(made)
	f.SetModificationDate(made)
	f.SetProducer("Tubewright", false)
	f.SetTitle(Writable(about.Title), true)
	f.SetSubject(Writable(about.Subject), true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.AddUTF8FontFromBytes(family, "", goregular.TTF)
	f.AddUTF8FontFromBytes(family, "B", gobold.TTF)
	for _, page := range pages {
		pdfPage(f, page)
	}
	if err := f.Output(w); err != nil {
		return fmt.Errorf("writing the PDF: %w", err)
	}
	return nil
}

func pdfPage(f *fpdf.Fpdf, page Drawing) {
	f.AddPageFormat("P", fpdf.SizeType{Wd: page.W, Ht: page.H})
	f.SetDashPattern(nil, 0) // of the page before
	f.SetLineCapStyle("butt")
	f.SetLineJoinStyle("round")
	p := &pdfPen{f: f}
	if page.Name != "" {
		p.font(Text{Size: 3})
		f.Bookmark(Writable(page.Name), 0, 0)
	}
	for _, it := range page.Items {
		p.paint(it)
	}
}

// pdfPen paints items and remembers what it last set, which keeps files small.
type pdfPen struct {
	f      *fpdf.Fpdf
	stroke Stroke
	fill   *Colour
	size   float64
	bold   bool
}

func (p *pdfPen) paint(it Item) {
	switch it := it.(type) {
	case Line:
		p.line(it)
	case Arc:
		p.arc(it)
	case Fill:
		p.polygon(it)
	case Text:
		p.text(it)
	}
}

func (p *pdfPen) line(l Line) {
	if len(l.Points) < 2 || l.Stroke.Width <= 0 {
		return
	}
	p.setStroke(l.Stroke)
	p.path(l.Points)
	p.f.DrawPath("D")
}

func (p *pdfPen) path(points []Point) {
	p.f.MoveTo(points[0].X, points[0].Y)
	for _, q := range points[1:] {
		p.f.LineTo(q.X, q.Y)
	}
}

// steepest is the longest arc one cubic curve stands for, degrees: at 45 the
// curve leaves the circle by less than 5 millionths of the radius.
const steepest = 45

// wholeCurves keeps the rounding of a sweep from asking for one curve more: a
// part of a curve that is far above a float64's noise and far below any sweep.
const wholeCurves = 1e-9

// arc draws an arc as cubic curves whose handles are 4/3·tan(step/4)·radius
// long (the usual approximation of a circle).
func (p *pdfPen) arc(a Arc) {
	if a.Stroke.Width <= 0 {
		return
	}
	p.setStroke(a.Stroke)
	n := int(math.Ceil(math.Abs(a.Sweep)/steepest - wholeCurves))
	step := a.Sweep / float64(max(n, 1))
	handle := 4.0 / 3 * math.Tan(step*math.Pi/180/4) * a.Radius
	from := a.At(a.From)
	p.f.MoveTo(from.X, from.Y)
	for i := range n {
		at := a.From + float64(i)*step
		c0 := a.handle(at, handle)
		c1 := a.handle(at+step, -handle)
		to := a.At(at + step)
		p.f.CurveBezierCubicTo(c0.X, c0.Y, c1.X, c1.Y, to.X, to.Y)
	}
	p.f.DrawPath("D")
}

// handle is the point at a length along the tangent of an arc.
func (a Arc) handle(degrees, length float64) Point {
	s, c := math.Sincos(degrees * math.Pi / 180)
	return a.At(degrees).Plus(Point{-s * length, c * length})
}

func (p *pdfPen) polygon(l Fill) {
	if len(l.Points) < 3 {
		return
	}
	if p.fill == nil || *p.fill != l.Colour {
		p.f.SetFillColor(int(l.Colour.R), int(l.Colour.G), int(l.Colour.B))
		p.fill = &l.Colour
	}
	how := "F"
	if l.Stroke.Width > 0 {
		p.setStroke(l.Stroke)
		how = "FD"
	}
	p.path(l.Points)
	p.f.ClosePath()
	p.f.DrawPath(how)
}

func (p *pdfPen) setStroke(s Stroke) {
	if s.Width != p.stroke.Width {
		p.f.SetLineWidth(s.Width)
	}
	if s.Colour != p.stroke.Colour || p.stroke.Width == 0 {
		p.f.SetDrawColor(int(s.Colour.R), int(s.Colour.G), int(s.Colour.B))
	}
	if len(s.Dash) > 0 || len(p.stroke.Dash) > 0 {
		p.f.SetDashPattern(s.Dash, s.Skip)
	}
	p.stroke = s
}

func (p *pdfPen) font(t Text) {
	if t.Size == p.size && t.Bold == p.bold {
		return
	}
	style := ""
	if t.Bold {
		style = "B"
	}
	const pointsPerMM = 72 / 25.4
	p.f.SetFont(family, style, t.Size*pointsPerMM)
	p.size, p.bold = t.Size, t.Bold
}

func (p *pdfPen) text(t Text) {
	written := Writable(t.Text)
	if written == "" || t.Size <= 0 {
		return
	}
	p.font(t)
	p.f.SetTextColor(int(t.Colour.R), int(t.Colour.G), int(t.Colour.B))
	x := t.start()
	if t.Turn == 0 {
		p.f.Text(t.At.X+x, t.At.Y, written)
		return
	}
	p.f.TransformBegin()
	p.f.TransformRotate(-t.Turn, t.At.X, t.At.Y)
	p.f.Text(t.At.X+x, t.At.Y, written)
	p.f.TransformEnd()
}

// start is where the writing starts along its line, seen from At.
func (t Text) start() float64 {
	switch t.Align {
	case Centre:
		return -TextWidth(t.Text, t.Size, t.Bold) / 2
	case Right:
		return -TextWidth(t.Text, t.Size, t.Bold)
	case Left:
	}
	return 0
}
