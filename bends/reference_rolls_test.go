package bends_test

import (
	"math"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

var rollRows = []group{
	{firstLeg, "XL-001"},
	{secondLeg, "XL-002 XL-012 XL-014"},
	{firstTurn, "XL-004 XL-011 XL-013 XL-040"},
	{anyRoll, "XL-006 XL-024 XL-027"},
	{signedRoll, "XL-007 XL-009 XL-010 XL-017 XL-018 XL-019 XL-021 XL-026 XL-038 XL-042"},
	{tetrahedralTurn, "XL-023"},
	{compoundTurn, "XL-028 XL-029 XL-031"},
	{firstFeed, "XL-033"},
	{firstBetween, "XL-034 XL-044"},
	{lastFeed, "XL-036"},
	{developedOf, "XL-037 XL-043"},
}

// through forms the row's points, with its radius or a sharp one.
func through(t *testing.T, in inputs) bends.Formed {
	t.Helper()
	r := sharp
	if in["R"] != "" {
		r = in.num(t, "R")
	}
	return formed(t, r, in.points(t)...)
}

func firstLeg(t *testing.T, in inputs) float64     { return leg(through(t, in), 0) }
func secondLeg(t *testing.T, in inputs) float64    { return leg(through(t, in), 1) }
func firstTurn(t *testing.T, in inputs) float64    { return through(t, in).Bends[0].Turn }
func signedRoll(t *testing.T, in inputs) float64   { return through(t, in).Bends[1].Roll }
func anyRoll(t *testing.T, in inputs) float64      { return math.Abs(signedRoll(t, in)) }
func firstFeed(t *testing.T, in inputs) float64    { return through(t, in).Table().Rows[0].Length }
func firstBetween(t *testing.T, in inputs) float64 { return through(t, in).Table().Rows[1].Length }
func lastFeed(t *testing.T, in inputs) float64     { return through(t, in).Table().Last }
func developedOf(t *testing.T, in inputs) float64  { return through(t, in).Developed }

// tetrahedralTurn goes from one corner of a cube over its centre to another that
// shares no edge with it: two bonds of a tetrahedron.
func tetrahedralTurn(t *testing.T, _ inputs) float64 {
	return formed(t, sharp, mgl64.Vec3{1, 1, 1}, mgl64.Vec3{}, mgl64.Vec3{1, -1, -1}).Bends[0].Turn
}

// compoundTurn turns off the x axis by the row's angle in plan and then rises.
func compoundTurn(t *testing.T, in inputs) float64 {
	sinPlan, cosPlan := math.Sincos(in.num(t, "plan") * math.Pi / 180)
	sinRise, cosRise := math.Sincos(in.num(t, "rise") * math.Pi / 180)
	out := mgl64.Vec3{cosPlan * cosRise, sinRise, -sinPlan * cosRise}
	return formed(t, sharp, mgl64.Vec3{-1, 0, 0}, mgl64.Vec3{}, out).Bends[0].Turn
}
