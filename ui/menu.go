package ui

import (
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
)

// setMenu builds the main menu for what is shown. It does nothing when that
// would change no line of it: a new menu closes one that is open.
func (w *Window) setMenu() {
	var now []string
	main := &fyne.MainMenu{}
	for _, g := range w.menus() {
		menu := fyne.NewMenu(g.name)
		for _, c := range g.commands {
			item := w.menuItem(c)
			now = append(now, item.Label, onOff(item.Disabled))
			menu.Items = append(menu.Items, item)
		}
		main.Items = append(main.Items, menu)
	}
	now = append(now, w.settings.Recent...)
	if slices.Equal(now, w.menuNow) {
		return
	}
	w.menuNow = now
	w.win.SetMainMenu(main)
}

func onOff(off bool) string {
	if off {
		return "off"
	}
	return "on"
}

func (w *Window) menuItem(c command) *fyne.MenuItem {
	switch c.name {
	case "":
		return fyne.NewMenuItemSeparator()
	case openRecent:
		return w.recentItem()
	case openDemo:
		return w.demoItem()
	}
	act := w.acting(c.act)
	if c.name == undoItem || c.name == redoItem {
		act = w.actingOnPages(c.act)
	}
	item := fyne.NewMenuItem(c.name, act)
	item.Shortcut, item.IsQuit = c.shortcut, c.name == quitItem
	item.Disabled = c.off != nil && c.off()
	switch {
	case c.name == undoItem && w.snapshot.Undo != "":
		item.Label = "Undo: " + w.snapshot.Undo
	case c.name == redoItem && w.snapshot.Redo != "":
		item.Label = "Redo: " + w.snapshot.Redo
	}
	return item
}

// acting does a command where no question is open. What was typed in a field each
// command keeps first, by settle: Fyne 2.7.1 leaves the focus there (its issue 5107).
func (w *Window) acting(act func()) func() {
	return func() {
		if len(w.modals) > 0 || act == nil {
			return
		}
		act()
	}
}

// actingOnPages is acting for what may be done while a page that follows the
// plan is open as well.
func (w *Window) actingOnPages(act func()) func() {
	return func() {
		if n := len(w.modals); n == 0 || w.modals[n-1].page != nil {
			act()
		}
	}
}

// settle keeps what was typed in a field. It keeps the focus too.
func (w *Window) settle() {
	if e, ok := w.win.Canvas().Focused().(*numberEntry); ok {
		e.commit()
	}
}

func (w *Window) recentItem() *fyne.MenuItem {
	item := fyne.NewMenuItem(openRecent, nil)
	item.ChildMenu = fyne.NewMenu("")
	for _, path := range w.settings.Recent {
		label := filepath.Base(path) + "  in  " + filepath.Dir(path)
		item.ChildMenu.Items = append(item.ChildMenu.Items, fyne.NewMenuItem(label, w.acting(func() { w.openPath(path) })))
	}
	item.Disabled = len(w.settings.Recent) == 0
	return item
}

func (w *Window) demoItem() *fyne.MenuItem {
	item := fyne.NewMenuItem(openDemo, nil)
	item.ChildMenu = fyne.NewMenu("")
	for _, name := range w.options.Demos {
		item.ChildMenu.Items = append(item.ChildMenu.Items,
			fyne.NewMenuItem(demoTitle(name), w.acting(func() { w.askDemo(name) })))
	}
	return item
}

// demoTitle writes a demo's name as a title: "Ferry bridge".
func demoTitle(name string) string {
	words := strings.ReplaceAll(name, "-", " ")
	return strings.ToUpper(words[:1]) + words[1:]
}
