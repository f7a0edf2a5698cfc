package sheet

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
)

// tubeColours is how a tube is painted.
type tubeColours struct{ body, edge draw.Colour }

func coloursOf(letter string, th Theme) tubeColours {
	c := ColourOf(letter)
	return tubeColours{body: mix(c, draw.Colour{R: 255, G: 255, B: 255}, 0.15), edge: mix(c, draw.Colour{}, 0.55)}
}

// chunk is a stretch of a tube short enough to be painted at one depth.
type chunk struct{ points []mgl64.Vec3 }

// endOn is the cosine beyond which a straight is seen as its end only.
const endOn = 0.999

// tube paints a formed tube in chunks: where it runs along the page in one
// piece, where it comes nearer in short ones. It is cut at some places, mm from
// its first stop, so that a collar can cover what is inside it.
func (v view) tube(f bends.Formed, c tubeColours, cuts []float64) []painted {
	var all []painted
	for _, p := range v.cut(f.Pieces(), cuts) {
		if p.End-p.Start < noise {
			continue
		}
		if p.Radius == 0 && math.Abs(p.To.Sub(p.From).Normalize().Dot(v.toward)) > endOn {
			all = append(all, v.end(p, f.Tube.OD/2, c))
			continue
		}
		for _, k := range v.chunks(p, f.Tube.OD) {
			all = append(all, v.chunk(k, f.Tube.OD, c))
		}
	}
	return all
}

// cut gives pieces with the straights cut where they pass one of some places;
// only where the nearest point alone does not tell what covers what.
func (v view) cut(pieces []bends.Piece, cuts []float64) (out []bends.Piece) {
	if !v.oblique() {
		return pieces
	}
	for _, p := range pieces {
		for _, s := range cuts {
			if p.Radius > 0 || s <= p.Start+noise || s >= p.End-noise {
				continue
			}
			first := p
			first.To, _ = p.At(s)
			first.End = s
			p.From, p.Start = first.To, s
			out = append(out, first)
		}
		out = append(out, p)
	}
	return out
}

// mouths is where a tube comes out of its collars, mm from its first stop.
func mouths(t cutlist.Tube) []float64 {
	inside := func(l route.Laid) float64 { return math.Max(0, l.Socket.Collar.Length-l.Socket.Stop) }
	a, b := inside(t.Way.Start), t.Way.Formed.Developed-inside(t.Way.End)
	return []float64{math.Min(a, b), math.Max(a, b)}
}

// end paints a straight that runs toward the reader.
func (v view) end(p bends.Piece, radius float64, c tubeColours) painted {
	near := p.From
	if v.depth(p.To) > v.depth(p.From) {
		near = p.To
	}
	shape := draw.Disc(v.on(near), radius*v.scale, c.body, pen(v.edge(radius), c.edge))
	return painted{near: v.depth(near), items: []draw.Item{shape}, outline: hull(shape.Points), space: spaceOf(radius, p.From, p.To)}
}

// edge is the width of the dark line along a tube, mm on paper.
func (v view) edge(radius float64) float64 { return math.Min(0.25, radius*v.scale*0.3) }

// arcStep is how far apart points on a drawn bend stand, degrees: a chord leaves
// a 50 mm bend by 0.03 mm, less than a line's width.
const arcStep = 4.0

// step is how much nearer one chunk may come, mm: an eighth of the tube where
// the nearest point alone tells what covers what.
func (v view) step(p bends.Piece, od float64) float64 {
	switch {
	case !v.oblique():
		return od / 8
	case p.Radius == 0 && along(p.To.Sub(p.From)):
		return math.Inf(1)
	}
	return od
}

// chunks cuts a piece so that no chunk comes nearer by more than two steps.
func (v view) chunks(p bends.Piece, od float64) []chunk {
	n, step := 1, v.step(p, od)
	if p.Radius > 0 {
		n = max(1, int(math.Ceil(p.Turn/arcStep)))
	} else if rise := math.Abs(v.depth(p.To) - v.depth(p.From)); rise > 0 {
		n = max(1, min(int(math.Ceil(rise/(2*step)-noise)), 400))
	}
	at := func(i int) mgl64.Vec3 {
		q, _ := p.At(p.Start + (p.End-p.Start)*float64(i)/float64(n))
		return q
	}
	var out []chunk
	part := chunk{points: []mgl64.Vec3{at(0)}}
	for i := 1; i <= n; i++ {
		part.points = append(part.points, at(i))
		if rise := v.depth(at(i)) - v.depth(part.points[0]); i == n || math.Abs(rise) > step {
			out = append(out, part)
			part = chunk{points: []mgl64.Vec3{at(i)}}
		}
	}
	return out
}

// chunk paints the dark edges of a stretch and its body on top; the body runs a
// little past both ends so that no seam shows.
func (v view) chunk(k chunk, od float64, c tubeColours) painted {
	points := v.onAll(k.points)
	p := painted{near: math.Inf(-1), space: spaceOfStretch(k.points, od/2)}
	for _, q := range k.points {
		p.near = math.Max(p.near, v.depth(q)+od/2)
	}
	w := od * v.scale
	body := lengthened(points, 0.12)
	p.items = []draw.Item{
		draw.Line{Points: points, Stroke: pen(w, c.edge)},
		draw.Line{Points: body, Stroke: pen(w-2*v.edge(od/2), c.body)},
	}
	p.outline = hull(bandCorners(points, w/2))
	return p
}

// lengthened is a line that runs on past both of its ends.
func lengthened(points []draw.Point, by float64) []draw.Point {
	out := append([]draw.Point(nil), points...)
	n := len(out) - 1
	on := func(from, to draw.Point) draw.Point { return to.Plus(heading(to.Minus(from)).Times(by)) }
	out[0] = on(points[1], points[0])
	out[n] = on(points[n-1], points[n])
	return out
}

// bandCorners is points around a line as wide as a tube.
func bandCorners(points []draw.Point, half float64) []draw.Point {
	var out []draw.Point
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		way := heading(b.Minus(a))
		n := draw.Point{X: -way.Y, Y: way.X}.Times(half)
		out = append(out, a.Plus(n), a.Minus(n), b.Plus(n), b.Minus(n))
	}
	return out
}

// line is a tube's centreline, laid out once to be walked along often.
type line []bends.Piece

// at is the point at s mm from the first stop.
func (l line) at(s float64) mgl64.Vec3 {
	for _, p := range l {
		if s <= p.End {
			q, _ := p.At(s)
			return q
		}
	}
	return l[len(l)-1].To
}
