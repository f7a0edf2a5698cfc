package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// numberEntry is a field for one number. Enter, Tab and a click elsewhere keep
// what was typed; Esc takes it back. A wrong text brings the old one back and
// is told to onWrong.
type numberEntry struct {
	widget.Entry
	kept    string                  // what the plan has
	keep    func(text string) error // gives a number to the plan; it sets kept through show
	onWrong func(error)             // nil: all is well again
	onStep  func(up bool)           // Up and Down; nil: they do nothing
	onFocus func()                  // nil: nobody is told
	onPage  func(fyne.KeyName)      // Page Up and Page Down; nil: they do nothing
	busy    bool
	focused bool
}

func newNumberEntry(keep func(string) error, onWrong func(error)) *numberEntry {
	e := &numberEntry{keep: keep, onWrong: onWrong}
	e.ExtendBaseWidget(e)
	e.Scroll = fyne.ScrollNone
	e.Wrapping = fyne.TextWrapOff
	return e
}

// show puts a number of the plan into the field, but not over what is being typed.
func (e *numberEntry) show(text string) {
	typing := e.Text != e.kept
	e.kept = text
	if !typing || e.busy {
		e.set(text)
	}
}

// set changes the text without refreshing one that stays.
func (e *numberEntry) set(text string) {
	if e.Text != text {
		e.SetText(text)
		if e.focused {
			selectAll(&e.Entry)
		}
	}
}

// commit gives what was typed to the plan.
func (e *numberEntry) commit() {
	if e.busy || e.Text == e.kept {
		return
	}
	e.busy = true
	err := e.keep(e.Text)
	e.busy = false
	e.set(e.kept)
	e.onWrong(err)
}

// selectAll lets what is typed next take the place of what stands in a field.
func selectAll(e *widget.Entry) { e.TypedShortcut(&fyne.ShortcutSelectAll{}) }

// FocusGained marks the old number, so that a new one takes its place, and tells
// who wants to know. A click takes the mark away again.
func (e *numberEntry) FocusGained() {
	e.focused = true
	e.Entry.FocusGained()
	selectAll(&e.Entry)
	if e.onFocus != nil {
		e.onFocus()
	}
}

// FocusLost keeps what was typed.
func (e *numberEntry) FocusLost() {
	e.focused = false
	e.Entry.FocusLost()
	e.commit()
}

// TypedKey adds Enter, Esc, Up and Down to what a field can do.
func (e *numberEntry) TypedKey(k *fyne.KeyEvent) {
	switch k.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		e.commit()
	case fyne.KeyEscape:
		if e.Text == e.kept {
			passKey(e, k) // nothing to take back: the question around it closes
			return
		}
		e.set(e.kept)
		e.onWrong(nil)
	case fyne.KeyUp, fyne.KeyDown:
		if e.onStep != nil {
			e.commit()
			e.onStep(k.Name == fyne.KeyUp)
		}
	case fyne.KeyPageUp, fyne.KeyPageDown:
		if e.onPage != nil {
			e.onPage(k.Name)
		}
	case fyne.KeyF1, fyne.KeyF6:
		passKey(e, k)
	default:
		e.Entry.TypedKey(k)
	}
}
