package board

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// A Pump calls tick once per frame from Start until Stop, on the UI goroutine.
type Pump interface {
	Start(tick func())
	Stop()
}

// framePump is a running animation: its ticks come after all events of a frame
// and before it is painted.
type framePump struct{ animation *fyne.Animation }

func (p *framePump) Start(tick func()) {
	p.animation = &fyne.Animation{
		Duration: time.Hour, RepeatCount: fyne.AnimationRepeatForever,
		Curve: fyne.AnimationLinear, Tick: func(float32) { tick() },
	}
	p.animation.Start()
}

func (p *framePump) Stop() {
	p.animation.Stop()
	p.animation = nil
}

// AtOnce is a pump that does all a frame has to do within Start. It serves
// where no frames pass, as in tests.
type AtOnce struct{ stopped bool }

// Start ticks until Stop is called.
func (p *AtOnce) Start(tick func()) {
	for p.stopped = false; !p.stopped; {
		tick()
	}
}

// Stop ends Start.
func (p *AtOnce) Stop() { p.stopped = true }

// onDesktop reports whether a real window system drives the app. In tests none
// does, and animations tick only once.
func onDesktop() bool {
	_, ok := driver().(desktop.Driver)
	return ok
}

// driver is the app's driver, nil before there is an app.
func driver() fyne.Driver {
	if app := fyne.CurrentApp(); app != nil {
		return app.Driver()
	}
	return nil
}

func newPump() Pump {
	if onDesktop() {
		return &framePump{}
	}
	return &AtOnce{}
}

// heldKeys gives the modifier keys held now; drag events do not tell.
func heldKeys() fyne.KeyModifier {
	if d, ok := driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}
