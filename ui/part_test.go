package ui

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/ui/board"
)

// part is a part of the plan that is open.
func (b *bench) part(name string) route.Part {
	b.t.Helper()
	k, ok := b.snapshot.Plan.FindPart(name)
	if !ok {
		b.t.Fatalf("the plan has no part %q", name)
	}
	return k
}

func (b *bench) formButton(side int, text string) {
	b.t.Helper()
	for _, g := range b.formOf(side).groups {
		for _, k := range g.buttons {
			if k.text == text {
				k.act()
				b.settle()
				return
			}
		}
	}
	b.t.Fatalf("the form has no button %q", text)
}

func TestAPartOfOnesOwn(t *testing.T) {
	b := opened(t)
	b.askPart()
	b.typeInto("no such part")
	b.press(fyne.KeyReturn) // a part of one's own stands alone
	b.settle()
	if b.asked() != "Part part" || b.selectedPart() != "part" {
		t.Fatalf("asked is %q, selected %q", b.asked(), b.selectedPart())
	}
	left := b.formOf(0)
	b.typeIn(left, "solid.0.to", "90; 62; 9 cm")
	b.typeIn(left, "solid.0.from", "95; 0; 0")
	if k := b.part("part"); k.Solids[0].To != (mgl64.Vec3{90, 62, 90}) || k.Solids[0].From != (mgl64.Vec3{}) {
		t.Errorf("the box is %+v; its lower corner above the upper was to be refused", k.Solids[0])
	}
	b.formButton(0, "Add a cylinder")
	b.typeIn(left, "solid.1.radius", "32")
	b.formButton(1, "Add a port")
	right := b.formOf(1)
	b.typeIn(right, "port.0.at", "45; 62; 45")
	b.typeIn(right, "port.0.facing", "+y")
	b.typeIn(right, "port.0.flow", "in")
	b.typeIn(right, "port.0.known", "measured")
	b.typeIn(right, "port.0.name", "inlet")
	k := b.part("part")
	want := route.Port{Name: "inlet", At: mgl64.Vec3{45, 62, 45}, Facing: mgl64.Vec3{0, 1, 0}, Thread: "G1/4", Flow: route.In, KnownFrom: route.Measured}
	if len(k.Ports) != 1 || k.Ports[0] != want || k.Solids[1].Radius != 32 {
		t.Errorf("the part is %+v, want the port %+v", k, want)
	}
	b.typeIn(left, "name", "reservoir")
	if k := b.part("reservoir"); len(k.Ports) != 1 || left.rows["name"].entry.Text != "reservoir" {
		t.Errorf("renamed it is %+v", k)
	}
	b.formButton(1, "Take this port away")
	b.formButton(0, "Take it away")
	if k := b.part("reservoir"); len(k.Ports) != 0 || len(k.Solids) != 1 || k.Solids[0].Box {
		t.Errorf("taken away, there is %+v", k)
	}
	b.did(b.session.RemovePart("reservoir"))
	if b.asked() != "" {
		t.Errorf("with its part gone the page %q stays", b.asked())
	}
}

func TestAPartOfTheCatalogueIsMadeOnesOwn(t *testing.T) {
	b := opened(t)
	b.askPart()
	b.typeInto("low reservoir")
	b.press(fyne.KeyReturn)
	b.settle()
	name := b.selectedPart()
	if k := b.part(name); k.Kind != "pump-reservoir-low" {
		t.Fatalf("added is %+v", k)
	}
	b.changeSelected()
	right := b.formOf(1)
	b.typeIn(right, "port.0.at", "36; 35; 80")
	if k := b.part(name); len(k.Ports) != 1 || k.Ports[0].At[0] != 36 || k.Kind == "" {
		t.Errorf("one port moved: %+v", k)
	}
	b.formButton(0, "Make it my own")
	if k := b.part(name); k.Kind != "" || len(k.Solids) != 1 || len(k.Ports) != 4 || k.Ports[0].At[0] != 36 || k.Volume == 0 {
		t.Errorf("made one's own it is %+v", k)
	}
	b.typeIn(b.formOf(1), "passages", "in - out")
	b.typeIn(b.formOf(1), "metals", "copper; nickel")
	if k := b.part(name); len(k.Passages) != 1 || !slices.Equal(k.Metals, []string{"copper", "nickel"}) {
		t.Errorf("inside it is %v, %v", k.Passages, k.Metals)
	}
	b.typeIn(b.formOf(1), "passages", "in - nowhere")
	if k := b.part(name); k.Passages[0] != [2]string{"in", "out"} {
		t.Errorf("a passage to nowhere was taken: %v", k.Passages)
	}
}

func TestARadiatorsNumbers(t *testing.T) {
	b := opened(t)
	b.did(b.session.Put("x", func(p *route.Plan) {
		p.Case = [3]float64{600, 300, 200}
		p.Parts = append(p.Parts, route.Part{Name: "front", Kind: "radiator-stack", At: [3]float64{0, 0, 100}, Stack: route.Stack{Fans: 3}})
	}))
	b.askPartForm("front")
	left := b.formOf(0)
	if got := left.rows["stack.fans"].entry.Text + left.rows["stack.thickness"].entry.Text; got != "330" {
		t.Errorf("shown are %q, want 3 fans and the kind's 30 mm", got)
	}
	b.typeIn(left, "stack.thickness", "45")
	b.typeIn(left, "stack.sides", "both")
	if got, want := b.part("front").Stack, (route.Stack{Fans: 3, Thickness: 45, Sides: route.BothSides}); got != want {
		t.Errorf("the stack is %+v, want %+v: the rest stays the kind's", got, want)
	}
	b.typeIn(left, "stack.fans", "0")
	if got := b.part("front").Stack.Fans; got != 0 && got != 3 {
		t.Errorf("no fans give %d", got)
	}
}

func TestRenamingFollowsEverywhere(t *testing.T) {
	b := opened(t)
	b.askPartForm("left")
	b.typeIn(b.formOf(0), "name", "pump")
	if r := b.snapshot.Plan.Runs[0]; r.From.Part != "pump" {
		t.Errorf("the run starts at %v", r.From)
	}
	b.typeIn(b.formOf(1), "port.0.name", "outlet")
	if r := b.snapshot.Plan.Runs[0]; r.From.Port != "outlet" {
		t.Errorf("the run starts at %v", r.From)
	}
	b.typeIn(b.formOf(0), "name", "top")
	if len(b.snapshot.Plan.Parts) != 2 || b.snapshot.Plan.Parts[0].Name != "pump" {
		t.Error("two parts have one name")
	}
	b.formButton(1, "Take this port away")
	if n := len(b.snapshot.Plan.Runs); n != 0 {
		t.Errorf("with its port gone %d runs are left", n)
	}
}

// The part left stands at (60, 80, 30) and is 40 by 60 by 40 mm. A port that
// faces the viewer of a look lies on the face toward them, else in the middle.
func TestAPortIsPlacedByClicking(t *testing.T) {
	for _, row := range []struct {
		clicked, facing mgl64.Vec3
		depth           int
		at              mgl64.Vec3
	}{
		{mgl64.Vec3{70, 100, 0}, mgl64.Vec3{0, 0, 1}, 2, mgl64.Vec3{10, 20, 40}},
		{mgl64.Vec3{70, 100, 0}, mgl64.Vec3{0, 0, -1}, 2, mgl64.Vec3{10, 20, 0}},
		{mgl64.Vec3{100, 100, 0}, mgl64.Vec3{1, 0, 0}, 2, mgl64.Vec3{40, 20, 20}},
		{mgl64.Vec3{70, 0, 45}, mgl64.Vec3{0, 1, 0}, 1, mgl64.Vec3{10, 60, 15}},
		{mgl64.Vec3{0, 100, 45}, mgl64.Vec3{0, 1, 0}, 0, mgl64.Vec3{20, 20, 15}},
	} {
		b := opened(t)
		q, ok := clickedPort(b.snapshot.Plan, "left", row.clicked, row.facing, row.depth)
		if !ok || q.At.Sub(row.at).Len() > 1e-9 || q.Facing != row.facing {
			t.Errorf("clicked at %v facing %v: %+v, want at %v", row.clicked, row.facing, q, row.at)
		}
	}
	// Turned a quarter about z, x of the case is −y of the part.
	b := opened(t)
	b.did(b.session.TurnPart("left", 2, 90))
	k := b.part("left")
	q, _ := clickedPort(b.snapshot.Plan, "left", mgl64.Vec3{80, 110, 0}, mgl64.Vec3{1, 0, 0}, 2)
	back := route.Turned(k.Turn).Mul3x1(q.At).Add(k.At)
	if math.Abs(back[0]-80) > 1e-3 || math.Abs(back[1]-110) > 1e-3 || q.Facing != (mgl64.Vec3{0, -1, 0}) {
		t.Errorf("on a turned part: %+v, in the case at %v", q, back)
	}
}

func TestClickingOnTheBoardAddsThePort(t *testing.T) {
	b := opened(t)
	b.look(board.Turntable)
	b.askClick("left")
	b.pressButton("Click the place")
	if b.board.Look() != board.Side || !b.board.Pointing() || !strings.HasPrefix(b.news, "Click the middle") {
		t.Fatalf("look %v, pointing %v, told %q", b.board.Look(), b.board.Pointing(), b.news)
	}
	b.board.Point(board.Pointing{Points: 1, Done: func([]mgl64.Vec3) {}}) // gives the question up
	if n := len(b.part("left").Ports); n != 2 {
		t.Errorf("given up, there are %d ports", n)
	}
}

func TestSearchingTheCatalogue(t *testing.T) {
	all := []route.Part{{Name: "radiator-120-3-30"}, {Name: "radiator-140-2-45"}, {Name: "pump-reservoir"}}
	for text, want := range map[string]int{"": 3, "radiator": 2, "140 rad": 1, "RES": 1, "fan": 0} {
		if got := searchParts(all, text); len(got) != want {
			t.Errorf("%q finds %d, want %d", text, len(got), want)
		}
	}
}

func TestVectorsAndPassagesAsTyped(t *testing.T) {
	if v, err := parseVector("0; 1/2 in ; 3 cm", route.Millimetres); err != nil || v != (mgl64.Vec3{0, 12.7, 30}) {
		t.Errorf("read %v (%v)", v, err)
	}
	if v, err := parseVector("1 2 -3", route.Millimetres); err != nil || v != (mgl64.Vec3{1, 2, -3}) {
		t.Errorf("read %v (%v)", v, err)
	}
	for _, text := range []string{"1; 2", "a; b; c", ""} {
		if v, err := parseVector(text, route.Millimetres); err == nil {
			t.Errorf("%q gives %v", text, v)
		}
	}
	if got, err := parsePassages("in - out; fill-in; in-below - out"); err != nil || len(got) != 3 || got[1] != [2]string{"fill", "in"} || got[2] != [2]string{"in-below", "out"} {
		t.Errorf("read %v (%v)", got, err)
	}
	if got := passageText([][2]string{{"in", "out"}, {"fill", "in"}}); got != "in - out; fill - in" {
		t.Errorf("written %q", got)
	}
	if got, err := parsePassages("alone"); err == nil {
		t.Errorf("one port gives %v", got)
	}
}

// A selected part stays selected under a new name, back and forth.
func TestARenamedPartStaysSelected(t *testing.T) {
	b := opened(t)
	b.pick(board.PartTarget("left"))
	b.did(b.session.Put("Rename left", func(p *route.Plan) { renamePart(p, "left", "base") }))
	b.settle()
	if b.selectedPart() != "base" || b.details.model.title != "base" {
		t.Errorf("renamed, %q is selected and the details are of %q", b.selectedPart(), b.details.model.title)
	}
	b.undo()
	b.settle()
	if b.selectedPart() != "left" {
		t.Errorf("undone, %q is selected", b.selectedPart())
	}
	b.did(b.session.RemovePart("left"))
	b.settle()
	if b.selectedPart() != "" {
		t.Errorf("removed, %q is selected", b.selectedPart())
	}
}
