package ui

import "fyne.io/fyne/v2"

// under is the panel of the picture that lies under the look: how faded it is,
// and what can be done with it.
type under struct {
	*column
	name  *flow
	fade  *slide
	wrong *flow
	model underModel
	dark  bool
	do    underActions
}

type underActions struct {
	onFade   func(index int, fade float64)
	onScale  func(index int)
	onLock   func(index int, on bool)
	onRemove func(index int)
}

func newUnder(do underActions) *under {
	u := &under{column: newColumn(0, 5), name: newFlow("", textSize, ink), wrong: newFlow("", smallSize, bad), do: do}
	u.fade = newSlide(0, 1, 0.05, func(v float64) {
		if u.model.shown && v != u.model.fade {
			u.do.onFade(u.model.index, v)
		}
	})
	return u
}

// show brings the panel up to a picture and reports whether its rows changed.
func (u *under) show(m underModel) bool {
	old := u.model
	u.model = m
	if m.shown && u.fade.slider.Value != m.fade {
		u.fade.slider.SetValue(m.fade)
	}
	old.fade = m.fade
	if old == m && u.dark == isDark() {
		return false
	}
	u.dark = isDark()
	u.fill()
	return true
}

func (u *under) fill() {
	if !u.model.shown {
		u.set()
		return
	}
	u.name.set(u.model.name, ink)
	u.wrong.set(u.model.wrong, bad)
	index := u.model.index
	lock, on := "Lock", true
	if u.model.locked {
		lock, on = "Unlock", false
	}
	scale := newButtonRow(button{text: "Scale by two points", act: func() { u.do.onScale(index) }})
	more := newButtonRow(
		button{text: lock, act: func() { u.do.onLock(index, on) }},
		button{text: "Take away", act: func() { u.do.onRemove(index) }})
	rows := []fyne.CanvasObject{newHeading("Picture under this look"), u.name, u.wrong}
	if u.model.wrong == "" {
		rows = append(rows, labelled("Fade", u.fade), scale)
	}
	rows = append(rows, more)
	if !u.model.locked && u.model.wrong == "" {
		rows = append(rows, newFlow("Drag it on the board until it lies right, then lock it.", smallSize, soft))
	}
	u.set(rows...)
}
