package ui

import (
	"path/filepath"

	"fyne.io/fyne/v2"

	"tubewright/ui/session"
)

// loadSettings reads what was kept at the last start.
func (w *Window) loadSettings() {
	if w.options.Dir == "" {
		return
	}
	s, err := session.LoadSettings(w.options.Dir)
	if err != nil {
		w.options.Log(err) // settings are a comfort: begin without them
	}
	w.settings = s
	w.journal = session.NewJournal(filepath.Join(w.options.Dir, "journal"))
	w.session.Keep(w.journal)
}

func (w *Window) keepSettings() {
	if w.options.Dir == "" {
		return
	}
	if err := w.settings.Save(w.options.Dir); err != nil {
		w.options.Log(err)
	}
}

// offerLost offers plans that an ended program left unsaved.
func (w *Window) offerLost() {
	if w.journal == nil {
		return
	}
	lost, err := w.journal.Lost()
	if err != nil {
		w.options.Log(err)
	}
	if len(lost) == 0 {
		return
	}
	w.askLost(lost[len(lost)-1])
}

// askLost asks what shall become of unsaved work.
func (w *Window) askLost(l session.Lost) {
	from := "It had no file yet."
	if l.Path != "" {
		from = "Its file is " + l.Path + "."
	}
	w.openModal("Unsaved work was found", modalWidth, []fyne.CanvasObject{
		newFlow("Tubewright ended before "+l.Name+" was saved. "+from+" The last state can be shown again; nothing is written until you save.", textSize, ink),
	},
		button{text: "Later", cancel: true},
		button{text: "Throw it away", act: func() { w.did(w.journal.Discard(l)) }},
		button{text: "Show it", strong: true, act: func() { w.recover(l) }})
}

func (w *Window) recover(l session.Lost) {
	w.unlessUnsaved(func() {
		if err := w.session.Recover(l); err != nil {
			w.tellProblems(l.Name, err)
			return
		}
		w.did(w.journal.Discard(l))
		w.begun("This is the last state before the program ended. Save it to keep it.")
	})
}
