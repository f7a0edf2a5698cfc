package ui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
)

// buying is the list of what to buy.
type buying struct {
	*pane
	lines   map[string]*buyLine
	items   []string
	said    string // instead of a list
	dark    bool
	missing string // said above the list: what it cannot count
	onHand  func(item string, count int) error
	wrong   func(error)
	onHover func(string)
}

func newBuying(onHand func(string, int) error, wrong func(error), onHover func(string)) *buying {
	return &buying{
		pane: newPane(newColumn(10, 3)), lines: map[string]*buyLine{},
		onHand: onHand, wrong: wrong, onHover: onHover,
	}
}

// show changes the list; empty is what to say when there is none, missing what
// it cannot count.
func (b *buying) show(rows []buyRow, empty, missing string) {
	items := make([]string, len(rows))
	for i, row := range rows {
		items[i] = row.item
	}
	if !slices.Equal(items, b.items) || b.dark != isDark() || b.missing != missing || (len(items) == 0 && b.said != empty) {
		b.items, b.said, b.missing, b.dark = items, empty, missing, isDark()
		b.fill(rows)
	}
	for _, row := range rows {
		b.lines[row.item].show(row)
	}
}

func (b *buying) fill(rows []buyRow) {
	clear(b.lines)
	objects := []fyne.CanvasObject{newBuyHeading()}
	for _, row := range rows {
		line := newBuyLine(row, func(text string) error { return b.keep(row.item, text) }, b.wrong, b.onHover)
		b.lines[row.item] = line
		if line.onHand != nil {
			b.shows(nil, line.onHand)
		}
		objects = append(objects, line)
	}
	if len(rows) == 0 {
		objects = []fyne.CanvasObject{newFlow(b.said, smallSize, soft)}
	}
	if b.missing != "" {
		objects = append([]fyne.CanvasObject{newFlow(b.missing, smallSize, careful)}, objects...)
	}
	b.body.set(objects...)
	b.reflow()
}

// keep reads a count on hand.
func (b *buying) keep(item, text string) error {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil {
		return &NumberError{text, "that is not a whole number", fmt.Sprintf("Type how many of %s you have, such as 4.", item)}
	}
	return b.onHand(item, n)
}
