package mesh_test

import (
	"bytes"
	"context"
	"errors"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/qmuntal/gltf"
	"github.com/qmuntal/gltf/modeler"

	"tubewright/assets"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/mesh"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/planfile/demoplan"
)

func demo(t testing.TB, name string) cutlist.List {
	t.Helper()
	plan := demoplan.Read(t, name)
	return solved(t, plan)
}

func solved(t testing.TB, plan route.Plan) cutlist.List {
	t.Helper()
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		t.Fatal(err)
	}
	l, err := cutlist.Build(context.Background(), plan, sol)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func paint() mesh.Paint {
	grey := draw.Colour{R: 128, G: 128, B: 128}
	return mesh.Paint{Case: grey, Part: grey, Fitting: draw.Colour{R: 200}, Tube: func(letter string) draw.Colour {
		return draw.Colour{B: 100 + letter[0]}
	}}
}

func glb(t testing.TB, l cutlist.List) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := mesh.GLB(&out, l, paint()); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func decode(t testing.TB, data []byte) *gltf.Document {
	t.Helper()
	doc := new(gltf.Document)
	if err := gltf.NewDecoder(bytes.NewReader(data)).Decode(doc); err != nil {
		t.Fatal(err)
	}
	return doc
}

// readBack gives a named node's surface as another reader of glTF sees it, in mm.
func readBack(t testing.TB, doc *gltf.Document, name string) mesh.Mesh {
	t.Helper()
	for _, n := range doc.Nodes {
		if n.Name != name {
			continue
		}
		p := doc.Meshes[*n.Mesh].Primitives[0]
		points, err := modeler.ReadPosition(doc, doc.Accessors[p.Attributes[gltf.POSITION]], nil)
		if err != nil {
			t.Fatal(err)
		}
		indices, err := modeler.ReadIndices(doc, doc.Accessors[*p.Indices], nil)
		if err != nil {
			t.Fatal(err)
		}
		var m mesh.Mesh
		for _, q := range points {
			m.Points = append(m.Points, vec{float64(q[0]), float64(q[1]), float64(q[2])}.Mul(1000))
		}
		for i := 0; i < len(indices); i += 3 {
			m.Faces = append(m.Faces, [3]uint32(indices[i:i+3]))
		}
		return m
	}
	t.Fatalf("no node %q", name)
	return mesh.Mesh{}
}

func TestTubesInTheFileHoldWhatPipesHold(t *testing.T) {
	for _, name := range assets.Demos() {
		l := demo(t, name)
		doc := decode(t, glb(t, l))
		for _, tube := range l.Tubes {
			got := readBack(t, doc, tube.Letter+" "+tube.Run).Volume()
			od, id := tube.Way.Tube.OD, tube.Way.Tube.ID
			near(t, name+" "+tube.Run, got, math.Pi/4*(od*od-id*id)*tube.Cut.Aim, 0.01)
		}
	}
}

func TestFileNamesEverything(t *testing.T) {
	l := demo(t, "conservation-scanner")
	doc := decode(t, glb(t, l))
	names := map[string]int{}
	for _, n := range doc.Nodes {
		names[n.Name]++
	}
	want := []string{l.Plan.Name, "case", "parts", "fittings", "tubes"}
	for _, p := range l.Plan.Parts {
		want = append(want, p.Name)
	}
	for _, tube := range l.Tubes {
		want = append(want, tube.Letter+" "+tube.Run, tube.Letter+" "+tube.Run+" start 1 "+tube.Way.Start.Bodies[0].Fitting.Name)
	}
	for _, name := range want {
		if names[name] != 1 {
			t.Errorf("%d nodes are named %q, want 1", names[name], name)
		}
	}
}

// The case's frame is glTF's: a point is a thousandth of what it is in mm.
func TestFileStandsInTheCasesFrame(t *testing.T) {
	p := route.Defaults()
	p.Name, p.Case = "one block", vec{100, 80, 60}
	p.Parts = []route.Part{{Name: "block", At: vec{10, 20, 30}, Solids: []route.Solid{{Box: true, To: vec{5, 6, 7}}}}}
	doc := decode(t, glb(t, cutlist.List{Plan: p}))
	m := readBack(t, doc, "block")
	lo, hi := m.Points[0], m.Points[0]
	for _, q := range m.Points {
		for i := range 3 {
			lo[i], hi[i] = math.Min(lo[i], q[i]), math.Max(hi[i], q[i])
		}
	}
	if lo.Sub(vec{10, 20, 30}).Len() > 1e-4 || hi.Sub(vec{15, 26, 37}).Len() > 1e-4 {
		t.Errorf("the block reaches from %v to %v, want 10 20 30 to 15 26 37", lo, hi)
	}
}

func TestSameListSameFile(t *testing.T) {
	l := demo(t, "ferry-bridge")
	if !bytes.Equal(glb(t, l), glb(t, l)) {
		t.Error("the same list gave two different files")
	}
}

type fullDisk struct{}

var errFull = errors.New("disk full")

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

func TestFailedWriteIsTold(t *testing.T) {
	if err := mesh.GLB(fullDisk{}, cutlist.List{Plan: route.Defaults()}, paint()); !errors.Is(err, errFull) {
		t.Errorf("got %v, want %v", err, errFull)
	}
}

// validatorFolder names a folder with node_modules/gltf-validator, the reference
// validator of the Khronos Group, which cmd/test.sh fetches from the npm registry.
const validatorFolder = "TUBEWRIGHT_GLTF_VALIDATOR"

func TestReferenceValidatorFindsNoError(t *testing.T) {
	folder := os.Getenv(validatorFolder)
	if folder == "" {
		t.Logf("NOT CHECKED by the reference validator: %s names no folder (bash cmd/test.sh sets it)", validatorFolder)
		return
	}
	odd := demo(t, "ferry-bridge")
	odd.Plan.Name = "Ωμέγα \u0000 \"quoted\" \xff № 7"
	odd.Plan.Parts[0].Name = "../деталь"
	files := map[string]cutlist.List{"odd": odd, "empty": {Plan: route.Defaults()}}
	for _, name := range assets.Demos() {
		files[name] = demo(t, name)
	}
	for name, l := range files {
		path := filepath.Join(t.TempDir(), name+".glb")
		if err := os.WriteFile(path, glb(t, l), 0o600); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command("node", "-e", validate, path).CombinedOutput()
		if err != nil || strings.TrimSpace(string(out)) != "0 errors, 0 warnings" {
			t.Errorf("%s: %v: %s", name, err, out)
		}
	}
}

// validate is a script for node that counts a file's errors and warnings.
const validate = `
const validator = require(require('path').join(process.env.TUBEWRIGHT_GLTF_VALIDATOR, 'node_modules', 'gltf-validator'));
validator.validateBytes(new Uint8Array(require('fs').readFileSync(process.argv[1]))).then(r => {
  console.log(r.issues.numErrors + ' errors, ' + r.issues.numWarnings + ' warnings');
  for (const m of r.issues.messages) if (m.severity < 2) console.log(m.code, m.message, m.pointer);
});`

func BenchmarkGLB(b *testing.B) {
	l := demo(b, "conservation-scanner")
	for b.Loop() {
		glb(b, l)
	}
}
