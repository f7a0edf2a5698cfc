package ui

import (
	"slices"

	"fyne.io/fyne/v2"
)

// cards is the run cards under one another.
type cards struct {
	*pane
	byRun    map[string]*card
	order    []string
	said     string // instead of cards
	open     string // run whose card is open
	selected string
	models   []cardModel
	onSelect func(run string)
	onChoose func(run, way string)
	onFree   func(run string)
	onLook   func(run string, way int, on bool)
	onRemove func() // of the selected run; nil: Delete does nothing
}

func newCards(onSelect func(string), onChoose func(run, way string), onFree func(string), onLook func(string, int, bool)) *cards {
	return &cards{
		pane: newPane(newColumn(4, 1)), byRun: map[string]*card{},
		onSelect: onSelect, onChoose: onChoose, onFree: onFree, onLook: onLook,
	}
}

// show changes the cards; empty is what to say when there are none.
func (c *cards) show(models []cardModel, empty, selected string) {
	moved := c.selected != selected
	c.models, c.selected = models, selected
	changed := c.arrange(empty)
	for _, m := range models {
		if c.byRun[m.run].show(m, c.open == m.run, selected == m.run) {
			changed = true
		}
	}
	if changed {
		c.rove(c.presses())
		removable(c.fronts(), c.onRemove)
		c.reflow()
	}
	if k := c.byRun[selected]; k != nil && moved {
		c.reveal(k)
	}
}

// fronts are the cards' own faces.
func (c *cards) fronts() (rows []*press) {
	for _, run := range c.order {
		rows = append(rows, c.byRun[run].front)
	}
	return rows
}

// presses lists what can be pressed, from the top.
func (c *cards) presses() (rows []*press) {
	for _, run := range c.order {
		rows = append(rows, c.byRun[run].rows...)
	}
	return rows
}

// arrange makes a card for each run, in the plan's order, and reports whether
// there are others than before.
func (c *cards) arrange(empty string) bool {
	order := make([]string, len(c.models))
	for i, m := range c.models {
		order[i] = m.run
	}
	if slices.Equal(order, c.order) && (len(order) > 0 || c.said == empty) {
		return false
	}
	c.order, c.said = order, empty
	objects := make([]fyne.CanvasObject, 0, len(order)+1)
	for _, run := range order {
		if c.byRun[run] == nil {
			c.byRun[run] = c.newCard()
		}
		objects = append(objects, c.byRun[run])
	}
	for run := range c.byRun {
		if !slices.Contains(order, run) {
			delete(c.byRun, run)
		}
	}
	if len(objects) == 0 {
		objects = append(objects, newInset(newFlow(empty, smallSize, soft)))
	}
	c.body.set(objects...)
	return true
}

func (c *cards) newCard() *card {
	k := newCard()
	k.onSelect, k.onChoose, k.onFree, k.onToggle, k.onLook = c.onSelect, c.onChoose, c.onFree, c.toggle, c.onLook
	return k
}

// toggle opens a run's card, and closes the one that was open.
func (c *cards) toggle(run string) {
	if c.open == run {
		c.open = ""
	} else {
		c.open = run
	}
	c.show(c.models, c.said, c.selected)
	if k := c.byRun[run]; k != nil {
		c.reveal(k)
	}
}

// reopen opens a run's card, whether it is open or not.
func (c *cards) reopen(run string) {
	c.open = ""
	c.toggle(run)
}
