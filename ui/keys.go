package ui

import (
	"fyne.io/fyne/v2"

	"tubewright/ui/board"
)

// typedKey gets the keys that no field and no board takes.
func (w *Window) typedKey(k *fyne.KeyEvent) {
	if n := len(w.modals); n > 0 {
		w.modals[n-1].key(k.Name)
		return
	}
	if w.dialog != nil {
		if k.Name == fyne.KeyEscape {
			w.dialog.Hide()
			w.dialog = nil
		}
		return
	}
	switch k.Name {
	case fyne.KeyF1:
		w.tellKeys()
	case fyne.KeyF6:
		w.nextPanel()
	case fyne.KeyHome:
		w.fitAll()
	case fyne.KeyDelete, fyne.KeyBackspace:
		w.remove()
	case fyne.KeyEscape:
		w.pick(board.Target{})
	case fyne.KeyUp, fyne.KeyDown, fyne.KeyLeft, fyne.KeyRight, fyne.KeyPageUp, fyne.KeyPageDown:
		w.toBoard(k)
	case fyne.KeyR, fyne.KeyPlus, fyne.KeyEqual, fyne.KeyMinus:
		w.board.TypedKey(k)
	}
}

// toBoard gives the focus and a key to the board.
func (w *Window) toBoard(k *fyne.KeyEvent) {
	if !w.snapshot.Open {
		return
	}
	w.win.Canvas().Focus(w.board)
	w.board.TypedKey(k)
}

// typedRune gets the letters that no field takes.
func (w *Window) typedRune(r rune) {
	if len(w.modals) > 0 || w.dialog != nil {
		return
	}
	w.letter(r)
}

// letter does what a letter key stands for and reports whether it stands for anything.
func (w *Window) letter(r rune) bool {
	switch r {
	case '1', '2', '3', '4':
		w.look(board.Look(r - '1'))
	case 'f', 'F':
		w.fit()
	case 'm', 'M':
		w.measure()
	case 'n', 'N':
		w.toNumbers()
	case 'p', 'P':
		w.perspective()
	case '?':
		w.tellKeys()
	default:
		return false
	}
	return true
}
