package mesh

import (
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/go-gl/mathgl/mgl64"
	"github.com/qmuntal/gltf"
	"github.com/qmuntal/gltf/modeler"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
	"tubewright/route/clear"
)

// metre is how many mm one is: glTF counts in metres.
const metre = 1000.0

// Paint is the colours of a machine.
type Paint struct {
	Case, Part, Fitting draw.Colour
	Tube                func(letter string) draw.Colour
}

// GLB writes the whole machine as one binary glTF 2.0 file: the case as lines,
// each part, each fitting, and each tube cut to its aim as a pipe, every one a
// node under its own name ("A pump-to-plate"). The same list gives the same bytes.
func GLB(w io.Writer, l cutlist.List, p Paint) error {
	s := newScene(l, p)
	s.caseLines()
	s.parts()
	s.fittings()
	s.tubes()
	if err := gltf.NewEncoder(w).Encode(s.doc); err != nil {
		return fmt.Errorf("writing the machine as glTF: %w", err)
	}
	return nil
}

// scene is a glTF document being filled.
type scene struct {
	list      cutlist.List
	paint     Paint
	doc       *gltf.Document
	root      *gltf.Node
	materials map[draw.Colour]int // colour to its material's number; only looked up
}

func newScene(l cutlist.List, p Paint) *scene {
	doc := gltf.NewDocument()
	doc.Asset.Generator = "Tubewright"
	root := &gltf.Node{Name: plain(l.Plan.Name)}
	doc.Nodes = []*gltf.Node{root}
	doc.Scenes[0].Nodes = []int{0}
	return &scene{list: l, paint: p, doc: doc, root: root, materials: map[draw.Colour]int{}}
}

// plain is a name as JSON can hold it.
func plain(name string) string { return strings.ToValidUTF8(name, "\ufffd") }

// node adds a node under another, or under the root when that is nil.
func (s *scene) node(under *gltf.Node, name string) *gltf.Node {
	if under == nil {
		under = s.root
	}
	n := &gltf.Node{Name: plain(name)}
	under.Children = append(under.Children, len(s.doc.Nodes))
	s.doc.Nodes = append(s.doc.Nodes, n)
	return n
}

func (s *scene) parts() {
	if len(s.list.Plan.Parts) == 0 {
		return
	}
	all := s.node(nil, "parts")
	for _, p := range s.list.Plan.PlaceAll() {
		s.show(s.node(all, p.Part.Name), solids(p.Solids), s.paint.Part)
	}
}

func (s *scene) fittings() {
	if len(s.list.Tubes) == 0 {
		return
	}
	all := s.node(nil, "fittings")
	for _, t := range s.list.Tubes {
		s.chain(all, t, "start", t.Way.Start)
		s.chain(all, t, "end", t.Way.End)
	}
}

func (s *scene) chain(under *gltf.Node, t cutlist.Tube, end string, laid route.Laid) {
	for i, b := range laid.Bodies {
		name := fmt.Sprintf("%s %s %s %d %s", t.Letter, t.Run, end, i+1, b.Fitting.Name)
		s.show(s.node(under, name), solids(b.Shapes), s.paint.Fitting)
	}
}

func (s *scene) tubes() {
	if len(s.list.Tubes) == 0 {
		return
	}
	all := s.node(nil, "tubes")
	for _, t := range s.list.Tubes {
		n := s.node(all, t.Letter+" "+t.Run)
		n.Extras = map[string]any{"tube": plain(t.Way.Tube.Name), "cut_mm": math.Round(t.Cut.Aim*100) / 100}
		s.show(n, Pipe(t.Way.Formed, t.Way.Ends), s.paint.Tube(t.Letter))
	}
}

// solids is the surfaces of shapes as one mesh.
func solids(shapes []clear.Shape) Mesh {
	var m Mesh
	for _, shape := range shapes {
		m.join(Solid(shape))
	}
	return m
}

// show gives a node a mesh; one without faces shows nothing.
func (s *scene) show(n *gltf.Node, m Mesh, c draw.Colour) {
	if len(m.Faces) == 0 {
		return
	}
	indices := make([]uint32, 0, 3*len(m.Faces))
	for _, f := range m.Faces {
		indices = append(indices, f[:]...)
	}
	s.mesh(n, &gltf.Primitive{
		Attributes: gltf.PrimitiveAttributes{
			gltf.POSITION: modeler.WritePosition(s.doc, scaled(m.Points, 1/metre)),
			gltf.NORMAL:   modeler.WriteNormal(s.doc, scaled(m.Normals, 1)),
		},
		Indices:  gltf.Index(modeler.WriteIndices(s.doc, indices)),
		Material: gltf.Index(s.material(c)),
	})
}

func (s *scene) mesh(n *gltf.Node, p *gltf.Primitive) {
	n.Mesh = gltf.Index(len(s.doc.Meshes))
	s.doc.Meshes = append(s.doc.Meshes, &gltf.Mesh{Name: n.Name, Primitives: []*gltf.Primitive{p}})
}

func scaled(points []mgl64.Vec3, by float64) [][3]float32 {
	out := make([][3]float32, len(points))
	for i, p := range points {
		for k := range 3 {
			out[i][k] = float32(p[k] * by)
		}
	}
	return out
}

// caseLines is the twelve edges of the case, so that it hides nothing.
func (s *scene) caseLines() {
	var corners []mgl64.Vec3
	var edges []uint16
	for i := range uint16(8) {
		at := s.list.Plan.Case
		for axis := range 3 {
			if i>>axis&1 == 0 {
				at[axis] = 0
				edges = append(edges, i, i|1<<axis)
			}
		}
		corners = append(corners, at)
	}
	s.mesh(s.node(nil, "case"), &gltf.Primitive{
		Mode:       gltf.PrimitiveLines,
		Attributes: gltf.PrimitiveAttributes{gltf.POSITION: modeler.WritePosition(s.doc, scaled(corners, 1/metre))},
		Indices:    gltf.Index(modeler.WriteIndices(s.doc, edges)),
		Material:   gltf.Index(s.material(s.paint.Case)),
	})
}

// material gives the number of a colour's material.
func (s *scene) material(c draw.Colour) int {
	if n, ok := s.materials[c]; ok {
		return n
	}
	n := len(s.doc.Materials)
	s.materials[c] = n
	s.doc.Materials = append(s.doc.Materials, &gltf.Material{
		Name: fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B),
		PBRMetallicRoughness: &gltf.PBRMetallicRoughness{
			BaseColorFactor: &[4]float64{linear(c.R), linear(c.G), linear(c.B), 1},
			MetallicFactor:  gltf.Float(0), RoughnessFactor: gltf.Float(0.6),
		},
	})
	return n
}

// linear is an sRGB component as the linear light that glTF counts in, to
// 0.0001 (IEC 61966-2-1).
func linear(v uint8) float64 {
	x := float64(v) / 255
	if x <= 0.04045 {
		x /= 12.92
	} else {
		x = math.Pow((x+0.055)/1.055, 2.4)
	}
	return math.Round(x*1e4) / 1e4
}
