package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/ui/board"
)

// shelfPage lets the person look through the catalogue's parts.
type shelfPage struct {
	window *Window
	search *field
	list   *pane
	rows   []*press // those shown, from the top
	modal  *modal
	thumbs map[string]*thumb // made when first shown
}

// Sizes of the page, in Fyne's pixels: its list's height, and what stands around that.
const (
	shelfWidth  float32 = 520
	shelfHigh   float32 = 430
	shelfChrome float32 = 270
)

// askPart lets the person choose a part of the catalogue, or begin one of their own.
func (w *Window) askPart() {
	w.settle()
	s := &shelfPage{window: w, search: newField(""), list: newPane(newColumn(2, 4)), thumbs: map[string]*thumb{}}
	s.search.PlaceHolder = "radiator, pump, 140 …"
	s.search.OnChanged = func(string) { s.fill() }
	width := w.wide(shelfWidth)
	high := max(roomLeast, min(grown(shelfHigh), w.win.Canvas().Size().Height-grown(shelfChrome)))
	s.modal = w.showModal("Add a part", width, rowsOf(
		labelled("Search the catalogue", s.search),
		container.NewGridWrap(fyne.NewSize(width-2*modalInset, high), s.list),
		newFlow("It is put in the middle of the case. The catalogue's numbers are only typical: measure your own part before you cut.", smallSize, soft),
	), button{text: "Cancel", cancel: true}, button{text: "Add the first", strong: true, act: s.first})
	s.search.modal = s.modal
	s.modal.other = s.down
	s.fill()
	w.win.Canvas().Focus(s.search)
}

// down goes from the search field into the list.
func (s *shelfPage) down(name fyne.KeyName) bool {
	if name == fyne.KeyDown && len(s.rows) > 0 && s.window.win.Canvas().Focused() == s.search {
		s.window.win.Canvas().Focus(s.rows[0])
		return true
	}
	return false
}

// first adds what stands on top of the list.
func (s *shelfPage) first() {
	if len(s.rows) > 0 {
		s.rows[0].act()
	}
}

// fill lists what the search finds, and a part of one's own last.
func (s *shelfPage) fill() {
	s.rows = nil
	var objects []fyne.CanvasObject
	add := func(p *press) {
		p.inset = fyne.NewSize(8, 4)
		s.rows, objects = append(s.rows, p), append(objects, p)
	}
	for _, k := range searchParts(shelfOf(s.window.snapshot.Plan).Parts, s.search.Text) {
		add(s.row(k))
	}
	if len(s.rows) == 0 {
		objects = append(objects, newInset(newFlow("The catalogue has nothing of that name.", smallSize, soft)))
	}
	own := newFlow("A part of your own", textSize, accent)
	own.bold = true
	add(newPress(newColumn(0, 1, own, newFlow("A box to begin with; boxes, cylinders and ports are yours to set.", smallSize, soft)), s.own))
	s.list.body.set(objects...)
	s.list.rove(s.rows)
	s.list.reflow()
}

func (s *shelfPage) row(k route.Part) *press {
	plan := s.window.snapshot.Plan
	t := s.thumbs[k.Name]
	if t == nil {
		t = newThumb(partScene(plan, route.Part{Name: k.Name, Kind: k.Name}), board.Turntable, thumbSmall)
		s.thumbs[k.Name] = t
	}
	name := newFlow(k.Name, textSize, accent)
	name.bold = true
	return newPress(newIconRow(t, newColumn(0, 1, name, newFlow(partFacts(plan, k, s.window.snapshot.Units), smallSize, soft))), func() { s.add(k.Name) })
}

// partFacts says how large a part of the catalogue is and how many ports it has.
func partFacts(plan route.Plan, k route.Part, u route.Units) string {
	whole := plan.Whole(route.Part{Name: k.Name, Kind: k.Name})
	lo, hi := boundsOf(whole.Solids)
	size := hi.Sub(lo)
	stack := ""
	if whole.Stack.Given() {
		stack = "fans and thickness can be set"
	}
	return dotted(lengthText(size[0], u)+" × "+lengthText(size[1], u)+" × "+lengthText(size[2], u)+" "+string(u), count(len(whole.Ports), "port"), stack)
}

func (s *shelfPage) add(kind string) {
	s.close()
	name, err := s.window.session.AddPart(kind)
	if err != nil {
		s.window.did(err)
		return
	}
	s.window.pick(board.PartTarget(name))
	s.window.focusBoard()
}

// own adds a box of the person's own and shows its form.
func (s *shelfPage) own() {
	s.close()
	w := s.window
	name, err := w.session.AddOwnPart("part", []route.Solid{{Box: true, To: mgl64.Vec3{60, 60, 60}}})
	if err != nil {
		w.did(err)
		return
	}
	w.pick(board.PartTarget(name))
	w.askPartForm(name)
}

// close closes the page where that has not been done by its button.
func (s *shelfPage) close() {
	for _, m := range s.window.modals {
		if m == s.modal {
			s.modal.close()
		}
	}
}

// searchParts gives the parts whose names hold every word of a text.
func searchParts(all []route.Part, text string) (found []route.Part) {
	for _, k := range all {
		name, ok := strings.ToLower(k.Name), true
		for _, word := range strings.Fields(strings.ToLower(text)) {
			ok = ok && strings.Contains(name, word)
		}
		if ok {
			found = append(found, k)
		}
	}
	return found
}
