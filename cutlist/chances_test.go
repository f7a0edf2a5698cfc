package cutlist_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"tubewright/bends/budget"
	"tubewright/cutlist"
	"tubewright/route"
)

// The hand of these plans makes a bent tube seat with a chance that the budget
// says; losses are worked by hand from it.
func TestSparesByChance(t *testing.T) {
	for _, tt := range []struct {
		name   string
		spares route.Spares
		build  int
	}{
		{"nine in ten", route.Spares{Chance: 90}, 1},
		{"ninety-nine", route.Spares{Chance: 99}, 1},
		{"counts and a chance", route.Spares{Straight: 1, Chance: 50}, 1},
		{"more machines", route.Spares{Chance: 95}, 3},
	} {
		t.Run(tt.name, func(t *testing.T) {
			b := newBench()
			b.plan.Spares, b.plan.Build = tt.spares, tt.build
			b.add(t, "one", 300, true)
			b.add(t, "two", 400, true)
			b.add(t, "low", 200, false)
			l := b.list(t)
			if len(l.Spares) != 1 {
				t.Fatalf("spares %+v; want those of one kind", l.Spares)
			}
			s := l.Spares[0]
			tubes := 3 * tt.build
			if cut := sparesCut(l); cut != s.Bent+s.Straight || s.Straight < tt.spares.Straight || cut > max(3*tubes, tt.spares.Straight) {
				t.Errorf("%d spares cut of %+v", cut, s)
			}
			if tried := triedOut(l, s, tt.build); math.Abs(tried-s.Chance) > 0.015 {
				t.Errorf("%s: trying it out, all get done in %.3f", s.Why, tried)
			}
			if 100*s.Chance < tt.spares.Chance && s.Bent+s.Straight < 3*tubes {
				t.Errorf("%+v is not the %g in 100 asked", s, tt.spares.Chance)
			}
			if fewer := s.Bent + s.Straight - 1; fewer >= tt.spares.Straight && s.Bent > 0 {
				less := s
				less.Bent--
				if tried := triedOut(l, less, tt.build); 100*tried > tt.spares.Chance+1.5 {
					t.Errorf("one spare less already makes %.3f", tried)
				}
			}
		})
	}
}

func sparesCut(l cutlist.List) (n int) {
	for _, b := range l.Bars {
		for _, p := range b.Pieces {
			if p.Spare {
				n++
			}
		}
	}
	return n
}

// triedOut makes all tubes many times, a blank at a time.
func triedOut(l cutlist.List, s cutlist.Spare, build int) float64 {
	const jobs = 20_000
	r := rand.New(rand.NewPCG(1, 2))
	good := 0
	for range jobs {
		bent, straight := s.Bent, s.Straight
		for _, t := range l.Tubes {
			left := &bent
			if len(t.Way.Formed.Bends) == 0 {
				left = &straight
			}
			for range build {
				for r.Float64() > t.Budget.Chance {
					*left--
				}
			}
		}
		if bent >= 0 && straight >= 0 {
			good++
		}
	}
	return float64(good) / jobs
}

func TestSparesSayWhy(t *testing.T) {
	b := newBench()
	b.plan.Spares = route.Spares{Chance: 99.9}
	b.plan.Errors = route.Errors{Turn: 4}
	b.add(t, "one", 300, true)
	l := b.list(t)
	if len(l.Spares) != 1 || l.Spares[0].Bent != 3 || !strings.HasPrefix(l.Spares[0].Why, "3 spares: 1 tube at ") || !strings.Contains(l.Spares[0].Why, "no more is sawn than 3 for each tube") {
		t.Errorf("spares %+v", l.Spares)
	}
	b.plan.Spares = route.Spares{Bent: 2}
	if l := b.list(t); len(l.Spares) != 0 || sparesCut(l) != 2 {
		t.Errorf("two bent spares asked for: %+v, %d cut", l.Spares, sparesCut(l))
	}
}

// Each tube of a list carries its budget, and the answer writes it.
func TestListCarriesBudgets(t *testing.T) {
	b := newBench()
	b.add(t, "one", 300, true)
	l := b.list(t)
	want := l.Tubes[0].Way.Budget(b.plan.Errors)
	if got := l.Tubes[0].Budget; got.Chance != want.Chance || len(got.Largest) != 2 || got.AsBent != want.AsBent {
		t.Errorf("budget %+v, want %+v", got, want)
	}
	if (budget.Budget{}).Chance == want.Chance {
		t.Error("the chance is 0")
	}
	text, err := l.JSON()
	for _, key := range []string{`"budget": {`, `"sideways"`, `"eased"`, `"chance_if_halved"`, want.Largest[0].What} {
		if err != nil || !strings.Contains(string(text), key) {
			t.Errorf("the answer lacks %s (%v)", key, err)
		}
	}
}
