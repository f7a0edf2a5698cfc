package sheet

import (
	"cmp"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist/draw"
	"tubewright/cutlist/mesh"
	"tubewright/route/clear"
)

// painted is one thing of a look: what is drawn, how near it reaches, and the
// outline that hides what is behind.
type painted struct {
	near    float64 // depth of its nearest point, mm of machine
	items   []draw.Item
	outline []draw.Point
	box     frame // around the outline
	space   space
	part    int // 1 and up, in the plan's order; 0: not a part's body
	owner   int // tubes and their fittings: 1 and up, in the list's order; 0: parts
}

// sameDepth is how near two depths are one, mm: ties then go by the order of
// the plan and not by the last bit.
const sameDepth = 1e-6

// backToFront sorts what is painted so that the nearer covers the farther. For
// things that do not pass through each other the nearest point decides: of two
// that cover each other on the page the one wholly in front reaches nearer.
func backToFront(all []painted) {
	slices.SortStableFunc(all, func(a, b painted) int {
		return cmp.Compare(math.Round(a.near/sameDepth), math.Round(b.near/sameDepth))
	})
}

// solids paints the shapes of a part or a fitting.
func (v view) solids(shapes []clear.Shape, face, side, edge draw.Colour) []painted {
	var all []painted
	for _, s := range shapes {
		switch s := s.(type) {
		case clear.Box:
			all = append(all, v.box(s, face, side, edge))
		case clear.Cylinder:
			all = append(all, v.cylinder(s.From, s.To, s.Radius, face, side, edge))
		case clear.Rod:
			all = append(all, v.rod(s, face, edge))
		}
	}
	return all
}

// edgePen is the line around solids.
func edgePen(c draw.Colour) draw.Stroke { return pen(0.18, c) }

// box paints the faces of a block that are seen.
func (v view) box(b clear.Box, face, side, edge draw.Colour) painted {
	var p painted
	var corners []draw.Point
	p.space = spaceOf(0)
	p.near = math.Inf(-1)
	for axis := range 3 {
		for _, sign := range []float64{-1, 1} {
			quad := boxFace(b, axis, sign)
			for _, q := range quad {
				p.near = math.Max(p.near, v.depth(q))
				corners = append(corners, v.on(q))
				p.space = p.space.with(q)
			}
			if facing := b.Axes.Col(axis).Dot(v.toward) * sign; facing > noise {
				p.items = append(p.items, draw.Fill{
					Points: v.onAll(quad[:]), Colour: mix(side, face, facing*facing), Stroke: edgePen(edge),
				})
			}
		}
	}
	p.outline = hull(corners)
	return p
}

func (v view) onAll(points []mgl64.Vec3) []draw.Point {
	out := make([]draw.Point, len(points))
	for i, q := range points {
		out[i] = v.on(q)
	}
	return out
}

// boxFace is the corners of the face on one side of an axis, in turn.
func boxFace(b clear.Box, axis int, sign float64) [4]mgl64.Vec3 {
	i, j := (axis+1)%3, (axis+2)%3
	middle := b.Centre.Add(b.Axes.Col(axis).Mul(sign * b.Half[axis]))
	u, w := b.Axes.Col(i).Mul(b.Half[i]), b.Axes.Col(j).Mul(b.Half[j])
	return [4]mgl64.Vec3{middle.Add(u).Add(w), middle.Sub(u).Add(w), middle.Sub(u).Sub(w), middle.Add(u).Sub(w)}
}

// around is how many points stand for a circle in space.
const around = 36

// cylinder paints the outline of a cylinder and the end that is seen.
func (v view) cylinder(from, to mgl64.Vec3, radius float64, face, side, edge draw.Colour) painted {
	axis := to.Sub(from)
	if axis.Len() == 0 {
		return v.rod(clear.Rod{From: from, To: to, Radius: radius}, face, edge)
	}
	axis = axis.Normalize()
	a, b := v.ring(from, axis, radius), v.ring(to, axis, radius)
	facing := axis.Dot(v.toward)
	p := painted{outline: hull(append(slices.Clone(a), b...)), space: spaceOfCylinder(from, to, axis, radius)}
	p.items = append(p.items, draw.Fill{Points: p.outline, Colour: mix(face, side, math.Abs(facing)), Stroke: edgePen(edge)})
	if facing > 0 {
		a = b
	}
	if math.Abs(facing) > 0.02 { // else the end is a line
		p.items = append(p.items, draw.Fill{Points: a, Colour: face, Stroke: edgePen(edge)})
	}
	sine := math.Sqrt(math.Max(0, 1-facing*facing))
	p.near = math.Max(v.depth(from), v.depth(to)) + radius*sine
	return p
}

// ring is the end of a cylinder on the page.
func (v view) ring(at, axis mgl64.Vec3, radius float64) []draw.Point {
	u := mesh.Square(axis)
	w := axis.Cross(u)
	points := make([]draw.Point, around)
	for i := range points {
		s, c := math.Sincos(2 * math.Pi * float64(i) / around)
		points[i] = v.on(at.Add(u.Mul(radius * c)).Add(w.Mul(radius * s)))
	}
	return points
}

// rod paints everything within a radius of a segment.
func (v view) rod(r clear.Rod, face, edge draw.Colour) painted {
	var points []draw.Point
	for _, end := range []mgl64.Vec3{r.From, r.To} {
		points = append(points, v.ring(end, v.toward, r.Radius)...)
	}
	p := painted{outline: hull(points), space: spaceOf(r.Radius, r.From, r.To), near: math.Max(v.depth(r.From), v.depth(r.To)) + r.Radius}
	p.items = []draw.Item{draw.Fill{Points: p.outline, Colour: face, Stroke: edgePen(edge)}}
	return p
}

// hull is the convex outline around points (Andrew's monotone chain, 1979).
func hull(points []draw.Point) []draw.Point {
	p := slices.Clone(points)
	slices.SortFunc(p, func(a, b draw.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	half := func(in []draw.Point) (out []draw.Point) {
		for _, q := range in {
			for len(out) > 1 && cross(out[len(out)-2], out[len(out)-1], q) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, q)
		}
		return out[:len(out)-1]
	}
	lower := half(p)
	slices.Reverse(p)
	return append(lower, half(p)...)
}

// cross is twice the area of a triangle, above 0 when it goes round from x to y.
func cross(a, b, c draw.Point) float64 {
	return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
}

// inside reports whether a point lies in a convex outline given by hull.
func inside(outline []draw.Point, p draw.Point) bool {
	for i, a := range outline {
		if cross(a, outline[(i+1)%len(outline)], p) < 0 {
			return false
		}
	}
	return len(outline) > 2
}
