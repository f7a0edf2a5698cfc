package draw

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"

	"golang.org/x/image/font/sfnt"
)

// SVG writes a drawing as a scalable picture of its true size: one unit of the
// file is one millimetre. Writing is drawn as the outlines of its letters, so it
// looks alike where the fonts are not known (browsers, cutters, other drawing
// programs), and each line of it carries its words for readers of screens.
// Items with a point that is not a finite number are left out.
func SVG(w io.Writer, about About, d Drawing) error {
	p := &svgPen{}
	p.head(about, d)
	for _, it := range d.Items {
		p.paint(it)
	}
	p.out.WriteString("</g>\n</svg>\n")
	if _, err := w.Write(p.out.Bytes()); err != nil {
		return fmt.Errorf("writing the SVG: %w", err)
	}
	return nil
}

// svgDigits is how many decimals of a millimetre the file has: a thousandth is
// far finer than any printer or cutter.
const svgDigits = 3

type svgPen struct {
	out bytes.Buffer
	buf sfnt.Buffer
}

func (p *svgPen) head(about About, d Drawing) {
	w, h := number(d.W, svgDigits), number(d.H, svgDigits)
	fmt.Fprintf(&p.out, `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="%smm" height="%smm" viewBox="0 0 %s %s" role="graphics-document">
<title>%s</title>
<desc>%s</desc>
<g fill="none" stroke-linecap="butt" stroke-linejoin="round">
`, w, h, w, h, escaped(about.Title), escaped(about.Subject))
}

// escaped is a text as XML holds it; what XML cannot hold becomes U+FFFD.
func escaped(text string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(text)) // a buffer takes everything
	return b.String()
}

// number writes a number with at most this many decimals and never "-0".
func number(v float64, digits int) string {
	text := strconv.FormatFloat(v, 'f', digits, 64)
	n := len(text)
	for digits > 0 && text[n-1] == '0' {
		n--
	}
	if digits > 0 && text[n-1] == '.' {
		n--
	}
	if text = text[:n]; text == "-0" {
		return "0"
	}
	return text
}

func (p *svgPen) paint(it Item) {
	switch it := it.(type) {
	case Line:
		if len(it.Points) > 1 && it.Stroke.Width > 0 && finite(it.Points...) {
			p.element(polyline(it.Points), nil, it.Stroke)
		}
	case Arc:
		if it.Stroke.Width > 0 && finite(it.Centre, Point{it.Radius, it.From}, Point{it.Sweep, 0}) {
			p.element(arcPath(it), nil, it.Stroke)
		}
	case Fill:
		if len(it.Points) > 2 && finite(it.Points...) {
			p.element(polyline(it.Points)+"z", &it.Colour, it.Stroke)
		}
	case Text:
		p.text(it)
	}
}

// finite reports whether all points are places.
func finite(points ...Point) bool {
	for _, p := range points {
		if math.IsNaN(p.X-p.X) || math.IsNaN(p.Y-p.Y) { // NaN or infinite
			return false
		}
	}
	return true
}

// element writes a path with its looks.
func (p *svgPen) element(path string, fill *Colour, s Stroke) {
	p.out.WriteString(`<path d="` + path + `"`)
	if fill != nil {
		p.out.WriteString(` fill="` + hex(*fill) + `"`)
	}
	if s.Width > 0 {
		p.out.WriteString(` stroke="` + hex(s.Colour) + `" stroke-width="` + number(s.Width, svgDigits) + `"`)
		p.dash(s)
	}
	p.out.WriteString("/>\n")
}

func (p *svgPen) dash(s Stroke) {
	if len(s.Dash) == 0 {
		return
	}
	p.out.WriteString(` stroke-dasharray="`)
	for i, d := range s.Dash {
		if i > 0 {
			p.out.WriteByte(' ')
		}
		p.out.WriteString(number(d, svgDigits))
	}
	p.out.WriteByte('"')
	if s.Skip != 0 {
		p.out.WriteString(` stroke-dashoffset="` + number(s.Skip, svgDigits) + `"`)
	}
}

func hex(c Colour) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// place is a point as a path holds it.
func (p Point) place() string { return number(p.X, svgDigits) + " " + number(p.Y, svgDigits) }

func polyline(points []Point) string {
	path := []byte("M" + points[0].place())
	for _, q := range points[1:] {
		path = append(append(path, 'L'), q.place()...)
	}
	return string(path)
}

// widest is the most degrees that one arc of a path stands for: an arc near a
// half turn or a whole one would leave its centre to the last digit.
const widest = 120

// arcPath writes an arc as true arcs, which cutters follow without corners.
func arcPath(a Arc) string {
	n := max(1, int(math.Ceil(math.Abs(a.Sweep)/widest-wholeCurves)))
	r, way := number(a.Radius, svgDigits), " 0 0 1 "
	if a.Sweep < 0 {
		way = " 0 0 0 "
	}
	path := []byte("M" + a.At(a.From).place())
	for i := 1; i <= n; i++ {
		to := a.At(a.From + a.Sweep*float64(i)/float64(n))
		path = append(path, "A"+r+" "+r+way+to.place()...)
	}
	return string(path)
}

// text writes the outlines of a line's letters, in the fonts' own units.
func (p *svgPen) text(t Text) {
	written := Writable(t.Text)
	if written == "" || !(t.Size > 0) || !finite(t.At, Point{t.Size, t.Turn}) {
		return
	}
	fc := faceFor(t.Bold)
	start := t.At.Plus(Point{t.start(), 0}.turned(t.Turn))
	p.out.WriteString(`<path role="img" aria-label="` + escaped(written) + `" fill="` + hex(t.Colour) + `" transform="translate(` + start.place() + `)`)
	if t.Turn != 0 {
		p.out.WriteString(` rotate(` + number(t.Turn, svgDigits) + `)`)
	}
	p.out.WriteString(` scale(` + number(t.Size/fc.units, 8) + `)" d="`)
	x := 0.0
	for _, c := range written {
		p.letter(fc, c, x)
		x += fc.advance[c] * fc.units
	}
	p.out.WriteString("\"/>\n")
}

// letter writes one letter's outline with its origin at x.
func (p *svgPen) letter(fc *face, c rune, x float64) {
	for i, s := range fc.outline(&p.buf, c) {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				p.out.WriteByte('z')
			}
			p.out.WriteByte('M')
		case sfnt.SegmentOpLineTo:
			p.out.WriteByte('L')
		case sfnt.SegmentOpQuadTo:
			p.out.WriteByte('Q')
		case sfnt.SegmentOpCubeTo:
			p.out.WriteByte('C')
		}
		for k, q := range s.Args[:args(s.Op)] {
			if k > 0 {
				p.out.WriteByte(' ')
			}
			p.out.WriteString(number(x+float64(q.X)/64, 1) + " " + number(float64(q.Y)/64, 1))
		}
	}
	p.out.WriteByte('z')
}
