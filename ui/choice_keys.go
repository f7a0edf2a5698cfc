package ui

import (
	"strings"

	"fyne.io/fyne/v2"
)

// FocusGained tells who wants to know.
func (c *choice) FocusGained() {
	c.typed = ""
	c.Select.FocusGained()
	if c.onFocus != nil {
		c.onFocus()
	}
}

// TypedKey chooses, or leaves the key to the window.
func (c *choice) TypedKey(k *fyne.KeyEvent) {
	switch k.Name {
	case fyne.KeyUp, fyne.KeyLeft:
		c.step(-1)
	case fyne.KeyDown, fyne.KeyRight:
		c.step(1)
	case fyne.KeySpace:
		c.Select.TypedKey(k)
	case fyne.KeyBackspace:
		c.typed = ""
	default:
		passKey(c, k)
	}
}

// step goes to the next word, or the one before; it stops at the ends.
func (c *choice) step(by int) {
	c.typed = ""
	if i := c.SelectedIndex() + by; i >= 0 && i < len(c.Options) {
		c.SetSelectedIndex(i)
	}
}

// TypedRune chooses the first word that begins as typed; where none does, the
// letter begins anew.
func (c *choice) TypedRune(r rune) {
	if r == ' ' && c.typed == "" {
		return // Space as a key shows them all
	}
	for _, typed := range []string{c.typed + string(r), string(r)} {
		for i, word := range c.Options {
			if strings.HasPrefix(strings.ToLower(word), strings.ToLower(typed)) {
				c.typed = typed
				c.SetSelectedIndex(i)
				return
			}
		}
	}
}
