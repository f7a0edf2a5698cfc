// Package sheet makes the printed sheets of a cut list, the drawings on them,
// and the tables as files that spreadsheets read.
//
// The drawings ([Looks], [LookPicture], [Straightened], [Bar], [FormedView],
// [TemplatePicture]) are for the window too. Lengths are printed in the plan's
// units; drawings are measured in millimetres on paper. The same list gives the
// same bytes: nothing here asks the clock.
package sheet

import (
	"fmt"
	"io"
	"slices"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
)

// Paper is a size of paper, upright.
type Paper int

// The papers.
const (
	A4     Paper = iota // ISO 216: 210 × 297 mm
	Letter              // US: 8.5 × 11 in
)

// Size is the paper's width and height, mm.
func (p Paper) Size() (w, h float64) {
	if p == Letter {
		return 215.9, 279.4
	}
	return 210, 297
}

// String gives the name people buy it under.
func (p Paper) String() string {
	if p == Letter {
		return "US Letter"
	}
	return "A4"
}

// ParsePaper reads a paper's name: "a4" or "letter", in any case.
func ParsePaper(name string) (Paper, error) {
	switch {
	case fold(name, "a4"):
		return A4, nil
	case fold(name, "letter"), fold(name, "us letter"):
		return Letter, nil
	}
	return A4, fmt.Errorf("there is no paper %q; write a4 or letter", name)
}

// Options is what the person chooses for the sheets. The zero value prints on
// A4 with neither date nor revision.
type Options struct {
	Paper    Paper
	Date     string    // printed as it stands; empty: none
	Revision string    // printed as it stands; empty: none
	Leave    []Chapter // left out; nil: nothing is
	SVG      bool      // WriteAll writes each drawing as an SVG too
	GLB      bool      // WriteAll writes the machine as binary glTF too
}

// PDF writes all sheets of a list as one document.
func PDF(w io.Writer, l cutlist.List, o Options) error {
	return draw.PDF(w, draw.About{Title: l.Plan.Name, Subject: "tubes, cut list and buying list"}, Pages(l, o)...)
}

// Pages gives the sheets of a list as drawings, in printing order.
func Pages(l cutlist.List, o Options) []draw.Drawing {
	b := newBook(l, o)
	for _, c := range chapters {
		if !slices.Contains(o.Leave, c.Chapter) {
			c.write(b)
		}
	}
	return b.finished()
}
