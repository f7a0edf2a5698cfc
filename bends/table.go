package bends

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
)

// Table is a tube as lengths, rotations and angles: what to feed, how to roll,
// how far to turn, and the straight left after the last bend. The zero value is
// no tube.
type Table struct {
	Rows []Row
	Last float64 // straight after the last bend, mm
}

// Row is one bend of a table.
type Row struct {
	Length float64 // straight before the bend, mm
	Roll   float64 // degrees since the bend before, by the right-hand rule along the way; of the first: from the xy plane
	Turn   float64 // degrees
	Radius float64 // to the centreline, mm
}

// Table is the tube between its stops as lengths, rotations and angles.
func (f Formed) Table() Table {
	if len(f.Straights) == 0 {
		return Table{}
	}
	t := Table{Rows: make([]Row, len(f.Bends)), Last: f.Straights[len(f.Bends)]}
	for i, b := range f.Bends {
		t.Rows[i] = Row{f.Straights[i], b.Roll, b.Turn, b.Radius}
	}
	return t
}

// Marked is the table of a tube of this length in mm whose bends start at their
// marks. Of each bend it reads Turn, Roll, Radius and Start, in the order of
// the tube; the rest may be zero.
func Marked(length float64, bends []Bend) Table {
	t := Table{Rows: make([]Row, len(bends)), Last: length}
	end := 0.0
	for i, b := range bends {
		t.Rows[i] = Row{b.Start - end, b.Roll, b.Turn, b.Radius}
		end = b.Start + ArcLength(b.Radius, b.Turn)
	}
	t.Last = length - end
	return t
}

// Developed is the length of the centreline, mm.
func (t Table) Developed() float64 {
	sum := t.Last
	for _, r := range t.Rows {
		sum += r.Length + ArcLength(r.Radius, r.Turn)
	}
	return sum
}

// Path is the path a table forms, with its radii.
func (t Table) Path() Path {
	p := Path{Corners: Corners(t), Radii: make([]float64, len(t.Rows))}
	for i, r := range t.Rows {
		p.Radii[i] = r.Radius
	}
	return p
}

// Corners is the inverse of [Formed.Table]: the corners of a tube that starts
// at the origin along +x and whose first bend, when its roll is 0, turns toward
// +y in the xy plane. A formed tube's corners come back up to a rigid motion.
// Nothing is judged here: a table of bad numbers gives bad corners, which
// [Form] refuses.
func Corners(t Table) []mgl64.Vec3 {
	at, dir, side := mgl64.Vec3{}, mgl64.Vec3{1, 0, 0}, mgl64.Vec3{0, 1, 0}
	corners := make([]mgl64.Vec3, 1, len(t.Rows)+2)
	carry := 0.0 // setback of the bend before
	for _, r := range t.Rows {
		setback := Setback(r.Radius, r.Turn)
		at = at.Add(dir.Mul(carry + r.Length + setback))
		corners, carry = append(corners, at), setback
		side = turned(side, dir.Cross(side), r.Roll)
		dir, side = turned(dir, side, r.Turn), turned(side, dir.Mul(-1), r.Turn)
	}
	return append(corners, at.Add(dir.Mul(carry+t.Last)))
}

// turned is a unit vector turned by degrees toward another square to it.
func turned(v, toward mgl64.Vec3, degrees float64) mgl64.Vec3 {
	sin, cos := math.Sincos(degrees * perDegree)
	return v.Mul(cos).Add(toward.Mul(sin))
}
