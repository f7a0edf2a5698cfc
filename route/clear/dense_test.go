package clear_test

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// fine is the distance between samples, mm: no place of a surface is farther
// than 0.71·fine from one, and the distance changes by no more than that.
const fine = 0.07

// samples are points all over a shape's surface or, for round shapes, along its
// centreline; dress is the radius still to be taken off.
func samples(s clear.Shape) (points []vec, dress float64) {
	switch s := s.(type) {
	case clear.Rod:
		return onLine(nil, s.From, s.To), s.Radius
	case clear.Arc:
		n := steps(s.Bend * mgl64.DegToRad(s.Turn))
		for i := range n + 1 {
			points = append(points, arcAt(s, s.Turn*float64(i)/float64(n)))
		}
		return points, s.Radius
	case clear.Box:
		return onBox(s), 0
	}
	return onCylinder(s.(clear.Cylinder)), 0
}

func steps(length float64) int { return int(math.Ceil(length/fine)) + 1 }

func onLine(points []vec, p, q vec) []vec {
	n := steps(q.Sub(p).Len())
	for i := range n + 1 {
		points = append(points, p.Add(q.Sub(p).Mul(float64(i)/float64(n))))
	}
	return points
}

func arcAt(a clear.Arc, angle float64) vec {
	s, c := math.Sincos(mgl64.DegToRad(angle))
	return a.Centre.Add(a.U.Mul(a.Bend * c)).Add(a.V.Mul(a.Bend * s))
}

func onBox(b clear.Box) (points []vec) {
	for i := range 3 {
		j, k := (i+1)%3, (i+2)%3
		nj, nk := steps(2*b.Half[j]), steps(2*b.Half[k])
		for n := range (nj + 1) * (nk + 1) {
			x := b.Axes.Col(j).Mul(b.Half[j] * (2*float64(n%(nj+1))/float64(nj) - 1))
			y := b.Axes.Col(k).Mul(b.Half[k] * (2*float64(n/(nj+1))/float64(nk) - 1))
			z := b.Axes.Col(i).Mul(b.Half[i])
			middle := b.Centre.Add(x).Add(y)
			points = append(points, middle.Add(z), middle.Sub(z))
		}
	}
	return points
}

func onCylinder(c clear.Cylinder) (points []vec) {
	axis := c.To.Sub(c.From).Normalize()
	x := axis.Cross(vec{0.3, 0.5, 0.8}).Normalize()
	y := axis.Cross(x)
	round := steps(2 * math.Pi * c.Radius)
	for i := range round {
		s, cos := math.Sincos(2 * math.Pi * float64(i) / float64(round))
		out := x.Mul(c.Radius * cos).Add(y.Mul(c.Radius * s))
		points = onLine(points, c.From.Add(out), c.To.Add(out))
		points = onLine(points, c.From, c.From.Add(out))
		points = onLine(points, c.To, c.To.Add(out))
	}
	return points
}

// away is how far a point is from a shape, 0 inside; written apart from the
// package's own code, from the definitions of the shapes.
func away(x vec, s clear.Shape) float64 {
	switch s := s.(type) {
	case clear.Rod:
		return max(0, awayFromLine(x, s.From, s.To)-s.Radius)
	case clear.Box:
		w := s.Axes.Transpose().Mul3x1(x.Sub(s.Centre))
		return vec{max(0, math.Abs(w[0])-s.Half[0]), max(0, math.Abs(w[1])-s.Half[1]), max(0, math.Abs(w[2])-s.Half[2])}.Len()
	case clear.Cylinder:
		axis := s.To.Sub(s.From)
		w := x.Sub(s.From)
		along := w.Dot(axis.Normalize())
		beyond := max(0, -along, along-axis.Len())
		return math.Hypot(beyond, max(0, w.Cross(axis.Normalize()).Len()-s.Radius))
	}
	return awayFromArc(x, s.(clear.Arc))
}

func awayFromLine(x, p, q vec) float64 {
	if p == q {
		return x.Sub(p).Len()
	}
	t := min(1, max(0, x.Sub(p).Dot(q.Sub(p))/q.Sub(p).Dot(q.Sub(p))))
	return x.Sub(p.Add(q.Sub(p).Mul(t))).Len()
}

func awayFromArc(x vec, a clear.Arc) float64 {
	w := x.Sub(a.Centre)
	angle := mgl64.RadToDeg(math.Atan2(a.V.Dot(w), a.U.Dot(w)))
	d := min(x.Sub(arcAt(a, 0)).Len(), x.Sub(arcAt(a, a.Turn)).Len())
	if angle < 0 {
		angle += 360
	}
	if angle <= a.Turn {
		d = min(d, x.Sub(arcAt(a, angle)).Len())
	}
	return max(0, d-a.Radius)
}
