package sheet

import (
	"fmt"
	"io"

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
	return files
}

// captionHeight is the room of the line under a look, mm.
const captionHeight = 6.0

// LookSVG writes one look as an SVG that goes on a sheet of the paper asked for,
// at a scale that a ruler can work with and that is written under it.
func LookSVG(w io.Writer, l cutlist.List, k Look, o Options) error {
	s := newScene(l, k, PaperTheme())
	paperW, paperH := o.Paper.Size()
	scale, said := roundScale(s.fit(paperW-2*margin, paperH-2*margin-captionHeight))
	d := s.draw(scale)
	caption := fmt.Sprintf("%s (%s), %s", k, k.axes(), said)
	size := shrunk(caption, fineSize, 1.2, false, d.W-2*air)
	d.Add(draw.Text{At: draw.Point{X: air, Y: d.H + captionHeight/2}, Text: caption, Size: size, Colour: s.theme.Ink})
	d.H += captionHeight
	about := draw.About{Title: l.Plan.Name + ": " + k.String(), Subject: "The machine with its tubes. " + caption + "."}
	return draw.SVG(w, about, d)
}
