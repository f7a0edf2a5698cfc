package ui

import (
	"fmt"
	"slices"

	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

// sheetChoice is what the person chooses of the sheets, and the pages that
// come of it.
type sheetChoice struct {
	paper    sheet.Paper
	leave    []sheet.Chapter
	svg, glb bool
	date     string
	revision string

	pages []draw.Drawing
	page  int // shown; counts from 0
}

// chapterWords says what each chapter holds, in the order of printing.
var chapterWords = map[sheet.Chapter]string{
	sheet.Overview:   "Overview: the machine in its looks",
	sheet.Findings:   "What is still open",
	sheet.Measuring:  "What to measure, and how",
	sheet.Surveying:  "Survey of the ports, to fill in",
	sheet.Buying:     "Buying list",
	sheet.Cautions:   "Cautions, dry fit and tests",
	sheet.Cuts:       "Cut list with the bars",
	sheet.TubePages:  "A page for each tube",
	sheet.FullSize:   "Full-size templates and wrap strips",
	sheet.Batch:      "The batch: jigs and first articles",
	sheet.PieceTags:  "Labels for the pieces of a batch",
	sheet.NumberList: "Every number in full",
}

func (c *sheetChoice) options() sheet.Options {
	return sheet.Options{Paper: c.paper, Date: c.date, Revision: c.revision, Leave: c.leave, SVG: c.svg, GLB: c.glb}
}

// print takes a chapter in or leaves it out.
func (c *sheetChoice) print(chapter sheet.Chapter, on bool) {
	c.leave = slices.DeleteFunc(slices.Clone(c.leave), func(x sheet.Chapter) bool { return x == chapter })
	if !on {
		c.leave = append(c.leave, chapter)
	}
}

func (c *sheetChoice) prints(chapter sheet.Chapter) bool { return !slices.Contains(c.leave, chapter) }

// show takes new pages; the place among them stays as near as it can.
func (c *sheetChoice) show(pages []draw.Drawing) {
	c.pages = pages
	c.step(0)
}

// step turns pages.
func (c *sheetChoice) step(by int) { c.page = max(0, min(c.page+by, len(c.pages)-1)) }

// shown is the page that is looked at, on white; an empty drawing when there is none.
func (c *sheetChoice) shown() draw.Drawing {
	w, h := c.paper.Size()
	d := draw.Drawing{W: w, H: h}
	d.Add(draw.Box(0, 0, w, h, draw.Colour{R: 255, G: 255, B: 255}, draw.Stroke{}))
	if c.page < len(c.pages) {
		d.Place(c.pages[c.page], draw.Point{})
	}
	d.Add(draw.Frame(0, 0, w, h, draw.Stroke{Width: 0.6, Colour: draw.Colour{R: 190, G: 190, B: 186}})) // where the paper ends
	return d
}

// caption says which page is shown, with the name of the part it belongs to.
func (c *sheetChoice) caption() string {
	if len(c.pages) == 0 {
		return "No page: every chapter is left out, or empty for this plan."
	}
	name := ""
	for _, p := range c.pages[:c.page+1] {
		if p.Name != "" {
			name = ": " + p.Name
		}
	}
	return fmt.Sprintf("Page %d of %d%s", c.page+1, len(c.pages), name)
}
