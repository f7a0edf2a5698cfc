package main

import (
	"fmt"
	"io"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"runtime/debug"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"tubewright/assets"
	"tubewright/ui"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// appID names the program to the system and its folder for settings.
const appID = "tubewright"

// gcPercent is how much may be thrown away, in percent of what is held, before
// the memory is cleared. Go's 100 lets the window grow by 80 MB in the first
// drags; half of that costs 1 % of a core while dragging.
const gcPercent = 50

// open shows the window and runs until it is closed.
func open(o options, problems io.Writer) error {
	if os.Getenv("GOGC") == "" { // whoever sets it knows why
		debug.SetGCPercent(gcPercent)
	}
	keepTexturesShortly(os.Getenv("FYNE_CACHE"))
	// fyneDo promises that we touch the window only from Fyne's goroutine,
	// which makes tables and lists much quicker.
	app.SetMetadata(fyne.AppMetadata{ID: appID, Name: "Tubewright", Version: version, Migrations: map[string]bool{"fyneDo": true}})
	a := app.NewWithID(appID)
	log := func(err error) { tell(problems, "tubewright:", err) }
	w := ui.New(a, ui.Options{
		Dir: settingsDir(log), Version: version, Theme: o.theme, Look: board.Look(o.look - 1),
		Size:  fyne.NewSize(o.width, o.height),
		Tools: session.NewTools(fyne.Do),
		After: func(d time.Duration, task func()) { time.AfterFunc(d, func() { fyne.Do(task) }) },
		Boxes: o.boxes, Log: log, Demos: assets.Demos(), Demo: assets.Demo,
		Starts: assets.Starts(), Start: assets.Start,
		Print:    printer(exec.LookPath),
		OpenFile: func(path string) error { return a.OpenURL(&url.URL{Scheme: "file", Path: filepath.ToSlash(path)}) },
	})
	switch {
	case o.plan != "":
		w.Begin(o.plan)
	case o.demo != "":
		if err := w.OpenDemo(o.demo); err != nil {
			return err
		}
	}
	w.Show()
	a.Run()
	return nil
}

// settingsDir is where settings and journal are kept; none when the system has
// no such place.
func settingsDir(log func(error)) string {
	dir, err := os.UserConfigDir()
	if err != nil {
		log(fmt.Errorf("settings and unsaved work are not kept: %w", err))
		return ""
	}
	return filepath.Join(dir, appID)
}
