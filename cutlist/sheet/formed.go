package sheet

import (
	"math"
	"strconv"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/mesh"
	"tubewright/route"
)

// flatTube is the thickness, mm, below which a bent centreline lies in one plane:
// less than a workshop bends truly.
const flatTube = 0.5

// FormedView draws a formed tube as it lies on the bench, end A on the left and
// its first straight level, into a box of w by h mm; a flat tube is laid on its
// side where that lets it be drawn larger. Edge true turns it about its first
// straight to be seen edge on. The text says the scale.
func FormedView(t cutlist.Tube, units route.Units, th Theme, edge bool, w, h float64) (d draw.Drawing, scale string) {
	v := flattest(t.Way.Formed)
	room := frame{hi: draw.Point{X: w - 2*formedAir, Y: h - 2*formedAir}}
	fit := formedFit(t.Way.Formed, v, room)
	if onSide := v.onSide(); v.thickness(t.Way.Formed) < flatTube && formedFit(t.Way.Formed, onSide, room) > 1.2*fit {
		v, fit = onSide, formedFit(t.Way.Formed, onSide, room)
	}
	if edge {
		v.up, v.toward = v.toward, v.up.Mul(-1)
	}
	f := v.extent(t.Way.Formed)
	v.scale, scale = roundScale(fit)
	v.zero = draw.Point{X: w / 2, Y: h / 2}.Minus(f.middle().Times(v.scale))
	d = draw.Drawing{W: w, H: h}
	p := &formedPicture{d: &d, view: v, tube: t, units: units, theme: th}
	p.labels = &labels{within: frame{hi: draw.Point{X: w, Y: h}}, theme: th}
	p.draw()
	return d, scale
}

// formedFit is the largest scale at which both views of a formed tube, or the
// one of a flat tube, go into a box.
func formedFit(f bends.Formed, v view, room frame) float64 {
	box := v.extent(f)
	if v.thickness(f) >= flatTube {
		v.up, v.toward = v.toward, v.up.Mul(-1)
		other := v.extent(f)
		box = box.with(box.lo.Plus(draw.Point{X: other.w(), Y: other.h()}))
	}
	return math.Max(leastScale, math.Min(room.w()/box.w(), room.h()/box.h()))
}

// onSide is the view turned by a right angle, so that what ran up runs right.
func (v view) onSide() view {
	v.right, v.up = v.up, v.right.Mul(-1)
	return v
}

// formedAir is left around a formed tube for its labels, mm on paper.
const formedAir = 5.0

// flattest is the view in which a formed tube is thinnest toward the reader, of
// those square to one of its bends; the first of equals.
func flattest(f bends.Formed) view {
	first := f.Corners[1].Sub(f.Corners[0]).Normalize()
	best, least := facing(first, mesh.Square(first)), math.Inf(1)
	for _, p := range f.Pieces() {
		if p.Radius == 0 {
			continue
		}
		v := facing(first, p.U.Cross(p.V))
		if thick := v.thickness(f); thick < least-flatTube/100 {
			best, least = v, thick
		}
	}
	return best
}

// facing is the view along normal with first running to the right as far as it
// can, turned so that the tube rises.
func facing(first, normal mgl64.Vec3) view {
	toward := normal.Normalize()
	right := first.Sub(toward.Mul(first.Dot(toward)))
	if right.Len() < noise { // the first straight comes at the reader
		right = mesh.Square(toward)
	}
	v := view{right: right.Normalize(), toward: toward, scale: 1}
	v.up = v.toward.Cross(v.right)
	return v
}

func (v view) thickness(f bends.Formed) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range f.Corners {
		lo, hi = math.Min(lo, v.depth(c)), math.Max(hi, v.depth(c))
	}
	return hi - lo
}

// extent is the room of a formed tube at scale 1.
func (v view) extent(f bends.Formed) frame {
	box := emptyFrame()
	for _, p := range f.Pieces() {
		for i := range 9 {
			q, _ := p.At(p.Start + (p.End-p.Start)*float64(i)/8)
			box = box.with(v.on(q))
		}
	}
	return box.grown(f.Tube.OD / 2)
}

// flat reports whether one view shows all of a formed tube.
func flat(f bends.Formed) bool { return flattest(f).thickness(f) < flatTube }

// formedPicture is a formed tube while it is drawn.
type formedPicture struct {
	d      *draw.Drawing
	view   view
	tube   cutlist.Tube
	units  route.Units
	theme  Theme
	labels *labels
}

func (p *formedPicture) draw() {
	f := p.tube.Way.Formed
	all := p.view.tube(f, coloursOf(p.tube.Letter, p.theme), nil)
	backToFront(all)
	for _, one := range all {
		p.d.Add(one.items...)
	}
	p.centreline(f)
	p.keepClear(f)
	p.endLabels(f)
	p.bendLabels(f)
	p.legLabels(f)
}

// centreline draws the line that the numbers are measured along.
func (p *formedPicture) centreline(f bends.Formed) {
	var line []draw.Point
	for _, piece := range f.Pieces() {
		n := max(1, int(math.Ceil(piece.Turn/arcStep)))
		for i := range n + 1 {
			q, _ := piece.At(piece.Start + (piece.End-piece.Start)*float64(i)/float64(n))
			line = append(line, p.view.on(q))
		}
	}
	p.d.Add(draw.Line{Points: line, Stroke: dashedPen(0.18, p.theme.Ink, 3, 0.8, 0.6, 0.8)})
}

// keepClear has the labels written beside the tube and not on it.
func (p *formedPicture) keepClear(f bends.Formed) {
	p.labels.strict = true
	way := line(f.Pieces())
	for _, s := range samples(p.tube) {
		p.labels.avoid = append(p.labels.avoid, emptyFrame().with(p.view.on(way.at(s))).grown(f.Tube.OD/2*p.view.scale+0.2))
	}
}

// room is how far from the centreline a label clears the tube, mm on paper.
func (p *formedPicture) room() float64 {
	return p.tube.Way.Formed.Tube.OD/2*p.view.scale + 2
}

// endLabels writes A and B beyond the tube's ends.
func (p *formedPicture) endLabels(f bends.Formed) {
	last := f.Developed
	for _, e := range []struct {
		name string
		s    float64
		sign float64
	}{{"A", 0, -1}, {"B", last, 1}} {
		at, dir := f.At(e.s)
		on := p.view.on(at)
		way := heading(p.view.on(at.Add(dir)).Minus(on))
		spots := append([]draw.Point{on.Plus(way.Times(3 * e.sign))}, nearby(on, 2.4)...)
		p.d.Add(p.labels.badge(e.name, 2.8, p.theme.Ink, spots)...)
	}
}

// bendLabels writes number and turn of each bend on its outside.
func (p *formedPicture) bendLabels(f bends.Formed) {
	for i, b := range f.Bends {
		piece := f.Pieces()[2*i+1]
		middle, _ := piece.At(b.Middle)
		on, centre := p.view.on(middle), p.view.on(piece.Centre)
		out := heading(on.Minus(centre))
		text := strconv.Itoa(i+1) + ": " + route.Degrees(b.Turn)
		p.note(text, true, on, out)
	}
}

// legLabels writes the length of each straight of the aim-cut tube beside it.
func (p *formedPicture) legLabels(f bends.Formed) {
	for i, length := range p.tube.Bench.Straights {
		piece := f.Pieces()[2*i]
		a, b := p.view.on(piece.From), p.view.on(piece.To)
		d := b.Minus(a)
		l := math.Hypot(d.X, d.Y)
		if l < 3 || length < 0.05 {
			continue
		}
		p.note(p.units.Text(length), false, a.Plus(b).Times(0.5), draw.Point{X: d.Y, Y: -d.X}.Times(1/l))
	}
}

// note writes a text beside the tube: on one side, else on the other, else
// farther off; not at all when there is no room, for the tables have it too.
func (p *formedPicture) note(text string, bold bool, at, side draw.Point) {
	t := draw.Text{Text: text, Size: fineSize, Bold: bold, Align: draw.Centre, Colour: p.theme.Ink}
	w := draw.TextWidth(text, t.Size, bold)
	var spots []draw.Point
	for _, far := range []float64{1, -1, 1.6, -1.6, 2.4, -2.4} {
		reach := p.room() + math.Abs(side.X)*w/2 + math.Abs(side.Y)*t.Size*0.4
		q := at.Plus(side.Times(reach * far))
		spots = append(spots, q.Plus(draw.Point{Y: halfCap * t.Size}))
	}
	if items, ok := p.labels.text(t, spots); ok {
		p.d.Add(items...)
	}
}
