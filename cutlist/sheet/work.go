package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tubewright/bends/steps"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
)

// work is the order of work at the bench, to tick off: on one page when one
// holds it.
func (b *book) work(t cutlist.Tube) {
	if h := b.stepsHeight(t.Steps); h < b.floor()-b.start() {
		b.need(h)
	}
	b.heading("Order of work", bodySize+0.4, 24)
	for i, s := range t.Steps {
		b.numbered(i+1, s.Text, s.Kind == steps.Warn)
	}
	b.indented(said(t.Steps), 0, fineSize, b.theme.Faint)
	b.asMade(t)
}

// stepsHeight is how high the list and the table below it are.
func (b *book) stepsHeight(list []steps.Step) float64 {
	const around = 27 // heading, sources and table
	h := float64(around)
	for _, s := range list {
		h += b.stepHeight(s)
	}
	return h
}

func (b *book) stepHeight(s steps.Step) float64 {
	lines := wrapped(s.Text, rowSize, s.Kind == steps.Warn, b.width()-stepIndent, 40)
	return float64(len(lines))*rowSize*leading + stepGap
}

const (
	stepIndent = 10.5 // where the text of a numbered step starts, mm
	stepGap    = 0.3  // from one step to the next, mm
)

// numbered sets a step behind a box to tick and its number, kept on one page.
func (b *book) numbered(n int, text string, warn bool) {
	lines := wrapped(text, rowSize, warn, b.width()-stepIndent, 40)
	b.need(float64(len(lines))*rowSize*leading + stepGap)
	b.add(tick(margin+0.5, b.y+0.35*rowSize, 0.95*rowSize, b.theme))
	for i, line := range lines {
		b.y += rowSize * leading
		if i == 0 {
			b.write(margin+stepIndent-1.8, b.y-0.3*rowSize, strconv.Itoa(n), rowSize, true, draw.Right, b.theme.Faint)
		}
		ink := b.theme.Ink
		if warn {
			ink = b.theme.Alarm
		}
		b.write(margin+stepIndent, b.y-0.3*rowSize, line, rowSize, warn, draw.Left, ink)
	}
	b.y += stepGap
}

// mostCommon is the source that needs no numbers.
const mostCommon = "common practice"

// said tells who says what is in the list: "Sources: 1 and 9, copper tube
// handbook; the others, common practice."
func said(list []steps.Step) string {
	var sources []string
	numbers := map[string][]string{}
	for i, s := range list {
		if s.Source != mostCommon && !slices.Contains(sources, s.Source) {
			sources = append(sources, s.Source)
		}
		numbers[s.Source] = append(numbers[s.Source], strconv.Itoa(i+1))
	}
	var words []string
	for _, source := range sources {
		words = append(words, fmt.Sprintf("%s, %s", route.And(numbers[source]), source))
	}
	if len(numbers[mostCommon]) > 0 {
		words = append(words, "the others, "+mostCommon)
	}
	return "Sources of the steps: " + strings.Join(words, "; ") + "."
}

// asMade is room to write down what came out, so that the next try knows.
func (b *book) asMade(t cutlist.Tube) {
	cols := []column{{head: "as made"}, {head: "length", wraps: true}}
	if len(t.Bench.Bends) > 0 {
		cols = append(cols, column{head: "turns", wraps: true}, column{head: "rolls", wraps: true})
	}
	cols = append(cols, column{head: "aside at B", wraps: true}, column{head: "askew at B", wraps: true}, column{head: "what to do otherwise", wraps: true})
	b.y += 1
	b.table(cols, b.tryRows(t, len(cols)))
}
