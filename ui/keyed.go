package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Widgets of Fyne's keep every key for themselves while they have the focus. These
// give the window what they have no use for: Enter and Esc of a question, F1, F6,
// and on buttons the letters.

// keyButton is a button that Enter presses too.
type keyButton struct{ widget.Button }

func newKeyButton(text string, icon fyne.Resource, act func()) *keyButton {
	b := &keyButton{}
	b.Text, b.Icon, b.OnTapped = text, icon, act
	b.ExtendBaseWidget(b)
	return b
}

// TypedKey presses on Space and Enter.
func (b *keyButton) TypedKey(k *fyne.KeyEvent) {
	switch k.Name {
	case fyne.KeySpace:
		b.Button.TypedKey(k)
	case fyne.KeyReturn, fyne.KeyEnter:
		b.Button.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	default:
		passKey(b, k)
	}
}

// TypedRune leaves letters to the window.
func (b *keyButton) TypedRune(r rune) {
	if r != ' ' {
		passRune(b, r)
	}
}

// tickBox is a box to tick.
type tickBox struct{ widget.Check }

func newTickBox(text string, changed func(bool)) *tickBox {
	b := &tickBox{}
	b.Text, b.OnChanged = text, changed
	b.ExtendBaseWidget(b)
	return b
}

// TypedKey leaves all but Space, which comes as a letter, to the window.
func (b *tickBox) TypedKey(k *fyne.KeyEvent) {
	if k.Name != fyne.KeySpace {
		passKey(b, k)
	}
}

// keySlider is a slider.
type keySlider struct{ widget.Slider }

func newKeySlider(least, most float64) *keySlider {
	s := &keySlider{}
	s.Min, s.Max, s.Orientation = least, most, widget.Horizontal
	s.ExtendBaseWidget(s)
	return s
}

// TypedKey leaves what does not move the slider to the window.
func (s *keySlider) TypedKey(k *fyne.KeyEvent) {
	switch k.Name {
	case fyne.KeyLeft, fyne.KeyRight, fyne.KeyUp, fyne.KeyDown:
		s.Slider.TypedKey(k)
	default:
		passKey(s, k)
	}
}
