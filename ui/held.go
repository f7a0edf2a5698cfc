package ui

import (
	"slices"

	"fyne.io/fyne/v2"
)

// holder is a widget of ours that others stand in, from the top down.
type holder interface{ held() []fyne.CanvasObject }

func (c *column) held() []fyne.CanvasObject   { return c.items }
func (p *pane) held() []fyne.CanvasObject     { return []fyne.CanvasObject{p.body} }
func (p *panel) held() []fyne.CanvasObject    { return []fyne.CanvasObject{p.body} }
func (i *indent) held() []fyne.CanvasObject   { return []fyne.CanvasObject{i.content} }
func (b *beside) held() []fyne.CanvasObject   { return []fyne.CanvasObject{b.left, b.right} }
func (r *iconRow) held() []fyne.CanvasObject  { return []fyne.CanvasObject{r.text} }
func (c *card) held() []fyne.CanvasObject     { return []fyne.CanvasObject{c.body} }
func (h *cardHead) held() []fyne.CanvasObject { return []fyne.CanvasObject{h.name} }
func (s *slide) held() []fyne.CanvasObject    { return []fyne.CanvasObject{s.slider} }
func (r *formRow) held() []fyne.CanvasObject  { return []fyne.CanvasObject{r.field()} }

func (r *buttonRow) held() []fyne.CanvasObject { return (&buttonRowRenderer{r}).Objects() }
func (n *numbers) held() []fyne.CanvasObject   { return (&numbersRenderer{n}).Objects() }

func (l *buyLine) held() []fyne.CanvasObject {
	if l.onHand == nil {
		return nil
	}
	return []fyne.CanvasObject{l.onHand}
}

// heldBy is what stands in an object of ours or in a container of Fyne's.
func heldBy(o fyne.CanvasObject) []fyne.CanvasObject {
	switch o := o.(type) {
	case holder:
		return o.held()
	case *fyne.Container:
		return o.Objects
	}
	return nil
}

// focusablesIn lists what in an object can have the focus, in the order of Tab.
func focusablesIn(o fyne.CanvasObject) (all []fyne.Focusable) {
	if o == nil || !o.Visible() {
		return nil
	}
	if f, ok := o.(fyne.Focusable); ok {
		return []fyne.Focusable{f}
	}
	for _, k := range heldBy(o) {
		all = append(all, focusablesIn(k)...)
	}
	return all
}

// downIn is how far down inside an object another stands. Fyne knows that only of
// what it has painted.
func downIn(outer, inner fyne.CanvasObject) (y float32, ok bool) {
	if outer == inner {
		return 0, true
	}
	for _, k := range heldBy(outer) {
		if y, ok := downIn(k, inner); ok {
			return y + k.Position().Y, true
		}
	}
	return 0, false
}

// keepFocus makes a change of what stands in an object. Where that takes away
// what has the focus, what stands there now under the same name gets it, else
// what stands in its place; lost is called where nothing does.
func keepFocus(c fyne.Canvas, in fyne.CanvasObject, change, lost func()) {
	if c == nil || c.Focused() == nil {
		change()
		return
	}
	f := c.Focused()
	before := focusablesIn(in)
	at := slices.Index(before, f)
	change()
	if at < 0 || c.Focused() != f { // the change has seen to it
		return
	}
	switch after := focusablesIn(in); {
	case slices.Contains(after, f):
	case len(after) == 0:
		lost()
	default:
		c.Focus(after[heir(before, after, at)])
	}
}

// heir is the place of what takes over from the one at a place: the nearest of its
// name, else the one in its place.
func heir(before, after []fyne.Focusable, at int) int {
	name, best := nameOf(before[at]), -1
	for i, f := range after {
		if name != "" && nameOf(f) == name && (best < 0 || abs(i-at) < abs(best-at)) {
			best = i
		}
	}
	if best < 0 {
		best = min(at, len(after)-1)
	}
	return best
}

func abs(n int) int { return max(n, -n) }

// nameOf is the first text on a field that can be pressed; empty for others.
func nameOf(f fyne.Focusable) string {
	p, ok := f.(*press)
	if !ok {
		return ""
	}
	return firstText(p.content)
}

func firstText(o fyne.CanvasObject) string {
	if f, ok := o.(*flow); ok {
		return f.text
	}
	for _, k := range heldBy(o) {
		if text := firstText(k); text != "" {
			return text
		}
	}
	return ""
}
