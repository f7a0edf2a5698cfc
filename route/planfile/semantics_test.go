package planfile_test

import (
	"errors"
	"io/fs"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/assets"
	"tubewright/route"
	"tubewright/route/planfile"
)

func read(t *testing.T, text string) route.Plan {
	t.Helper()
	plan, _, err := planfile.Read("bench.plan.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

const least = "format: 1\ncase: {size: [400, 300, 200]}\n"

func TestWhatIsLeftOutIsTheDefault(t *testing.T) {
	got := read(t, least)
	want := route.Defaults()
	want.Name, want.Case = "bench", mgl64.Vec3{400, 300, 200}
	if !planfile.Same(got, want) || got.Catalogue != planfile.Shelf() {
		t.Errorf("read as %+v, want %+v", got, want)
	}
	if part := read(t, least+"weigh: {bend: 1}\nsaw: {kerf: 3}\n"); part.Weigh.OddBend != want.Weigh.OddBend || part.Saw.Square != want.Saw.Square {
		t.Errorf("keys left out of a mapping are %+v, %+v; want the defaults", part.Weigh, part.Saw)
	}
}

// The full example of the plan format, value by value where it is easy to get wrong.
func TestTheFullExample(t *testing.T) {
	plan, _, err := planfile.Load("testdata/full.plan.yaml")
	if err != nil {
		t.Fatal(err)
	}
	socket, _ := plan.FindFitting("socket-16")
	port, _ := plan.FindPort(route.PortRef{Part: "plate", Port: "out"})
	run, half := plan.Runs[0], 0.7071067811865476
	checks := []struct {
		what string
		ok   bool
	}{
		{"case", plan.Case == mgl64.Vec3{430, 200, 400}},
		{"tube", plan.Tubes[0].Springback.Percent == 1.5 && plan.Tubes[0].KnownFrom == route.Measured && plan.Tubes[0].StraightEnd == 26},
		{"socket", socket.Insertion == route.Insertion{Full: 12, Least: 9} && socket.Collar == route.Collar{OD: 24, Length: 20} && socket.Give == route.Give{Sideways: 0.3, Degrees: 1}},
		{"fittings in order", plan.Fittings[1].Name == "extender-15" && plan.Fittings[3].Legs == [2]float64{14, 12}},
		{"turn", plan.Parts[0].Turn == mgl64.Vec3{0, 90, 0}},
		{"solids", plan.Parts[1].Solids[0].Box && plan.Parts[1].Solids[1].Radius == 30},
		{"facing", port.Frame.Dir.Sub(mgl64.Vec3{half, half, 0}).Len() < 1e-12 && port.Flow == route.Any},
		{"passages, metals, volume", plan.Parts[1].Passages[0] == [2]string{"in", "out"} && plan.Parts[1].Metals[1] == "nickel" && plan.Parts[1].Volume == 0.04},
		{"run", run.From.String() == "pump.out" && run.Tube == "acrylic-14-10" && run.Way == route.Auto && run.Via[0] == mgl64.Vec3{200, 40, 120}},
		{"chain", len(run.Start) == 2 && run.Start[0] == route.Step{Fitting: "extender-15"}},
		{"stock", plan.Stock[1] == route.Stock{Tube: "petg-16-12", Length: 1000, Price: 12.9, Most: 4}},
		{"offcuts", plan.Offcuts[0].Lengths[1] == 225.5},
		{"spares, build, on hand", plan.Spares == route.Spares{Bent: 1} && plan.Build == 1 && plan.OnHand[1] == route.OnHand{Item: "plug", Count: 2}},
	}
	for _, c := range checks {
		if !c.ok {
			t.Errorf("%s: read wrong", c.what)
		}
	}
}

func TestCatalogueEntriesAreChangedByGivenKeysOnly(t *testing.T) {
	shelf := route.Plan{Catalogue: planfile.Shelf()}
	tube, _ := shelf.FindTube("petg-16-12")
	socket, _ := shelf.FindFitting("socket-16")
	plan := read(t, least+"tubes: {petg-16-12: {radius: 40}}\nfittings: {socket-16: {insertion: {least: 8}, known_from: drawing}}\n")
	tube.Radius = 40
	socket.Insertion.Least, socket.KnownFrom = 8, route.Drawing
	if !reflect.DeepEqual(plan.Tubes[0], tube) {
		t.Errorf("tube = %+v, want %+v", plan.Tubes[0], tube)
	}
	if got := plan.Fittings[0]; got.Insertion != socket.Insertion || got.Collar != socket.Collar || got.KnownFrom != route.Drawing {
		t.Errorf("fitting = %+v, want %+v", got, socket)
	}
	if again, _ := shelf.FindTube("petg-16-12"); again.Radius == 40 {
		t.Error("the shipped catalogue was written to")
	}
}

func TestInchesCountEveryLengthAndNothingElse(t *testing.T) {
	plan := read(t, strings.Replace(least, "format: 1", "format: 1\nunits: in", 1)+`
tubes: {own: {material: brass, od: 0.5, id: 0.375, springback: {degrees: 2}}}
fittings: {e: {kind: elbow, turn: 45, legs: [0.5, 1], body: {od: 1}, price: 3}}
parts: {p: {at: [1, 2, 3], turn: [90, 0, 0], volume: 0.5, ports: {a: {at: [1, 0, 0], facing: [0, 3, 0]}}}}
weigh: {millimetre: 2}
errors: {port: 0.1, turn: 1}
stock: [{tube: own, length: 10, price: 4}]
`)
	p, e := plan.Parts[0], plan.Fittings[0]
	ok := plan.Case[0] == 400*25.4 && plan.Tubes[0].OD == 12.7 && plan.Tubes[0].Springback.Degrees == 2 &&
		e.Legs == [2]float64{12.7, 25.4} && e.Turn == 45 && e.Price == 3 && e.Body == 25.4 &&
		p.At.Sub(mgl64.Vec3{25.4, 50.8, 76.2}).Len() < 1e-9 && p.Turn[0] == 90 && p.Volume == 0.5 && p.Ports[0].Facing == mgl64.Vec3{0, 1, 0} &&
		plan.Weigh.Millimetre == 2 && plan.Errors.Port == 0.1*25.4 && plan.Errors.Turn == 1 &&
		plan.Stock[0].Length == 254 && plan.Stock[0].Price == 4 && plan.Clear == 4 && plan.KeepOver == 120
	if !ok {
		t.Errorf("read as %+v", plan)
	}
}

// The keys the format has beyond its first description.
func TestAddedKeys(t *testing.T) {
	plan := read(t, least+`
tube: petg-16-12
fittings:
  tee-own: {kind: tee, length: 30, side: 15, body: {od: 20}}
  fixed: {kind: elbow, turn: 90, legs: [10, 10], rotary: false, rolls: [0, 90, -90], body: {od: 20}}
parts:
  a: {known_from: drawing, ports: {x: {at: [0, 0, 0], facing: -y}, y: {at: [9, 0, 0], facing: +z}}}
runs:
  r: {from: a.x, to: a.y, pick: two bends, start: [{use: fixed, roll: -90}, socket-16], end: [{use: socket-16}]}
`)
	run := plan.Runs[0]
	ok := plan.Fittings[0].Side == 15 && len(plan.Fittings[1].Rolls) == 3 && plan.Parts[0].KnownFrom == route.Drawing &&
		run.Pick == "two bends" && run.Start[0] == route.Step{Fitting: "fixed", Roll: -90, Rolled: true} && run.End[0] == route.Step{Fitting: "socket-16"}
	if !ok {
		t.Errorf("read as %+v", plan)
	}
}

func TestCataloguesAreReadStrictly(t *testing.T) {
	text := "units: in\ntubes:\n  t: {material: brass, od: 1, id: 0.5}\n  u: {od: 1}\nparts:\n  p: {at: [0, 0, 0]}\n"
	_, err := planfile.ReadCatalogue("own.yaml", []byte(text))
	var problems planfile.Problems
	if !errors.As(err, &problems) || len(problems) != 2 {
		t.Fatalf("ReadCatalogue = %v, want two problems: a tube incomplete, a part with a place", err)
	}
	text = strings.Split(text, "  u:")[0]
	shelf, err := planfile.ReadCatalogue("own.yaml", []byte(text))
	if err != nil || shelf.Tubes[0].OD != 25.4 {
		t.Fatalf("ReadCatalogue = %+v, %v", shelf, err)
	}
	plan, _, err := planfile.ReadWith(shelf, "x.plan.yaml", []byte(least+"tube: t\n"))
	if err != nil || plan.Catalogue != shelf {
		t.Errorf("ReadWith = %v", err)
	}
	if _, _, err := planfile.ReadWith(nil, "x.plan.yaml", []byte(least+"tube: t\n")); err == nil {
		t.Error("a tube of no catalogue is found")
	}
}

func TestLoadTellsWhatTheSystemSays(t *testing.T) {
	if _, _, err := planfile.Load("testdata/none.plan.yaml"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("Load of no file = %v", err)
	}
	if _, src, err := planfile.Load("testdata"); err == nil || src != nil {
		t.Errorf("Load of a folder = %v", err)
	}
}

func TestAProblemCanBeTakenOut(t *testing.T) {
	_, src, err := planfile.Read("x.plan.yaml", []byte(least+"cleer: 4\n"))
	var one planfile.Problem
	if !errors.As(err, &one) || one.Line != 3 || one.File != "x.plan.yaml" || one.Text != "cleer: 4" {
		t.Errorf("the problem is %#v", one)
	}
	if src == nil || src.Name() != "x.plan.yaml" || src.Path() != "" {
		t.Errorf("the source is %+v", src)
	}
}

// A plan can be written over a file that holds no plan: its comments are gone, and that is said.
func TestWriteOverABrokenFile(t *testing.T) {
	_, src, err := planfile.Read("x.plan.yaml", []byte("runs: [ # not closed\n"))
	if err == nil {
		t.Fatal("read without a problem")
	}
	plan := read(t, least)
	text, report, err := planfile.Write(plan, src)
	if err != nil || !report.CommentsLost {
		t.Errorf("Write = %s, %+v, %v", text, report, err)
	}
}

func BenchmarkReadFullExample(b *testing.B) {
	text, err := os.ReadFile("testdata/full.plan.yaml")
	if err != nil {
		b.Fatal(err)
	}
	planfile.Shelf()
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := planfile.Read("full.plan.yaml", text); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadDemo(b *testing.B) {
	text, ok := assets.Demo(assets.Demos()[0])
	if !ok {
		b.Fatal("there is no demo")
	}
	planfile.Shelf()
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := planfile.Read("demo.plan.yaml", text); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWriteDemoInPlace(b *testing.B) {
	text, ok := assets.Demo(assets.Demos()[0])
	if !ok {
		b.Fatal("there is no demo")
	}
	plan, src, err := planfile.Read("demo.plan.yaml", text)
	if err != nil {
		b.Fatal(err)
	}
	plan.Clear++
	for b.Loop() {
		if _, _, err := planfile.Write(plan, src); err != nil {
			b.Fatal(err)
		}
	}
}
