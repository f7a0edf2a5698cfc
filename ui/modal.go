package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// modal is a question or an answer over the window. Enter presses its strong
// button, Esc its cancelling one.
type modal struct {
	window  *Window
	pop     *widget.PopUp
	column  *column
	width   float32
	buttons []button
	row     *buttonRow
	head    *flow
	text    *pane                   // a long text that Up and Down scroll; nil: none
	place   *fyne.Container         // holds the column at its size
	within  map[string]*press       // what else can be pressed in it, by name, for tests of the real window
	other   func(fyne.KeyName) bool // what else keys do here; nil: nothing
	page    *page                   // it follows the plan; nil: it does not
	before  fyne.Focusable          // had the focus when it was opened; nil: nothing had
}

func (m *modal) title() string { return m.head.text }

// modalWidth suits lines of about seventy letters.
const modalWidth float32 = 460

// wide is the width of a question that suits a width at the size text comes with:
// wider with larger text, but never wider than the window.
func (w *Window) wide(width float32) float32 {
	return min(grown(width), w.win.Canvas().Size().Width-modalAir)
}

// room is the height that the rows of a question may have.
func (w *Window) room() float32 {
	return max(roomLeast, w.win.Canvas().Size().Height-modalAir-grown(modalChrome))
}

// Sizes around the rows of a question, in Fyne's pixels.
const (
	modalAir    float32 = 30  // between it and the window's edges, both together
	modalChrome float32 = 100 // title and buttons with the gaps round them
	roomLeast   float32 = 120
	modalInset  float32 = 14
	modalGap    float32 = 12
)

// openModal shows a title, rows of content and buttons. A button closes the
// modal before it acts. Rows that the window has no room for scroll.
func (w *Window) openModal(title string, width float32, rows []fyne.CanvasObject, buttons ...button) *modal {
	width = w.wide(width)
	inner := width - 2*modalInset
	body := newColumn(0, modalGap, rows...)
	if body.HeightFor(inner) <= w.room() {
		return w.showModal(title, width, rows, buttons...)
	}
	text := newPane(newColumn(longInset, modalGap, rows...))
	m := w.showModal(title, width, rowsOf(container.NewGridWrap(fyne.NewSize(inner, w.room()), text)), buttons...)
	m.text = text
	return m
}

// showModal is openModal with a width as it is, and with rows that there is room for.
func (w *Window) showModal(title string, width float32, rows []fyne.CanvasObject, buttons ...button) *modal {
	m := &modal{window: w, width: width, buttons: buttons}
	head := newFlow(title, titleSize, ink)
	head.bold = true
	shown := make([]button, len(buttons))
	for i, b := range buttons {
		shown[i] = b
		shown[i].act = func() { m.press(b) }
	}
	row := newButtonRow(shown...)
	row.toRight = true
	for _, p := range row.presses {
		p.onKey = m.key
	}
	m.row, m.head = row, head
	m.column = newColumn(modalInset, modalGap, append(append([]fyne.CanvasObject{head}, rows...), row)...)
	m.before = w.win.Canvas().Focused()
	w.win.Canvas().Unfocus()
	m.place = container.NewGridWrap(m.size(), m.column)
	m.pop = widget.NewModalPopUp(m.place, w.win.Canvas())
	w.modals = append(w.modals, m)
	m.pop.Show()
	w.writeBoxes()
	return m
}

func (m *modal) size() fyne.Size { return fyne.NewSize(m.width, m.column.HeightFor(m.width)) }

func (m *modal) press(b button) {
	m.close()
	if b.act != nil {
		b.act()
	}
}

func (m *modal) close() {
	m.window.win.Canvas().Unfocus()
	m.pop.Hide()
	for i, o := range m.window.modals {
		if o == m {
			m.window.modals = append(m.window.modals[:i], m.window.modals[i+1:]...)
			break
		}
	}
	m.window.focusAgain(m.before)
	m.window.writeBoxes()
}

// key presses the button that a key stands for, or scrolls.
func (m *modal) key(name fyne.KeyName) bool {
	if m.text != nil && m.text.scrollBy(name) {
		return true
	}
	if m.other != nil && m.other(name) {
		return true
	}
	for _, b := range m.buttons {
		enter := name == fyne.KeyReturn || name == fyne.KeyEnter
		if (enter && b.strong) || (name == fyne.KeyEscape && b.cancel) {
			m.press(b)
			return true
		}
	}
	return false
}

// say shows a sentence that only wants to be read.
func (w *Window) say(title, text string) {
	w.openModal(title, modalWidth, paragraphs(text), button{text: "Close", strong: true, cancel: true})
}

// ask puts a question; yes is what Enter does.
func (w *Window) ask(title, text, yes string, act func()) {
	w.openModal(title, modalWidth, paragraphs(text),
		button{text: "Cancel", cancel: true}, button{text: yes, act: act, strong: true})
}

// rowsOf lists what stands in a question.
func rowsOf(rows ...fyne.CanvasObject) []fyne.CanvasObject { return rows }

// paragraphs is a text as rows that wrap.
func paragraphs(text string) []fyne.CanvasObject {
	return []fyne.CanvasObject{newFlow(text, textSize, ink)}
}

// readWidth suits lines of about ninety letters.
const readWidth float32 = 600

// read shows a long text that scrolls.
func (w *Window) read(title string, rows ...fyne.CanvasObject) {
	w.readWide(title, readWidth, rows...)
}

func (w *Window) readWide(title string, width float32, rows ...fyne.CanvasObject) {
	w.readThen(title, width, rows)
}

// readThen is readWide with further buttons before the one that closes.
func (w *Window) readThen(title string, width float32, rows []fyne.CanvasObject, more ...button) {
	width = w.wide(width)
	body := newPane(newColumn(longInset, 8, rows...))
	inner := width - 2*modalInset
	high := min(w.room(), body.body.HeightFor(inner))
	m := w.showModal(title, width, []fyne.CanvasObject{container.NewGridWrap(fyne.NewSize(inner, high), body)},
		append(more, button{text: "Close", strong: true, cancel: true})...)
	m.text = body
}
