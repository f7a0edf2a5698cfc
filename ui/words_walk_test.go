package ui

import (
	"fmt"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// area is a part of the window, in Fyne's pixels.
type area struct{ x0, y0, x1, y1 float32 }

func areaOf(at fyne.Position, size fyne.Size) area {
	return area{at.X, at.Y, at.X + size.Width, at.Y + size.Height}
}

func (a area) cut(b area) area {
	return area{max(a.x0, b.x0), max(a.y0, b.y0), min(a.x1, b.x1), min(a.y1, b.y1)}
}

// holds reports whether b lies in a, but for a slip.
func (a area) holds(b area, slip float32) bool {
	return b.x0 >= a.x0-slip && b.y0 >= a.y0-slip && b.x1 <= a.x1+slip && b.y1 <= a.y1+slip
}

func (a area) empty() bool { return a.x1 <= a.x0 || a.y1 <= a.y0 }

func (a area) String() string {
	return fmt.Sprintf("(%.1f, %.1f)-(%.1f, %.1f)", a.x0, a.y0, a.x1, a.y1)
}

var everywhere = area{-math.MaxFloat32, -math.MaxFloat32, math.MaxFloat32, math.MaxFloat32}

// word is a line of text as it stands in the window.
type word struct {
	of      *canvas.Text
	letters area // what it takes, measured
	limit   area // what it must stay in: every object around it, but for what scrolls
	clip    area // what can be seen of it now
	path    []fyne.CanvasObject
	layer   int // 0 for the window, then each thing over it
}

func (w word) String() string {
	var names []string
	for _, o := range w.path {
		names = append(names, strings.TrimPrefix(strings.TrimPrefix(fmt.Sprintf("%T", o), "*"), "ui."))
	}
	return fmt.Sprintf("%q at %v in %s", w.of.Text, w.letters, strings.Join(names, " > "))
}

// wordsOn lists every line of text on a canvas.
func wordsOn(c fyne.Canvas) (all []word) {
	whole := areaOf(fyne.Position{}, c.Size())
	walk := wordWalk{each: func(w word) { all = append(all, w) }}
	for i, o := range append([]fyne.CanvasObject{c.Content()}, c.Overlays().List()...) {
		walk.layer = i
		walk.visit(o, fyne.Position{}, whole, whole, nil)
	}
	return all
}

type wordWalk struct {
	layer int
	each  func(word)
}

// visit goes down the tree of what is shown. limit shrinks with every object on the
// way, and opens again along the direction that a scroll scrolls.
func (v *wordWalk) visit(o fyne.CanvasObject, at fyne.Position, limit, clip area, path []fyne.CanvasObject) {
	if o == nil || !o.Visible() {
		return
	}
	at = at.Add(o.Position())
	own := areaOf(at, o.Size())
	path = append(path[:len(path):len(path)], o)
	limit = limit.cut(own)
	switch o := o.(type) {
	case *canvas.Text:
		if strings.TrimSpace(o.Text) != "" {
			v.each(word{o, lettersOf(o, at), limit, clip, path, v.layer})
		}
	case *container.Scroll:
		v.visit(o.Content, at, unbound(withoutBar(limit, own, o), o.Direction), clip.cut(own), path)
	case *fyne.Container:
		for _, child := range o.Objects {
			v.visit(child, at, limit, clip, path)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			v.visit(child, at, limit, clip, path)
		}
	}
}

// withoutBar is a limit without what the bar at the side takes.
func withoutBar(limit, own area, o *container.Scroll) area {
	if o.Direction == container.ScrollVerticalOnly && o.Content.Size().Height > o.Size().Height {
		limit.x1 = min(limit.x1, own.x1-theme.Size(theme.SizeNameScrollBarSmall))
	}
	return limit
}

// unbound is a limit without bounds where a scroll can go.
func unbound(limit area, d container.ScrollDirection) area {
	if d == container.ScrollVerticalOnly || d == container.ScrollBoth {
		limit.y0, limit.y1 = everywhere.y0, everywhere.y1
	}
	if d == container.ScrollHorizontalOnly || d == container.ScrollBoth {
		limit.x0, limit.x1 = everywhere.x0, everywhere.x1
	}
	return limit
}

// lettersOf is what a line of text takes, as Fyne aligns it.
func lettersOf(t *canvas.Text, at fyne.Position) area {
	want := fyne.MeasureText(t.Text, t.TextSize, t.TextStyle)
	spare := t.Size().Width - want.Width
	switch t.Alignment {
	case fyne.TextAlignCenter:
		at.X += spare / 2
	case fyne.TextAlignTrailing:
		at.X += spare
	}
	at.Y += (t.Size().Height - want.Height) / 2
	return areaOf(at, want)
}
