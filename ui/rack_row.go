package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"tubewright/cutlist"
	sketch "tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

// barRow is one bar of the stock rack: what it is, and the bar to scale with
// its pieces and what is left of it.
type barRow struct {
	widget.BaseWidget
	list cutlist.List
	of   cutlist.Bar
	name *canvas.Text
	bar  *picture
	wide float32 // of the names in all rows

	onHover func(string) // nil: nobody is told
}

const (
	barHigh float32 = 26
	// barPerMM makes the writing on the bars, meant for paper, fit for the screen.
	barPerMM float32 = 5.2
)

func newBarRow(onHover func(string)) *barRow {
	r := &barRow{name: newLine("", smallSize, ink), onHover: onHover}
	r.name.Alignment = fyne.TextAlignTrailing
	r.bar = newPicture(face, func(float32) float32 { return grown(barHigh) }, func(width float32) sketch.Drawing {
		return sheet.Bar(r.list, r.of, sheetTheme(), float64(width/grown(barPerMM)), float64((barHigh-2)/barPerMM))
	})
	r.bar.perMM = float64(grown(barPerMM))
	r.ExtendBaseWidget(r)
	return r
}

// show changes the bar. The width of the names is shared by all rows, so that
// bars of one scale stand under one another.
func (r *barRow) show(l cutlist.List, b cutlist.Bar, name string, wide float32) {
	r.list, r.of, r.wide = l, b, wide
	setLine(r.name, name, ink)
	r.bar.redraw()
	r.Refresh()
}

// MouseIn, MouseMoved and MouseOut tell the bar's pieces.
func (r *barRow) MouseIn(*desktop.MouseEvent) { r.tell(barWords(r.list, r.of)) }

// MouseMoved is part of being hoverable.
func (r *barRow) MouseMoved(*desktop.MouseEvent) {}

// MouseOut ends it.
func (r *barRow) MouseOut() { r.tell("") }

func (r *barRow) tell(text string) {
	if r.onHover != nil {
		r.onHover(text)
	}
}

// sheetTheme is the colours of drawings that are shared with the paper.
func sheetTheme() sheet.Theme {
	t := sheet.LightTheme()
	if isDark() {
		t = sheet.DarkTheme()
	}
	t.Paper, t.Ink, t.Faint, t.Rule = tone(face), tone(ink), tone(soft), tone(rule)
	return t
}

// HeightFor is the height of a bar.
func (r *barRow) HeightFor(float32) float32 { return grown(barHigh) }

func (r *barRow) CreateRenderer() fyne.WidgetRenderer { return &barRowRenderer{r} }

type barRowRenderer struct{ *barRow }

func (r *barRowRenderer) MinSize() fyne.Size { return fyne.NewSize(0, grown(barHigh)) }

func (r *barRowRenderer) Layout(size fyne.Size) {
	name, bar := rackBoxes(size, r.wide)
	centred(name, r.name)
	bar.put(r.bar)
}

// Refresh stands name and bar anew: their widths may be others.
func (r *barRowRenderer) Refresh() { r.Layout(r.Size()) }

func (r *barRowRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.name, r.bar}
}
func (r *barRowRenderer) Destroy() {}
