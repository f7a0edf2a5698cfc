package sheet

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist/draw"
	"tubewright/route/clear"
)

// scattered is boxes that stand apart from each other, long and short ones.
func scattered(r *rand.Rand) (boxes []space) {
	for range 60 {
		var b space
		for i := range 3 {
			b.lo[i] = math.Round(r.Float64() * 300)
			b.hi[i] = b.lo[i] + 5 + math.Round(r.ExpFloat64()*40)
		}
		apart := true
		for _, o := range boxes {
			meets := true
			for i := range 3 {
				meets = meets && b.lo[i] < o.hi[i] && o.lo[i] < b.hi[i]
			}
			apart = apart && !meets
		}
		if apart {
			boxes = append(boxes, b)
		}
	}
	return boxes
}

// enters is how near to the reader a line of sight first meets a box; −Inf when
// it misses it (the slab test of Kay and Kajiya, 1986).
func enters(b space, from, toward mgl64.Vec3) float64 {
	lo, hi := math.Inf(-1), math.Inf(1)
	for i := range 3 {
		s, t := (b.lo[i]-from[i])/toward[i], (b.hi[i]-from[i])/toward[i]
		lo, hi = math.Max(lo, math.Min(s, t)), math.Min(hi, math.Max(s, t))
	}
	if lo >= hi-1e-6 {
		return math.Inf(-1)
	}
	return hi
}

// What is painted last at a place of the page is what a line of sight meets
// first, box by box, worked out from the boxes alone.
func TestParallelViewCoversAsTheEyeSeesIt(t *testing.T) {
	v := Parallel.view()
	looked := 0
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 6))
		boxes := scattered(r)
		var all []painted
		for i, b := range boxes {
			p := v.box(clear.Box{Centre: b.lo.Add(b.hi).Mul(0.5), Half: b.hi.Sub(b.lo).Mul(0.5), Axes: mgl64.Ident3()}, draw.Colour{}, draw.Colour{}, draw.Colour{})
			p.part, p.box = i+1, emptyFrame().with(p.outline...)
			all = append(all, p)
		}
		all = v.obliquely(all)
		for range 400 {
			at := mgl64.Vec3{r.Float64() * 340, r.Float64() * 340, r.Float64() * 340}
			seen, nearest, second := 0, math.Inf(-1), math.Inf(-1)
			for i, b := range boxes {
				if d := enters(b, at, v.toward); d > nearest {
					seen, nearest, second = i+1, d, nearest
				} else {
					second = math.Max(second, d)
				}
			}
			if seen == 0 || nearest-second < 0.2 {
				continue
			}
			last := 0
			for _, p := range all {
				if inside(p.outline, v.on(at)) {
					last = p.part
				}
			}
			looked++
			if last != seen {
				t.Fatalf("seed %d: at %v box %d is painted on top, the eye meets box %d first", seed, at, last, seen)
			}
		}
	}
	if looked < 2000 {
		t.Errorf("only %d places with something to see", looked)
	}
}

// The case's axes run on the page as the caption says, and the view's own axes
// are square and right handed.
func TestParallelViewRunsAsItSays(t *testing.T) {
	v := Parallel.view()
	x, y, z := v.on(mgl64.Vec3{1}), v.on(mgl64.Vec3{0, 1}), v.on(mgl64.Vec3{0, 0, 1})
	if x.X <= 0 || y.Y >= 0 || math.Abs(y.X) > 1e-12 || v.depth(mgl64.Vec3{0, 0, 1}) <= 0 || z.Y <= 0 {
		t.Errorf("x falls on %v, y on %v, z on %v; want x right, y up, z toward the reader", x, y, z)
	}
	if d := math.Abs(v.right.Dot(v.up)) + math.Abs(v.right.Len()-1) + math.Abs(v.up.Len()-1) + math.Abs(v.toward.Len()-1); d > 1e-12 {
		t.Errorf("the view's axes are off square or length by %v", d)
	}
}
