package mesh

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// Solid is a shape's surface.
func Solid(s clear.Shape) Mesh {
	switch s := s.(type) {
	case clear.Box:
		return block(s)
	case clear.Cylinder:
		return cylinder(s)
	case clear.Rod:
		return rod(s)
	case clear.Arc:
		return arc(s)
	}
	panic(fmt.Sprintf("mesh: no surface for a %T", s))
}

func block(b clear.Box) Mesh {
	var m Mesh
	for axis := range 3 {
		for _, sign := range []float64{-1, 1} {
			m.side(b, axis, sign)
		}
	}
	return m
}

// side is one face of a block.
func (m *Mesh) side(b clear.Box, axis int, sign float64) {
	i, j := (axis+1)%3, (axis+2)%3
	n := b.Axes.Col(axis).Mul(sign)
	middle := b.Centre.Add(n.Mul(b.Half[axis]))
	u, w := b.Axes.Col(i).Mul(b.Half[i]), b.Axes.Col(j).Mul(sign*b.Half[j])
	m.quad(
		m.point(middle.Sub(u).Sub(w), n), m.point(middle.Add(u).Sub(w), n),
		m.point(middle.Add(u).Add(w), n), m.point(middle.Sub(u).Add(w), n),
	)
}

func cylinder(c clear.Cylinder) Mesh {
	way := c.To.Sub(c.From)
	if way.Len() <= shortest {
		return Mesh{}
	}
	dir := way.Normalize()
	u := Square(dir)
	a, b := station{c.From, dir, u}, station{c.To, dir, u}
	var m Mesh
	m.sweep([]station{a, b}, c.Radius, false)
	m.end(a, 0, c.Radius, -1)
	m.end(b, 0, c.Radius, 1)
	return m
}

// capStep is how many rings stand for a quarter of a circle on a round end.
const capStep = 8

// rod has round ends; one without length is a ball.
func rod(r clear.Rod) Mesh {
	dir := mgl64.Vec3{0, 0, 1}
	if way := r.To.Sub(r.From); way.Len() > shortest {
		dir = way.Normalize()
	}
	u := Square(dir)
	var m Mesh
	m.round(station{r.From, dir, u}, station{r.To, dir, u}, r.Radius, nil)
	return m
}

// round is a surface of rings from the pole behind the first station to the
// pole ahead of the last, with more stations between when there are any.
func (m *Mesh) round(a, b station, radius float64, between []station) {
	last, begun := uint32(0), false
	ring := func(s station, angle float64) {
		sin, cos := math.Sincos(angle)
		s.at = s.at.Add(s.dir.Mul(radius * sin))
		next := m.ring(s, radius*cos, sin, 1)
		if begun {
			m.skin(last, next, false)
		}
		last, begun = next, true
	}
	for i := -capStep; i <= 0; i++ {
		ring(a, math.Pi/2*float64(i)/capStep)
	}
	for _, s := range between {
		ring(s, 0)
	}
	for i := range capStep + 1 {
		ring(b, math.Pi/2*float64(i)/capStep)
	}
}

// arc is a bend with round ends.
func arc(c clear.Arc) Mesh {
	steps := max(1, int(math.Ceil(c.Turn/bendStep)))
	n := c.U.Cross(c.V)
	stations := make([]station, steps+1)
	for i := range stations {
		sin, cos := math.Sincos(c.Turn * float64(i) / float64(steps) * math.Pi / 180)
		out := c.U.Mul(cos).Add(c.V.Mul(sin))
		stations[i] = station{c.Centre.Add(out.Mul(c.Bend)), c.V.Mul(cos).Sub(c.U.Mul(sin)), n}
	}
	var m Mesh
	m.round(stations[0], stations[steps], c.Radius, stations[1:steps])
	return m
}
