package ui

import (
	"fmt"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2/widget"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

// askSheets shows the pages and asks which to make or print.
func (w *Window) askSheets() {
	w.settle()
	if why := w.noSheets(); why != "" {
		w.say("No sheets yet", why)
		return
	}
	newSheetPage(w).open()
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

// makeSheets writes the sheets into a folder off the main goroutine, with a sign
// that it is under way.
func (w *Window) makeSheets(folder string, l cutlist.List, o sheet.Options) {
	dir := expandHome(folder)
	w.settings.Folder, w.settings.Paper = dir, o.Paper.String()
	w.keepSettings()
	var written []string
	sol := w.snapshot.Solution
	w.underWay("Making the sheets", func() (err error) {
		written, err = sheet.WriteAll(dir, complete(l, sol), o)
		return err
	}, func(err error) { w.sheetsMade(dir, written, err) })
}

// underWay does work off the main goroutine while a sign shows that it goes on.
func (w *Window) underWay(title string, work func() error, done func(error)) {
	bar := widget.NewProgressBarInfinite()
	m := w.openModal(title, 320, rowsOf(bar))
	w.options.Tools.Go(func() {
		err := work()
		w.options.Tools.Dispatch(func() {
			bar.Stop()
			m.close()
			done(err)
		})
	})
}

// sheetsMade tells where the sheets are, or why not.
func (w *Window) sheetsMade(dir string, written []string, err error) {
	if err != nil {
		w.say("The sheets could not be made", sentence(err.Error()))
		return
	}
	w.printed()
	w.tell(fmt.Sprintf("Made %s in %s", count(len(written), "file"), dir))
	rows := rowsOf(newFlow("In "+dir+":", textSize, ink))
	for i, path := range written {
		if i == mostNamed {
			rows = append(rows, newFlow(fmt.Sprintf("and %d more", len(written)-i), textSize, soft))
			break
		}
		rows = append(rows, newFlow(filepath.Base(path), textSize, ink))
	}
	rows = append(rows, newFlow("Print at full size, 100 %, and check the 100 mm bar on the paper before you mark anything.", smallSize, careful))
	buttons := []button{{text: "Close", strong: true, cancel: true}}
	if show := w.options.OpenFile; show != nil && len(written) > 0 {
		buttons = append([]button{{text: "Show the PDF", act: func() { w.did(show(written[0])) }}}, buttons...)
	}
	w.openModal("The sheets are ready", modalWidth, rowsOf(newColumn(0, 3, rows...)), buttons...)
}

// mostNamed is how many files are named one by one.
const mostNamed = 12

// printSheets sends the pages to the system's print command.
func (w *Window) printSheets(o sheet.Options, pages []draw.Drawing) {
	if w.options.Print == nil {
		w.say("No printer from here", "This system has no print command (lp). Make the sheets, open the PDF and print it from there, at full size, 100 %.")
		return
	}
	if len(pages) == 0 {
		w.say("Nothing to print", "Every chapter is left out, or the pages are still being laid out.")
		return
	}
	w.settings.Paper = o.Paper.String()
	w.keepSettings()
	name := w.snapshot.Plan.Name
	w.underWay("Sending the sheets to the printer", func() error { return w.print(name, o.Paper, pages) }, func(err error) {
		if err != nil {
			w.say("The sheets were not printed", sentence(err.Error())+" Make the sheets, open the PDF and print it from there, at full size, 100 %.")
			return
		}
		w.printed()
		w.tell("Sent " + count(len(pages), "page") + " to the printer: check the 100 mm bar on the paper")
	})
}

// print writes the pages to a file of its own and hands that over.
func (w *Window) print(name string, paper sheet.Paper, pages []draw.Drawing) error {
	f, err := os.CreateTemp("", "tubewright-*.pdf")
	if err != nil {
		return fmt.Errorf("a file to print from: %w", err)
	}
	defer func() { w.logged(os.Remove(f.Name())) }()
	err = draw.PDF(f, draw.About{Title: name, Subject: "tubes, cut list and buying list"}, pages...)
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return err
	}
	return w.options.Print(f.Name(), paper)
}

func (w *Window) logged(err error) {
	if err != nil {
		w.options.Log(err)
	}
}
