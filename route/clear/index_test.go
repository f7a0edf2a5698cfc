package clear_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"tubewright/route/clear"
)

func crowd(seed uint64, n int) []clear.Shape {
	r := rand.New(rand.NewPCG(seed, 0))
	list := make([]clear.Shape, n)
	for i := range list {
		list[i] = clear.Moved(randomShape(r, kinds[i%len(kinds)]), randomVec(r, 60))
	}
	return list
}

// meeting lists the shapes whose bounding boxes meet a box, one by one.
func meeting(shapes []clear.Shape, lo, hi vec) (list []int) {
	for i, s := range shapes {
		a, b := s.Bounds()
		meets := true
		for k := range 3 {
			meets = meets && a[k] <= hi[k] && lo[k] <= b[k]
		}
		if meets {
			list = append(list, i)
		}
	}
	return list
}

func near(x *clear.Index, lo, hi vec) (list []int) {
	x.Near(lo, hi, func(i int) bool {
		list = append(list, i)
		return true
	})
	return list
}

func TestNearFindsEveryShapeAndNoOther(t *testing.T) {
	for seed := range uint64(50) {
		shapes := crowd(seed, int(seed)*7)
		x := clear.NewIndex(shapes)
		r := rand.New(rand.NewPCG(seed, 1))
		for range 40 {
			lo := randomVec(r, 70)
			hi := lo.Add(vec{r.Float64() * 40, r.Float64() * 40, r.Float64() * 40})
			got := near(x, lo, hi)
			if again := near(x, lo, hi); !slices.Equal(got, again) {
				t.Fatalf("seed %d: the order changed from %v to %v", seed, got, again)
			}
			slices.Sort(got)
			if want := meeting(shapes, lo, hi); !slices.Equal(got, want) {
				t.Fatalf("seed %d: Near(%v, %v) visits %v, want %v", seed, lo, hi, got, want)
			}
		}
	}
}

func TestNearStopsWhenToldTo(t *testing.T) {
	x := clear.NewIndex(crowd(3, 60))
	calls := 0
	all := x.Near(vec{-99, -99, -99}, vec{99, 99, 99}, func(int) bool {
		calls++
		return calls < 5
	})
	if all || calls != 5 {
		t.Errorf("Near visited %d shapes and reported %v, want 5 and false", calls, all)
	}
}

func TestAnEmptyIndexHoldsNothing(t *testing.T) {
	var zero clear.Index
	for _, x := range []*clear.Index{&zero, clear.NewIndex(nil)} {
		if !x.Near(vec{}, vec{}, func(int) bool { t.Error("a shape out of nothing"); return true }) {
			t.Error("Near reported a stop")
		}
	}
}

// The samples of a shape's surface lie in its bounds and reach each face.
func TestBoundsHoldTheShapeTightly(t *testing.T) {
	for _, kind := range kinds {
		for seed := range uint64(40) {
			s := randomShape(rand.New(rand.NewPCG(seed, 9)), kind)
			lo, hi := s.Bounds()
			points, dress := samples(s)
			least, most := points[0], points[0]
			for _, p := range points {
				for i := range p {
					least[i], most[i] = min(least[i], p[i]), max(most[i], p[i])
				}
			}
			for i := range lo {
				if d := least[i] - dress - lo[i]; d < -1e-9 || d > 0.05 {
					t.Errorf("%s seed %d: axis %d starts at %v, bounds at %v", kind, seed, i, least[i]-dress, lo[i])
				}
				if d := hi[i] - most[i] - dress; d < -1e-9 || d > 0.05 {
					t.Errorf("%s seed %d: axis %d ends at %v, bounds at %v", kind, seed, i, most[i]+dress, hi[i])
				}
			}
		}
	}
}

func TestNearDoesNotAllocate(t *testing.T) {
	x, hits := clear.NewIndex(crowd(1, 1000)), 0
	if n := testing.AllocsPerRun(20, func() {
		x.Near(vec{0, 0, 0}, vec{12, 12, 12}, func(int) bool {
			hits++
			return true
		})
	}); n != 0 || hits == 0 {
		t.Errorf("Near allocates %v times and visits %d shapes", n, hits)
	}
}

// The tree against looking at every box, in one run: the same number of shapes
// near, among ever more.
func BenchmarkNear(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10000} {
		shapes := spread(n)
		lo, hi := vec{-6, -6, -6}, vec{6, 6, 6}
		b.Run(fmt.Sprintf("tree/%d", n), func(b *testing.B) {
			x := clear.NewIndex(shapes)
			b.ReportAllocs()
			for b.Loop() {
				x.Near(lo, hi, func(int) bool { return true })
			}
		})
		b.Run(fmt.Sprintf("every/%d", n), func(b *testing.B) {
			los, his := make([]vec, n), make([]vec, n)
			for i, s := range shapes {
				los[i], his[i] = s.Bounds()
			}
			for b.Loop() {
				hits := 0
				for i := range los {
					if los[i][0] <= hi[0] && lo[0] <= his[i][0] && los[i][1] <= hi[1] && lo[1] <= his[i][1] &&
						los[i][2] <= hi[2] && lo[2] <= his[i][2] {
						hits++
					}
				}
				if hits == 0 {
					b.Fatal("nothing near")
				}
			}
		})
		b.Run(fmt.Sprintf("build/%d", n), func(b *testing.B) {
			for b.Loop() {
				clear.NewIndex(shapes)
			}
		})
	}
}

// spread is shapes as close together as 10 in a cube of 24 mm, however many.
func spread(n int) []clear.Shape {
	r := rand.New(rand.NewPCG(4, 0))
	size := 12 * math.Cbrt(float64(n)/10)
	list := make([]clear.Shape, n)
	for i := range list {
		list[i] = clear.Moved(randomShape(r, kinds[i%len(kinds)]), randomVec(r, size))
	}
	return list
}
