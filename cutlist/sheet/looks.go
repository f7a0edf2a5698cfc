package sheet

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
)

// Looks draws the machine from one side into a box of w by h mm: the case's
// outline, parts with their names, ports, fittings, and tubes at their true
// diameter with true bends, the nearer over the farther. A tube behind something
// shows its centreline dashed.
func Looks(l cutlist.List, k Look, th Theme, w, h float64) draw.Drawing {
	scene := newScene(l, k, th)
	scale := scene.fit(w, h)
	d := scene.draw(scale)
	out := draw.Drawing{W: w, H: h}
	out.Place(d, draw.Point{X: (w - d.W) / 2, Y: (h - d.H) / 2})
	return out
}

// air is left around a look for what stands at its edge, mm on paper.
const air = 2.5

// scene is a machine seen from one side.
type scene struct {
	list   cutlist.List
	theme  Theme
	parts  []route.Placed
	view   view
	bounds frame     // at scale 1, mm of machine
	all    []painted // at the view's scale, the farthest first
}

func newScene(l cutlist.List, k Look, th Theme) *scene {
	s := &scene{list: l, theme: th, parts: l.Plan.PlaceAll(), view: k.view()}
	s.bounds = emptyFrame()
	for i := range 8 {
		s.bounds = s.bounds.with(s.view.on(s.caseCorner(i)))
	}
	for _, p := range s.paint() {
		s.bounds = s.bounds.with(p.outline...)
	}
	return s
}

// caseCorner is one of the case's eight corners.
func (s *scene) caseCorner(i int) (c mgl64.Vec3) {
	for axis := range 3 {
		if i>>axis&1 == 1 {
			c[axis] = s.list.Plan.Case[axis]
		}
	}
	return c
}

// fit is the largest scale at which the scene goes into a box.
func (s *scene) fit(w, h float64) float64 {
	return math.Max(leastScale, math.Min((w-2*air)/math.Max(s.bounds.w(), 1), (h-2*air)/math.Max(s.bounds.h(), 1)))
}

// size is how large the scene is on paper at a scale.
func (s *scene) size(scale float64) (w, h float64) {
	return s.bounds.w()*scale + 2*air, s.bounds.h()*scale + 2*air
}

// paint gives all that stands in the case at the view's scale.
func (s *scene) paint() []painted {
	th := s.theme
	var all []painted
	for i, p := range s.parts {
		first := len(all)
		all = append(all, s.view.solids(p.Solids, th.Part, th.PartSide, th.Edge)...)
		for k := range all[first:] {
			all[first+k].part = i + 1
		}
		for _, q := range p.Ports {
			all = append(all, s.port(q))
		}
	}
	for i, t := range s.list.Tubes {
		first := len(all)
		for _, laid := range []route.Laid{t.Way.Start, t.Way.End} {
			for _, body := range laid.Bodies {
				all = append(all, s.view.solids(body.Shapes, th.Fitting, mix(th.Fitting, th.Edge, 0.4), th.Edge)...)
			}
		}
		all = append(all, s.view.tube(t.Way.Formed, coloursOf(t.Letter, th), mouths(t))...)
		for k := range all[first:] {
			all[first+k].owner = i + 1
		}
	}
	return all
}

// Size of a port as drawn, mm of machine: the face of a G1/4 port and a stub.
const (
	portRadius = 8.0
	portArrow  = 14.0
)

// port paints a ring, filled when a run uses it, and a stub the way it faces.
func (s *scene) port(q route.PlacedPort) painted {
	at, tip := s.view.on(q.Frame.At), s.view.on(q.Frame.Ahead(portArrow))
	fill := s.theme.Paper
	if s.used(q.Ref) {
		fill = s.theme.Edge
	}
	ring := draw.Disc(at, portRadius*s.view.scale*0.6, fill, edgePen(s.theme.Ink))
	stub := draw.Segment(at.X, at.Y, tip.X, tip.Y, edgePen(s.theme.Ink))
	return painted{
		near: s.view.depth(q.Frame.At) + portRadius, items: []draw.Item{stub, ring}, outline: hull(ring.Points),
		space: spaceOf(portRadius, q.Frame.At),
	}
}

func (s *scene) used(ref route.PortRef) bool {
	for _, r := range s.list.Plan.Runs {
		if r.From == ref || r.To == ref {
			return true
		}
	}
	return false
}

// draw paints the scene at a scale.
func (s *scene) draw(scale float64) draw.Drawing {
	w, h := s.size(scale)
	s.view.scale = scale
	s.view.zero = draw.Point{X: air - s.bounds.lo.X*scale, Y: air - s.bounds.lo.Y*scale}
	d := draw.Drawing{W: w, H: h}
	d.Add(s.outline()...)
	s.order()
	for _, p := range s.all {
		d.Add(p.items...)
	}
	l := &labels{within: frame{hi: draw.Point{X: w, Y: h}}, theme: s.theme}
	s.hidden(&d)
	s.letters(&d, l)
	s.marks(&d, l)
	s.names(&d, l)
	return d
}

// order makes all that is painted, the farthest first.
func (s *scene) order() {
	s.all = s.paint()
	for i, p := range s.all {
		s.all[i].box = emptyFrame().with(p.outline...)
	}
	if s.view.oblique() {
		s.all = s.view.obliquely(s.all)
		return
	}
	backToFront(s.all)
}

// outline is the case, open toward the reader: its outline, and its far edges
// where they are seen apart from it.
func (s *scene) outline() []draw.Item {
	var corners []draw.Point
	for i := range 8 {
		corners = append(corners, s.view.on(s.caseCorner(i)))
	}
	items := []draw.Item{draw.Fill{Points: hull(corners), Colour: s.theme.Paper, Stroke: pen(0.5, s.theme.Ink)}}
	if !s.view.oblique() {
		return items
	}
	far := 0
	for axis, t := range s.view.toward {
		if t < 0 {
			far |= 1 << axis
		}
	}
	for axis := range 3 {
		items = append(items, draw.Line{Points: []draw.Point{corners[far], corners[far^1<<axis]}, Stroke: pen(0.2, s.theme.Rule)})
	}
	return items
}

// sampleStep is how far apart a tube is asked whether it is hidden, mm.
const sampleStep = 3.0

// seen reports whether nothing covers a point of the tube with this owner's
// number: no part and no other tube that reaches nearer than its own skin.
func (s *scene) seen(at mgl64.Vec3, od float64, owner int) bool {
	on, depth := s.view.on(at), s.view.depth(at)
	if s.view.oblique() {
		return s.seenObliquely(at, on, od, owner)
	}
	for i := len(s.all) - 1; i >= 0 && s.all[i].near > depth+od/2+sameDepth; i-- {
		if p := &s.all[i]; p.owner != owner && p.box.has(on) && inside(p.outline, on) {
			return false
		}
	}
	return true
}

// seenObliquely is seen where the nearest point alone does not tell what covers
// what.
func (s *scene) seenObliquely(at mgl64.Vec3, on draw.Point, od float64, owner int) bool {
	bit := painted{near: s.view.depth(at) + od/2, space: spaceOf(od/2, at)}
	for i := range s.all {
		p := &s.all[i]
		if p.owner != owner && p.box.has(on) && s.view.inFront(p, &bit) > 0 && inside(p.outline, on) {
			return false
		}
	}
	return true
}

// hidden dashes the centreline of tubes where something is in front.
func (s *scene) hidden(d *draw.Drawing) {
	for i, t := range s.list.Tubes {
		way := line(t.Way.Formed.Pieces())
		var part []draw.Point
		for _, at := range samples(t) {
			p := way.at(at)
			if !s.seen(p, t.Way.Formed.Tube.OD, i+1) {
				part = append(part, s.view.on(p))
				continue
			}
			s.dash(d, part, t.Letter)
			part = nil
		}
		s.dash(d, part, t.Letter)
	}
}

func (s *scene) dash(d *draw.Drawing, part []draw.Point, letter string) {
	if len(part) > 1 {
		d.Add(draw.Line{Points: part, Stroke: dashedPen(0.35, mix(ColourOf(letter), s.theme.Ink, 0.35), 1.2, 0.9)})
	}
}

// samples is places along a tube, mm from its first stop.
func samples(t cutlist.Tube) []float64 {
	length := t.Way.Formed.Developed
	n := max(1, min(int(length/sampleStep), 1000))
	out := make([]float64, n+1)
	for i := range out {
		out[i] = length * float64(i) / float64(n)
	}
	return out
}
