package sheet

import (
	"fmt"
	"slices"
	"strings"
)

// Chapter is a group of pages that one may print or leave out.
type Chapter string

// The chapters.
const (
	Overview   Chapter = "overview"  // the machine in its looks, with the key
	Findings   Chapter = "findings"  // what is still open
	Measuring  Chapter = "measure"   // on a draft: what to measure, and how
	Surveying  Chapter = "survey"    // on a draft: the ports to measure in the case, part by part
	Buying     Chapter = "buying"    // the buying list
	Cautions   Chapter = "cautions"  // cautions, dry fit and tests
	Cuts       Chapter = "cuts"      // the cut list with its bars
	TubePages  Chapter = "tubes"     // one page for each tube
	FullSize   Chapter = "templates" // templates of the bends and wrap strips, at full size
	Batch      Chapter = "batch"     // of a batch: which tubes share a jig, the first article's check
	PieceTags  Chapter = "labels"    // labels for the pieces of a batch
	NumberList Chapter = "numbers"   // every number in full
)

// chapter is a chapter and what writes it.
type chapter struct {
	Chapter
	write func(*book)
}

// chapters are in printing order.
var chapters = []chapter{
	{Overview, (*book).overview},
	{Findings, (*book).findings},
	{Measuring, (*book).measuring},
	{Surveying, (*book).surveying},
	{Buying, (*book).buying},
	{Cautions, (*book).cautions},
	{Cuts, (*book).cutList},
	{TubePages, (*book).tubes},
	{FullSize, (*book).fullSize},
	{Batch, (*book).batch},
	{PieceTags, (*book).pieceTags},
	{NumberList, (*book).numbers},
}

// Chapters are all chapters in printing order.
func Chapters() []Chapter {
	all := make([]Chapter, len(chapters))
	for i, c := range chapters {
		all[i] = c.Chapter
	}
	return all
}

// ParseChapters reads names of chapters: "overview", "tubes" and so on.
func ParseChapters(names []string) ([]Chapter, error) {
	var list []Chapter
	for _, name := range names {
		i := slices.IndexFunc(chapters, func(c chapter) bool { return fold(name, string(c.Chapter)) })
		if i < 0 {
			return nil, fmt.Errorf("there is no chapter %q of the sheets; there are %s", name, strings.Join(chapterNames(), ", "))
		}
		list = append(list, chapters[i].Chapter)
	}
	return list, nil
}

func chapterNames() []string {
	names := make([]string, len(chapters))
	for i, c := range chapters {
		names[i] = string(c.Chapter)
	}
	return names
}

// tubes is a page for each tube.
func (b *book) tubes() {
	for _, t := range b.list.Tubes {
		b.tube(t)
	}
}
