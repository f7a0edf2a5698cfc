package clear_test

import (
	"container/heap"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// agreed is how near the package and brute force must be, mm.
const agreed = 0.05

// sure is how near brute force is to the truth, mm, by its own bounds.
const sure = 0.02

// sureShift is the same for the least shift of an arc, which takes long.
const sureShift = 0.04

// How many random pairs of each two kinds are tried in the normal suite; with an
// arc among them brute force takes long. TUBEWRIGHT_PAIRS sets another number.
const (
	brutePairs    = 300
	brutePairsArc = 20
)

// A patch is a piece of a shape's surface, or of the centreline of a round
// shape, no place of it farther than size from its middle.
type patch struct {
	middle vec
	size   float64
	halves func() []patch
}

// surface gives patches that cover a shape, and the radius still to be taken off.
func surface(s clear.Shape) (list []patch, dress float64) {
	switch s := s.(type) {
	case clear.Rod:
		return []patch{square(func(t, _ float64) vec { return s.From.Add(s.To.Sub(s.From).Mul(t)) }, s.To.Sub(s.From).Len(), 0)}, s.Radius
	case clear.Arc:
		return []patch{square(func(t, _ float64) vec { return arcAt(s, s.Turn*t) }, s.Bend*mgl64.DegToRad(s.Turn), 0)}, s.Radius
	case clear.Box:
		return boxPatches(s), 0
	}
	return cylinderPatches(s.(clear.Cylinder)), 0
}

// square is the patch at (x, y) for 0 ≤ x, y ≤ 1, where a step of all of x, or
// of y, moves the place by no more than wide, or high.
func square(at func(x, y float64) vec, wide, high float64) patch {
	middle := at(0.5, 0.5)
	return patch{middle, math.Hypot(wide, high) / 2, func() []patch {
		part := func(x0, y0, kx, ky float64) patch {
			return square(func(x, y float64) vec { return at(x0+kx*x, y0+ky*y) }, wide*kx, high*ky)
		}
		if wide >= high {
			return []patch{part(0, 0, 0.5, 1), part(0.5, 0, 0.5, 1)}
		}
		return []patch{part(0, 0, 1, 0.5), part(0, 0.5, 1, 0.5)}
	}}
}

func boxPatches(b clear.Box) (list []patch) {
	for i := range 3 {
		j, k := (i+1)%3, (i+2)%3
		for _, side := range []float64{-1, 1} {
			face := b.Centre.Add(b.Axes.Col(i).Mul(side * b.Half[i]))
			list = append(list, square(func(x, y float64) vec {
				return face.Add(b.Axes.Col(j).Mul(b.Half[j] * (2*x - 1))).Add(b.Axes.Col(k).Mul(b.Half[k] * (2*y - 1)))
			}, 2*b.Half[j], 2*b.Half[k]))
		}
	}
	return list
}

func cylinderPatches(c clear.Cylinder) (list []patch) {
	length := c.To.Sub(c.From).Len()
	axis := c.To.Sub(c.From).Mul(1 / length)
	x := axis.Cross(vec{0.3, 0.5, 0.8}).Normalize()
	y := axis.Cross(x)
	out := func(r, turn float64) vec {
		s, cos := math.Sincos(2 * math.Pi * turn)
		return x.Mul(r * cos).Add(y.Mul(r * s))
	}
	round := 2 * math.Pi * c.Radius
	list = append(list, square(func(a, b float64) vec { return c.From.Add(axis.Mul(length * b)).Add(out(c.Radius, a)) }, round, length))
	for _, end := range []vec{c.From, c.To} {
		list = append(list, square(func(a, b float64) vec { return end.Add(out(c.Radius*b, a)) }, round, c.Radius))
	}
	return list
}

// least is the least of f over patches, no more than the tolerance too large; f
// must change no faster than the place.
func least(list []patch, f func(vec) float64, tolerance float64) float64 {
	best := math.Inf(1)
	var look func(p patch)
	look = func(p patch) {
		d := f(p.middle)
		best = min(best, d)
		if d-p.size >= best-tolerance {
			return
		}
		for _, half := range p.halves() {
			look(half)
		}
	}
	for _, p := range list {
		look(p)
	}
	return best
}

// apart is the distance of two solids, 0 when they overlap.
func apart(a, b clear.Shape) float64 {
	patches, dress := surface(a)
	d := least(patches, func(p vec) float64 { return away(p, b) }, sure) - dress
	if away(inside(b), a) == 0 {
		return 0
	}
	return max(0, d)
}

// inside is a place in a shape.
func inside(s clear.Shape) vec {
	if arc, ok := s.(clear.Arc); ok {
		return arcAt(arc, arc.Turn/2)
	}
	return middle(s)
}

// bare is a shape without its rounding.
func bare(s clear.Shape) (core clear.Shape, dress float64) {
	switch s := s.(type) {
	case clear.Rod:
		return clear.Rod{From: s.From, To: s.To}, s.Radius
	case clear.Arc:
		dress, s.Radius = s.Radius, 0
		return s, dress
	}
	return s, 0
}

// deep is how deep two overlapping shapes are in each other: the length of the
// least shift that parts them.
func deep(a, b clear.Shape) float64 {
	if curved(a, b) {
		return leastShift(a, b)
	}
	return leastDirection(a, b)
}

// extent is how far a convex shape reaches in a unit direction.
func extent(s clear.Shape, u vec) float64 {
	switch s := s.(type) {
	case clear.Rod:
		return max(s.From.Dot(u), s.To.Dot(u)) + s.Radius
	case clear.Box:
		sum := s.Centre.Dot(u)
		for i := range 3 {
			sum += s.Half[i] * math.Abs(s.Axes.Col(i).Dot(u))
		}
		return sum
	}
	c := s.(clear.Cylinder)
	axis := c.To.Sub(c.From).Normalize()
	return max(c.From.Dot(u), c.To.Dot(u)) + c.Radius*axis.Cross(u).Len()
}

// leastDirection tries all directions, cut into ever smaller squares of
// latitude and longitude: how far the first must go along one to be wholly past
// the second changes with the angle no faster than the reach of the two from
// each other.
func leastDirection(a, b clear.Shape) float64 {
	alo, ahi := a.Bounds()
	blo, bhi := b.Bounds()
	reach := middle(a).Sub(middle(b)).Len() + (ahi.Sub(alo).Len()+bhi.Sub(blo).Len())/2
	best := math.Inf(1)
	var look func(lat, long, h, w float64)
	look = func(lat, long, h, w float64) {
		s, c := math.Sincos(lat)
		sl, cl := math.Sincos(long)
		u := vec{c * cl, c * sl, s}
		need := extent(b, u) + extent(a, u.Mul(-1))
		best = min(best, need)
		if need-reach*math.Hypot(h, w*min(1, c+h)) >= best-sure {
			return
		}
		if h > w*c {
			look(lat-h/2, long, h/2, w)
			look(lat+h/2, long, h/2, w)
			return
		}
		look(lat, long-w/2, h, w/2)
		look(lat, long+w/2, h, w/2)
	}
	look(0, 0, math.Pi/2, math.Pi)
	return best
}

// A cube holds shifts: all within half of its middle along each axis.
type cube struct {
	middle vec
	half   float64
	low    float64 // no shift in it is shorter
}

type cubes []cube

func (c cubes) Len() int           { return len(c) }
func (c cubes) Less(i, j int) bool { return c[i].low < c[j].low }
func (c cubes) Swap(i, j int)      { c[i], c[j] = c[j], c[i] }
func (c *cubes) Push(x any)        { *c = append(*c, x.(cube)) }
func (c *cubes) Pop() any {
	last := (*c)[len(*c)-1]
	*c = (*c)[:len(*c)-1]
	return last
}

func newCube(middle vec, half float64) cube {
	var near vec
	for i, x := range middle {
		near[i] = max(0, math.Abs(x)-half)
	}
	return cube{middle, half, near.Len()}
}

// leastShift tries all shifts, the shortest first, in ever smaller cubes: a
// shift after which the cores are nearer than the radii by some millimetres
// leaves an overlap after every other shift within those millimetres.
func leastShift(a, b clear.Shape) float64 {
	coreA, ra := bare(a)
	coreB, rb := bare(b)
	if !curved(coreA) {
		coreA, coreB = coreB, coreA
	}
	line, _ := surface(coreA)
	all := &cubes{newCube(vec{}, 32)}
	best := math.Inf(1)
	for all.Len() > 0 {
		c := heap.Pop(all).(cube)
		if c.low >= best-sureShift {
			return best
		}
		lack := ra + rb - least(line, func(p vec) float64 { return away(p.Add(c.middle), coreB) }, sure/20)
		if lack <= 0 {
			best = min(best, c.middle.Len()+lack)
		}
		if lack > c.half*math.Sqrt(3) {
			continue
		}
		for n := range 8 {
			h := c.half / 2
			to := c.middle.Add(vec{h * float64(n&1*2-1), h * float64(n>>1&1*2-1), h * float64(n>>2&1*2-1)})
			heap.Push(all, newCube(to, h))
		}
	}
	return best
}

// bySampling is the signed distance by brute force alone.
func bySampling(a, b clear.Shape) float64 {
	if d := apart(a, b); d > sure {
		return d
	}
	return -deep(a, b)
}

func pairsTried(t *testing.T, arc bool) uint64 {
	if s := os.Getenv("TUBEWRIGHT_PAIRS"); s != "" {
		n, err := strconv.ParseUint(s, 10, 32)
		if err != nil {
			t.Fatalf("TUBEWRIGHT_PAIRS: %v", err)
		}
		return n
	}
	if arc {
		return brutePairsArc
	}
	return brutePairs
}

// Signed distances against brute force, every other pair drawn together so that
// most of those overlap.
func TestBetweenAgreesWithBruteForce(t *testing.T) {
	for i, first := range kinds {
		for _, second := range kinds[i:] {
			t.Run(first+"-"+second, func(t *testing.T) {
				n, met, worst := pairsTried(t, second == "arc"), 0, 0.0
				for seed := range n {
					a, b := randomPair(seed, first, second)
					if seed%2 == 1 {
						b = clear.Moved(b, middle(a).Sub(middle(b)).Mul(0.7))
					}
					got, want := clear.Between(a, b).Distance, bySampling(a, b)
					if got >= 0 && (clear.Farther(a, b, want+agreed) || want > agreed && !clear.Farther(a, b, want-agreed)) {
						t.Fatalf("seed %d: Farther does not know of %v, by brute force: %#v and %#v", seed, want, a, b)
					}
					if got < 0 && clear.Farther(a, b, agreed) {
						t.Fatalf("seed %d: Farther does not know of an overlap of %v: %#v and %#v", seed, -want, a, b)
					}
					if got < 0 {
						met++
					}
					if worst = max(worst, math.Abs(got-want)); math.Abs(got-want) > agreed {
						t.Fatalf("seed %d: Between = %v, by brute force %v: %#v and %#v", seed, got, want, a, b)
					}
				}
				if met < int(n)/5 {
					t.Errorf("only %d of %d pairs overlapped", met, n)
				}
				t.Logf("%d pairs, %d overlapping, at most %.4f mm apart", n, met, worst)
			})
		}
	}
}
