package ui

import "fyne.io/fyne/v2"

// passKey gives a key that a focused thing has no use for to the window, which
// gets by itself only the keys typed while nothing has the focus.
func passKey(from fyne.CanvasObject, k *fyne.KeyEvent) {
	if c := canvasOf(from); c != nil && c.OnTypedKey() != nil {
		c.OnTypedKey()(k)
	}
}

// passRune does the same with a letter.
func passRune(from fyne.CanvasObject, r rune) {
	if c := canvasOf(from); c != nil && c.OnTypedRune() != nil {
		c.OnTypedRune()(r)
	}
}

// canvasOf is what an object is drawn on; nil when there is no window. Fyne
// knows only what it has painted: a row made a moment ago can have the focus and
// get a key before that. There is one window, so it is there.
func canvasOf(o fyne.CanvasObject) fyne.Canvas {
	d := fyne.CurrentApp().Driver()
	if c := d.CanvasForObject(o); c != nil {
		return c
	}
	if all := d.AllWindows(); len(all) > 0 {
		return all[0].Canvas()
	}
	return nil
}
