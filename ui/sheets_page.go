package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

// sheetPage is the question which sheets to make or print, with the pages to
// look at beside it.
type sheetPage struct {
	window  *Window
	choice  *sheetChoice
	list    cutlist.List // with the order of putting in, once that is known
	wanted  int          // counts what was asked for, so that only the newest pages are shown
	view    *picture
	caption *flow
	folder  *field

	feetFields []*field // date and revision
}

// Sizes of the page, in Fyne's pixels.
const (
	choiceWidth float32 = 320
	pageGap     float32 = 20
	pageChrome  float32 = 190 // title, buttons, caption and air around the page
)

func newSheetPage(w *Window) *sheetPage {
	p := &sheetPage{window: w, list: w.listing(), choice: &sheetChoice{paper: w.paper()}, caption: newFlow("Laying out the pages …", smallSize, soft)}
	p.view = newPicture(ground, func(width float32) float32 { return width }, func(width float32) draw.Drawing {
		d := p.choice.shown()
		p.view.perMM = float64(width) / d.W
		return d
	})
	return p
}

// size is how large a page is shown: as high as the window lets it.
func (p *sheetPage) size() fyne.Size {
	high := max(240, p.window.win.Canvas().Size().Height-grown(pageChrome))
	w, h := p.choice.paper.Size()
	wide := min(high*float32(w/h), p.window.win.Canvas().Size().Width-grown(choiceWidth)-pageGap-90)
	return fyne.NewSize(wide, wide*float32(h/w))
}

// open shows the question.
func (p *sheetPage) open() {
	w, size := p.window, p.size()
	folder, row := w.folderField(w.sheetFolder())
	p.folder = folder
	turn := newButtonRow(button{text: "Page before", act: func() { p.turn(-1) }}, button{text: "Next page", act: func() { p.turn(1) }})
	right := newColumn(0, 6, container.NewGridWrap(size, p.view), p.caption, turn)
	left := newColumn(0, 9, p.choices(row)...)
	wide, gap := grown(choiceWidth), max(0, pageGap-theme.Padding())
	var chosen fyne.CanvasObject = left
	high := max(left.HeightFor(wide), right.HeightFor(size.Width))
	if high > w.room() {
		chosen, high = newPane(left), w.room()
	}
	both := container.NewHBox(
		container.NewGridWrap(fyne.NewSize(wide, high), chosen),
		container.NewGridWrap(fyne.NewSize(gap, 1)),
		container.NewGridWrap(fyne.NewSize(size.Width, right.HeightFor(size.Width)), right),
	)
	m := w.showModal("Make sheets", both.MinSize().Width+2*modalInset, rowsOf(both), button{text: "Cancel", cancel: true},
		button{text: "Print", act: func() { w.printSheets(p.choice.options(), p.choice.pages) }},
		button{text: "Make sheets", strong: true, act: func() { w.makeSheets(folder.Text, p.list, p.choice.options()) }})
	m.other = p.key
	for _, f := range append(p.feetFields, folder) {
		f.modal = m
	}
	for _, b := range turn.presses {
		b.onKey = m.key
	}
	p.layOut()
	w.win.Canvas().Focus(folder)
}

// key turns pages by key.
func (p *sheetPage) key(name fyne.KeyName) bool {
	switch name {
	case fyne.KeyPageUp:
		p.turn(-1)
	case fyne.KeyPageDown:
		p.turn(1)
	default:
		return false
	}
	return true
}

// choices is all there is to choose, from the top down.
func (p *sheetPage) choices(folder fyne.CanvasObject) []fyne.CanvasObject {
	rows := []fyne.CanvasObject{newColumn(0, 2, newFlow("Folder for the PDF, the tables and the answer", smallSize, soft), folder), p.paperRow(), p.chapterRows()}
	rows = append(rows, p.besides(), p.feet())
	if p.window.snapshot.List.Draft {
		rows = append(rows, newFlow("This plan is a draft: the sheets say so, and which numbers to measure.", smallSize, careful))
	}
	return rows
}

func (p *sheetPage) paperRow() fyne.CanvasObject {
	papers := []sheet.Paper{sheet.A4, sheet.Letter}
	return labelled("Paper", newRadios([]string{papers[0].String(), papers[1].String()}, slices.Index(papers, p.choice.paper), func(i int) {
		p.choice.paper = papers[i]
		p.layOut()
	}))
}

func (p *sheetPage) chapterRows() fyne.CanvasObject {
	rows := newColumn(0, -6)
	for _, c := range sheet.Chapters() {
		if c == sheet.PieceTags && p.window.snapshot.Plan.Build <= 1 {
			continue
		}
		box := newTickBox(chapterWords[c], func(on bool) {
			p.choice.print(c, on)
			p.layOut()
		})
		box.Checked = p.choice.prints(c)
		rows.items = append(rows.items, box)
	}
	return labelled("Chapters", rows)
}

// besides is the files that are made only when asked for.
func (p *sheetPage) besides() fyne.CanvasObject {
	return labelled("Files for other programs", newColumn(0, -6,
		newTickBox("Drawings as SVG, in true mm", func(on bool) { p.choice.svg = on }),
		newTickBox("The machine in 3-D (glTF)", func(on bool) { p.choice.glb = on })))
}

// feet is what stands at the foot of each page.
func (p *sheetPage) feet() fyne.CanvasObject {
	field := func(hint string, to *string) fyne.CanvasObject {
		e := newField("")
		p.feetFields = append(p.feetFields, e)
		e.PlaceHolder = hint
		e.OnChanged = func(text string) {
			*to = text
			p.layOut()
		}
		return e
	}
	return labelled("At the foot of each page", container.NewGridWithColumns(2, field("date", &p.choice.date), field("revision", &p.choice.revision)))
}

// layOut makes the pages anew off the main goroutine; only the newest are shown.
func (p *sheetPage) layOut() {
	p.wanted++
	mine, o, l, sol := p.wanted, p.choice.options(), p.list, p.window.snapshot.Solution
	p.window.options.Tools.Go(func() {
		l := complete(l, sol)
		pages := sheet.Pages(l, o)
		p.window.options.Tools.Dispatch(func() {
			p.list = l
			if mine == p.wanted {
				p.choice.show(pages)
				p.refresh()
			}
		})
	})
}

func (p *sheetPage) turn(by int) {
	p.choice.step(by)
	p.refresh()
}

func (p *sheetPage) refresh() {
	p.caption.set(p.choice.caption(), soft)
	p.view.redraw()
}
