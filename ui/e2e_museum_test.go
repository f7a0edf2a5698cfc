//go:build window

package ui

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/planfile"
	"tubewright/route/planfile/demoplan"
)

// From a starting case to the sheets of the museum demo's machine, by keys alone:
// the pointer is parked beside the window and never moves.
func TestWindowMakesTheMuseumDemoByKeysAlone(t *testing.T) {
	m := museum{newStage(t), demoplan.Read(t, "conservation-scanner")}
	begun := time.Now()
	m.run("xdotool", "mousemove", "1399", "999")
	m.beginFromTheMiddleCase()
	m.setCaseAndSaw()
	m.takeAway("pump", "front", "top")
	for _, name := range []string{"pump", "front", "top", "front-fan-1", "front-fan-2", "top-fan-1", "top-fan-2", "top-fan-3"} {
		m.addFromTheCatalogue(name)
	}
	for _, name := range []string{"board", "memory-1", "memory-2", "processor", "card"} {
		m.moveTo(name)
	}
	m.makeOwn("capture")
	m.makeOwn("column")
	m.addFill()
	m.settleAnOverlap()
	for _, r := range m.want.Runs {
		m.joinPorts(r)
	}
	m.chooseAnotherWay("processor-to-card")
	m.countOnHand()
	path := m.saveAs("by-keys")
	dir := filepath.Join(t.TempDir(), "sheets")
	m.sheetsInto(dir)
	t.Logf("at the keyboard for %.1f s", time.Since(begun).Seconds())
	if at := m.run("xdotool", "getmouselocation"); !strings.HasPrefix(at, "x:1399 y:999 ") {
		t.Errorf("the pointer is at %s: it was touched", at)
	}
	m.isTheMuseumsMachine(path)
	m.isCutFrom(path, dir)
}

// museum is a person at the keyboard who copies the demo's machine.
type museum struct {
	*stage
	want route.Plan
}

// tabTo presses a key until the focus is on something.
func (s *stage) tabTo(key, name string) {
	s.t.Helper()
	s.tabUntil(key, name, func(focus string) bool { return focus == name })
}

func (s *stage) tabUntil(key, what string, there func(focus string) bool) {
	s.t.Helper()
	s.focusAtRest()
	const most = 60 // more than there are stops on any page
	for range most {
		was := s.boxes()
		if there(was.Focus) {
			return
		}
		s.key(key)
		s.until("the focus elsewhere than on "+was.Focus, func(b Boxes) bool { return b.Focus != was.Focus })
	}
	s.t.Fatalf("%s never comes to %s; it is on %q at last", key, what, s.boxes().Focus)
}

// focusAtRest waits until no key is on its way that moves the focus: it would
// count as the next one's.
func (s *stage) focusAtRest() {
	s.t.Helper()
	for last := "nowhere"; ; time.Sleep(3 * focusPause) {
		now := s.boxes().Focus
		if now == last {
			return
		}
		last = now
	}
}

// enter types into the field with the focus, whose old text is marked.
func (s *stage) enter(text string) {
	s.t.Helper()
	s.write(text)
	s.key("Tab")
}

// choose types a word in the field to choose in that has the focus, and looks that
// it is taken, as a person does.
func (s *stage) choose(word string) {
	s.t.Helper()
	for range 3 {
		s.write(word)
		for begun := time.Now(); time.Since(begun) < 3*time.Second; time.Sleep(focusPause) {
			if strings.HasPrefix(s.boxes().Chosen, word) {
				return
			}
		}
		s.t.Logf("%q is typed again: %q stands there, and %q has the focus", word, s.boxes().Chosen, s.boxes().Focus)
	}
	s.t.Fatalf("%q is never chosen", word)
}

// typed writes a length or an angle as a person would.
func typed(v float64) string { return fmt.Sprintf("%g", v) }

// idle is a window that has worked out what it shows, tubes or none.
func idle(b Boxes) bool { return !b.Busy && b.Modal == "" }

func (m museum) beginFromTheMiddleCase() {
	m.key("ctrl+n")
	m.until("what to begin with", func(b Boxes) bool { return b.Modal == "Begin a plan with" })
	m.tabTo("Down", "Middle case")
	m.key("Return")
	m.until("the case's parts", func(b Boxes) bool { return idle(b) && len(b.Parts) == 9 })
}

// setCaseAndSaw sets name, size of the case, the saw and a longer bar to buy.
func (m museum) setCaseAndSaw() {
	m.key("ctrl+e")
	m.until("the plan's page", func(b Boxes) bool { return b.Modal == "Plan and workshop" })
	m.tabTo("Tab", "Name")
	m.enter("By keys alone")
	for _, v := range m.want.Case {
		m.enter(typed(v))
	}
	m.tabTo("Tab", "Kerf")
	m.enter("1.4")
	m.tabTo("Tab", "Add a bar to buy")
	m.key("Return")
	m.until("the new bar's fields", func(b Boxes) bool { return b.Focus == "Bar of" })
	m.key("Tab")
	m.enter("1000")
	m.enter("12.90")
	m.key("Escape")
	m.until("the plan with its new name", func(b Boxes) bool { return idle(b) && strings.HasPrefix(b.Title, "By keys alone") })
}

// selectPart goes to the row of a part and presses it.
func (m museum) selectPart(name string) {
	m.t.Helper()
	parts := m.boxes().Parts
	m.tabUntil("F6", "the list of parts", func(focus string) bool { _, ok := parts[focus]; return ok })
	m.key(slices.Repeat([]string{"Up"}, len(m.boxes().Parts))...)
	m.until("the first part", func(b Boxes) bool { return b.Focus == "board" })
	m.tabTo("Down", name)
	m.key("Return")
	m.until("the part's fields", func(b Boxes) bool { return b.Selected == name })
}

// takeAway removes parts that the museum's machine has not.
func (m museum) takeAway(names ...string) {
	for _, name := range names {
		m.selectPart(name)
		m.key("Delete")
		m.until(name+" gone", func(b Boxes) bool { _, ok := b.Parts[name]; return idle(b) && !ok })
	}
}

// addFromTheCatalogue adds a part, gives it its name, and puts it in its place.
func (m museum) addFromTheCatalogue(name string) {
	k, _ := m.want.FindPart(name)
	n := len(m.boxes().Parts)
	m.key("ctrl+t")
	m.until("the catalogue", func(b Boxes) bool { return b.Modal == "Add a part" })
	m.write(k.Kind)
	m.key("Return")
	m.until("one part more, and the board to move it", func(b Boxes) bool { return idle(b) && len(b.Parts) == n+1 && b.Focus == "the board" })
	m.key("ctrl+j")
	m.until("the part's page", func(b Boxes) bool { return strings.HasPrefix(b.Modal, "Part ") })
	m.tabTo("Tab", "Name")
	m.enter(name)
	m.key("Escape")
	m.until(name, func(b Boxes) bool { return idle(b) && b.Selected == name })
	m.place(k)
}

// moveTo puts a part of the starting case where it stands in the museum.
func (m museum) moveTo(name string) {
	m.selectPart(name)
	k, _ := m.want.FindPart(name)
	m.place(k)
}

// place types the numbers of the selected part. A fan of the front is put in its
// place by the arrow keys and the turn key instead.
func (m museum) place(k route.Part) {
	m.t.Helper()
	byHand := strings.HasPrefix(k.Name, "front-fan")
	at, turn := k.At, k.Turn
	if byHand {
		// The turn is about the fan's middle: its corner goes 57.5 mm right and 82.5 toward you.
		at, turn = at.Sub(mgl64.Vec3{57.5 + 11, 10, 82.5}), mgl64.Vec3{}
	}
	m.key("n")
	m.until("the numbers", func(b Boxes) bool { return b.Focus == "place x" })
	for _, v := range []float64{at[0], at[1], at[2], turn[0], turn[1], turn[2]} {
		m.enter(typed(v))
	}
	if byHand {
		m.key("Escape") // to the board
		m.selectPart(k.Name)
		m.tabTo("F6", "the board")
		m.key("2", "r", "1", "shift+Right", "Right", "shift+Up") // from above the turn is about y
	}
	m.until(k.Name+" in its place", func(b Boxes) bool { return idle(b) && near(b.Parts[k.Name], k.At) })
}

func near(a [3]float64, b mgl64.Vec3) bool { return mgl64.Vec3(a).Sub(b).Len() < 1e-6 }

// makeOwn makes a part that the catalogue has not.
func (m museum) makeOwn(name string) {
	k, _ := m.want.FindPart(name)
	m.key("ctrl+t")
	m.until("the catalogue", func(b Boxes) bool { return b.Modal == "Add a part" })
	m.write("part of my own")
	m.key("Return") // the catalogue has nothing of that name: what is left is one's own
	m.until("the part's page", func(b Boxes) bool { return strings.HasPrefix(b.Modal, "Part ") })
	m.tabTo("Tab", "Name")
	m.enter(name)
	m.key("Tab")
	for i, s := range k.Solids {
		if i > 0 {
			m.tabTo("Tab", "Add a box")
			m.key("Return")
			m.until("the new box's fields", func(b Boxes) bool { return b.Focus == "Lower left far corner" })
		}
		m.enter(typedAll(s.From))
		m.enter(typedAll(s.To))
	}
	for _, q := range k.Ports {
		m.addPort(q)
	}
	m.inside(k)
	m.key("Escape")
	m.until(name, func(b Boxes) bool { return idle(b) && b.Selected == name })
	m.place(k)
}

func typedAll(v mgl64.Vec3) string { return typed(v[0]) + "; " + typed(v[1]) + "; " + typed(v[2]) }

// addPort adds a port on the page of a part.
func (m museum) addPort(q route.Port) {
	m.tabTo("Tab", "Add a port")
	m.key("Return")
	m.until("the new port's fields", func(b Boxes) bool { return b.Focus == "Name" })
	m.enter(q.Name)
	m.enter(typedAll(q.At))
	m.choose(facingWords[slices.Index(facingAxes, q.Facing)])
	m.tabTo("Tab", "Coolant")
	if word := map[route.Flow]string{route.In: "in", route.Out: "out"}[q.Flow]; word != "" {
		m.choose(word)
	}
}

// inside types which ports the coolant links in a part.
func (m museum) inside(k route.Part) {
	var links []string
	for _, p := range k.Passages {
		links = append(links, p[0]+"-"+p[1])
	}
	m.tabTo("Tab", "Passages")
	m.enter(strings.Join(links, "; "))
}

// addFill adds the port on top through which the loop is filled.
func (m museum) addFill() {
	m.selectPart("top")
	m.key("ctrl+j")
	m.until("the part's page", func(b Boxes) bool { return strings.HasPrefix(b.Modal, "Part ") })
	k, _ := m.want.FindPart("top")
	m.addPort(k.Ports[0])
	m.inside(k)
	m.key("Escape")
	m.until("the window", idle)
}

// settleAnOverlap moves a part into another by mistake and takes the way out that
// the finding offers.
func (m museum) settleAnOverlap() {
	m.selectPart("capture")
	k, _ := m.want.FindPart("capture")
	m.key("n")
	m.enter(typed(k.At[0]))
	m.enter(typed(k.At[1] + 85)) // into the card above
	m.until("the overlap", func(b Boxes) bool { return idle(b) && slices.Contains(b.Findings, check.PartHitsPart) })
	m.key("ctrl+g")
	m.until("the finding", func(b Boxes) bool { return b.Selected == string(check.PartHitsPart) })
	m.tabUntil("F6", "the finding", func(focus string) bool { return strings.HasPrefix(focus, "Parts ") })
	m.tabTo("Down", "Find a way out")
	m.key("Return")
	m.until("an offer", func(b Boxes) bool { return strings.HasPrefix(b.Focus, "Move ") })
	m.key("Return")
	m.until("the overlap settled", func(b Boxes) bool { return idle(b) && !slices.Contains(b.Findings, check.PartHitsPart) })
	m.key("ctrl+z")
	m.until("the overlap again", func(b Boxes) bool { return idle(b) && slices.Contains(b.Findings, check.PartHitsPart) })
	m.key("ctrl+y")
	m.until("the overlap settled again", func(b Boxes) bool { return idle(b) && !slices.Contains(b.Findings, check.PartHitsPart) })
	m.selectPart("capture")
	m.place(k)
}

// joinPorts adds a run by the names of its ports.
func (m museum) joinPorts(r route.Run) {
	m.t.Helper()
	m.key("ctrl+r")
	m.until("the ports", func(b Boxes) bool { return b.Modal == "Add a run" })
	m.enter(r.From.String())
	m.write(r.To.String())
	m.key("Return")
	m.until("the tube of "+r.Name, func(b Boxes) bool { _, ok := b.Cuts[b.Selected]; return idle(b) && ok })
}

// chooseAnotherWay opens the card of a run and takes the second way of its list.
func (m museum) chooseAnotherWay(run string) {
	cut := m.boxes().Cuts[run]
	m.tabUntil("F6", "the runs", func(focus string) bool { _, ok := m.boxes().Cuts[focus]; return ok })
	m.tabTo("Up", m.want.Runs[0].Name)
	m.tabTo("Down", run)
	m.key("Return", "Down", "Down")
	m.until("the second way", func(b Boxes) bool { return b.Selected == run && b.Focus != run })
	m.key("Return")
	m.until("the cut of another way", func(b Boxes) bool { return idle(b) && b.Cuts[run] != cut })
}

// countOnHand types how many sockets are there already.
func (m museum) countOnHand() {
	m.tabUntil("F6", "the list of what to buy", func(focus string) bool { return strings.HasPrefix(focus, "on hand ") })
	m.tabTo("Tab", "on hand socket-16")
	m.write("4")
	m.key("Return")
	m.until("the count", func(b Boxes) bool { return idle(b) && strings.Contains(b.Undo, "hand") })
}

// saveAs saves under a name in a folder of its own, and gives the path.
func (m museum) saveAs(name string) string {
	dir := m.t.TempDir()
	m.key("ctrl+s")
	m.until("the question where to", func(b Boxes) bool { return b.Modal == "Save the plan as" })
	m.write(name)
	m.key("shift+Tab", "shift+Tab")
	m.write(dir)
	m.key("Return")
	m.until("that it saved", func(b Boxes) bool { return strings.HasPrefix(b.News, "Saved") && !b.Dirty })
	return filepath.Join(dir, name+planfile.Ending)
}
