package clear_test

import (
	"math/rand/v2"
	"testing"

	"tubewright/route/clear"
)

// scale makes a sampled shape about as large as the parts of a computer.
const scale = 12

func benchPairs(first, second string) (list [64][2]clear.Shape) {
	r := rand.New(rand.NewPCG(1, 2))
	for i := range list {
		list[i] = [2]clear.Shape{grown(randomShape(r, first)), grown(randomShape(r, second))}
	}
	return list
}

func grown(s clear.Shape) clear.Shape {
	switch s := s.(type) {
	case clear.Rod:
		return clear.Rod{From: s.From.Mul(scale), To: s.To.Mul(scale), Radius: 8}
	case clear.Box:
		return clear.Box{Centre: s.Centre.Mul(scale), Axes: s.Axes, Half: s.Half.Mul(scale)}
	case clear.Cylinder:
		return clear.Cylinder{From: s.From.Mul(scale), To: s.To.Mul(scale), Radius: s.Radius * scale}
	}
	arc := s.(clear.Arc)
	arc.Centre, arc.Bend, arc.Radius = arc.Centre.Mul(scale), 32, 8
	return arc
}

func eachKindPair(b *testing.B, one func(b *testing.B, pairs [64][2]clear.Shape)) {
	for i, first := range kinds {
		for _, second := range kinds[i:] {
			b.Run(first+"-"+second, func(b *testing.B) { one(b, benchPairs(first, second)) })
		}
	}
}

func BenchmarkBetween(b *testing.B) {
	eachKindPair(b, func(b *testing.B, pairs [64][2]clear.Shape) {
		for i := 0; b.Loop(); i++ {
			p := &pairs[i%64]
			clear.Between(p[0], p[1])
		}
	})
}

// Only pairs that stand apart: no depth to work out.
func BenchmarkBetweenApart(b *testing.B) {
	eachKindPair(b, func(b *testing.B, pairs [64][2]clear.Shape) {
		var apart [][2]clear.Shape
		for _, p := range pairs {
			if clear.Between(p[0], p[1]).Distance > 0 {
				apart = append(apart, p)
			}
		}
		for i := 0; b.Loop(); i++ {
			p := &apart[i%len(apart)]
			clear.Between(p[0], p[1])
		}
	})
}

func BenchmarkFarther(b *testing.B) {
	eachKindPair(b, func(b *testing.B, pairs [64][2]clear.Shape) {
		for i := 0; b.Loop(); i++ {
			p := &pairs[i%64]
			clear.Farther(p[0], p[1], 4)
		}
	})
}
