package ui

import (
	"fmt"
	"image"
	"image/color"
	"testing"

	"fyne.io/fyne/v2"

	"tubewright/bends/trial"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/measure"
	"tubewright/cutlist/sheet"
)

// What is drawn with writing on it: the bars of the rack, the strips of the cards,
// the drawings of how to measure. Each is painted, and each text looked at.
func TestEveryDrawnTextStandsOut(t *testing.T) {
	b := scanner(t)
	for _, dark := range []bool{false, true} {
		b.setTheme(dark)
		for _, percent := range []int{100, 150} {
			b.sized(percent, fyne.NewSize(1280, 800))
			for i, row := range b.rack.rows {
				drawnText(t, fmt.Sprintf("dark %v, bar %d", dark, i), row.bar)
			}
			for run, c := range b.cards.byRun {
				c.strip.clear = false // painted on nothing: here on what lies under it
				for _, c.strip.back = range []role{face, chosen} {
					drawnText(t, fmt.Sprintf("dark %v, strip of %s", dark, run), c.strip)
				}
			}
			for _, s := range measure.Sketches() {
				p := newPicture(face, func(float32) float32 { return 230 }, func(float32) draw.Drawing { return sheet.MeasureSketch(s, "", sheetTheme()) })
				p.perMM = 380 / sheet.SketchWidth
				p.Resize(fyne.NewSize(380, 230))
				drawnText(t, fmt.Sprintf("dark %v, %s", dark, s), p)
			}
			bend := newPicture(face, func(float32) float32 { return trialPicture().Height }, func(float32) draw.Drawing { return drawTrial(trial.Marks, trial.Back) })
			bend.Resize(trialPicture())
			drawnText(t, fmt.Sprintf("dark %v, a test bend", dark), bend)
		}
	}
}

// drawnText paints a picture and tells which of its texts stand out too little or
// reach beyond it.
func drawnText(t *testing.T, name string, p *picture) {
	t.Helper()
	size := p.Size()
	img := p.paint(int(size.Width+0.5), int(size.Height+0.5))
	for _, item := range p.drawing.Items {
		text, ok := item.(draw.Text)
		if !ok || text.Text == "" || text.Turn != 0 {
			continue
		}
		wide := draw.TextWidth(text.Text, text.Size, text.Bold)
		x, top, base := text.At.X, text.At.Y-0.72*text.Size, text.At.Y
		switch text.Align {
		case draw.Centre:
			x -= wide / 2
		case draw.Right:
			x -= wide
		}
		if x < -0.2 || top < -0.2 || x+wide > p.drawing.W+0.2 || base > p.drawing.H+0.2 {
			t.Errorf("%s: %q reaches beyond the picture: from %.1f, %.1f to %.1f, %.1f of %.1f by %.1f", name, text.Text, x, top, x+wide, base, p.drawing.W, p.drawing.H)
		}
		place := image.Rect(int(x*p.perMM), int(top*p.perMM), int((x+wide)*p.perMM)+1, int(base*p.perMM)+1)
		ink := color.NRGBA{R: text.Colour.R, G: text.Colour.G, B: text.Colour.B, A: 255}
		if core, ground := coreAndGround(img, place, ink); contrast(core, ground) < leastContrast {
			t.Errorf("%s: %q is painted in %v on %v: contrast %.2f", name, text.Text, core, ground, contrast(core, ground))
		}
	}
}
