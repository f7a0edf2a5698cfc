package sheet

import (
	"fmt"
	"io"
	"math"
	"strings"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
)

// file is one of the files that [WriteAll] writes: what its name ends in, and
// what is in it.
type file struct {
	end   string
	write func(io.Writer) error
}

// svgFiles is the drawings of a list, each as a file of its own.
func svgFiles(l cutlist.List, o Options) (files []file) {
	for _, k := range everyLook {
		files = append(files, file{"-look-" + k.word() + ".svg", func(w io.Writer) error { return LookSVG(w, l, k, o) }})
	}
	for _, t := range l.Tubes {
		for i := range TemplateCount(t) {
			end := fmt.Sprintf("-template-%s-%d.svg", t.Letter, i+1)
			files = append(files, file{end, func(w io.Writer) error { return TemplateSVG(w, l, t, i+1) }})
		}
	}
	return files
}

// svgAir is left beside a template in a file of its own for its writing, mm.
const svgAir = 26.0

// TemplateSVG writes [TemplatePicture] as an SVG.
func TemplateSVG(w io.Writer, l cutlist.List, t cutlist.Tube, n int) error {
	d, about := TemplatePicture(l, t, n)
	return draw.SVG(w, about, d)
}

// TemplatePicture draws a full-size template of a tube in one piece, however
// large: number n of [TemplateCount], counted from 1. It panics when there is
// none.
func TemplatePicture(l cutlist.List, tube cutlist.Tube, n int) (draw.Drawing, draw.About) {
	t, th, u := templates(tube)[n-1], PaperTheme(), l.Plan.Units
	one := laidOut(t, draw.Point{X: endless, Y: endless})
	one.tiles[0].window = one.tiles[0].window.grown(svgAir - templateAir)
	picture := one.picture(0, nil, u, th)
	title, made := "Tube "+t.tube.Letter+", "+t.tube.Run+": "+lowered(t.title()), t.made(u)
	d := draw.Drawing{W: math.Max(picture.W, scaleBarLength+2*margin), H: svgHead + picture.H}
	d.Add(ruler(draw.Point{X: margin, Y: 7}, draw.Point{X: 1}, th)...)
	for i, line := range []string{"Measure me: 100 mm (3.937 in).", title, made} {
		size := shrunk(line, bodySize, 1, i == 1, d.W-2*margin)
		d.Add(draw.Text{At: draw.Point{X: margin, Y: 11.5 + float64(i)*bodySize*leading}, Text: line, Size: size, Bold: i == 1, Colour: th.Ink})
	}
	d.Place(picture, draw.Point{X: (d.W - picture.W) / 2, Y: svgHead})
	return d, draw.About{Title: l.Plan.Name + ": " + title, Subject: "Full size. " + made + "."}
}

// svgHead is the room of the bar to measure and the title over a template, mm.
const svgHead = 22.0

// endless is room that no tube fills, mm.
const endless = 1e6

// lowered is a title as it stands inside a sentence.
func lowered(title string) string { return strings.ToLower(title[:1]) + title[1:] }

// captionHeight is the room of the line under a look, mm.
const captionHeight = 6.0

// LookSVG writes [LookPicture] as an SVG.
func LookSVG(w io.Writer, l cutlist.List, k Look, o Options) error {
	d, about := LookPicture(l, k, o)
	return draw.SVG(w, about, d)
}

// LookPicture draws one look so that it goes on a sheet of the paper asked for,
// at a scale that a ruler can work with and that is written under it.
func LookPicture(l cutlist.List, k Look, o Options) (draw.Drawing, draw.About) {
	s := newScene(l, k, PaperTheme())
	paperW, paperH := o.Paper.Size()
	scale, said := roundScale(s.fit(paperW-2*margin, paperH-2*margin-captionHeight))
	d := s.draw(scale)
	caption := fmt.Sprintf("%s (%s), %s", k, k.axes(), said)
	size := shrunk(caption, fineSize, 1.2, false, d.W-2*air)
	d.Add(draw.Text{At: draw.Point{X: air, Y: d.H + captionHeight/2}, Text: caption, Size: size, Colour: s.theme.Ink})
	d.H += captionHeight
	return d, draw.About{Title: l.Plan.Name + ": " + k.String(), Subject: "The machine with its tubes. " + caption + "."}
}
