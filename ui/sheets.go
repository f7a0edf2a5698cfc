package ui

import (
	"fmt"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tubewright/cutlist/sheet"
)

// askSheets asks for folder and paper and makes the printed sheets.
func (w *Window) askSheets() {
	w.settle()
	if why := w.noSheets(); why != "" {
		w.say("No sheets yet", why)
		return
	}
	folder, row := w.folderField(w.sheetFolder())
	paper := widget.NewRadioGroup([]string{sheet.A4.String(), sheet.Letter.String()}, nil)
	paper.Horizontal, paper.Required = true, true
	paper.Selected = w.paper().String()
	rows := []fyne.CanvasObject{
		newFlow("Makes one PDF with drawings, cut list, full-size templates and cautions, and three tables for a spreadsheet.", textSize, ink),
		labelled("Folder", row), labelled("Paper", paper),
	}
	if w.snapshot.List.Draft {
		rows = append(rows, newFlow("This plan is a draft: the sheets say so, and which numbers to measure.", smallSize, careful))
	}
	m := w.openModal("Make sheets", modalWidth, rows, button{text: "Cancel", cancel: true},
		button{text: "Make sheets", strong: true, act: func() { w.makeSheets(folder.Text, paper.Selected) }})
	folder.modal = m
	w.win.Canvas().Focus(folder)
	folder.TypedShortcut(&fyne.ShortcutSelectAll{})
}

// noSheets says why there is nothing to print; "" when there is.
func (w *Window) noSheets() string {
	switch s := w.snapshot; {
	case !s.Current():
		return "The plan is still being worked out, or could not be. Wait until the ready line says so, or look at its findings."
	case len(s.List.Tubes) == 0:
		return "The plan has no tube yet, so there is nothing to print."
	}
	return ""
}

func (w *Window) paper() sheet.Paper {
	if w.settings.Paper == "" {
		return sheet.A4
	}
	p, err := sheet.ParsePaper(w.settings.Paper)
	if err != nil {
		return sheet.A4 // settings of another version: ask again
	}
	return p
}

func (w *Window) sheetFolder() string {
	if w.settings.Folder != "" {
		return w.settings.Folder
	}
	return filepath.Join(w.saveFolder(), "sheets")
}

// makeSheets writes the sheets off the main goroutine, with a sign that it is
// under way.
func (w *Window) makeSheets(folder, paperName string) {
	paper, err := sheet.ParsePaper(paperName)
	if err != nil {
		w.did(err)
		return
	}
	dir := expandHome(folder)
	w.settings.Folder, w.settings.Paper = dir, paperName
	w.keepSettings()
	bar := widget.NewProgressBarInfinite()
	m := w.openModal("Making the sheets", 320, []fyne.CanvasObject{bar})
	l, tools := w.listing(), w.options.Tools
	tools.Go(func() {
		written, err := sheet.WriteAll(dir, l, sheet.Options{Paper: paper})
		tools.Dispatch(func() {
			bar.Stop()
			m.close()
			w.sheetsMade(dir, written, err)
		})
	})
}

// sheetsMade tells where the sheets are, or why not.
func (w *Window) sheetsMade(dir string, written []string, err error) {
	if err != nil {
		w.say("The sheets could not be made", sentence(err.Error()))
		return
	}
	w.tell(fmt.Sprintf("Made %s in %s", count(len(written), "file"), dir))
	rows := []fyne.CanvasObject{newFlow("In "+dir+":", textSize, ink)}
	for _, path := range written {
		rows = append(rows, newFlow(filepath.Base(path), textSize, ink))
	}
	rows = append(rows, newFlow("Print at full size, 100 %, and check the 100 mm bar on the paper before you mark anything.", smallSize, careful))
	buttons := []button{{text: "Close", strong: true, cancel: true}}
	if show := w.options.OpenFile; show != nil && len(written) > 0 {
		buttons = append([]button{{text: "Show the PDF", act: func() { w.did(show(written[0])) }}}, buttons...)
	}
	w.openModal("The sheets are ready", modalWidth, []fyne.CanvasObject{newColumn(0, 3, rows...)}, buttons...)
}
