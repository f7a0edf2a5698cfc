package find

import (
	"math/rand/v2"
	"testing"

	"tubewright/bends"
)

// slidTube is a tube laid by chance: legs along the axes and half-way between, two
// or three bends that formers mark; its corners and the way it ends in.
func slidTube(r *rand.Rand, t bends.Tube) (corners []vec, first, last vec) {
	all := evenWays(worldAxes())
	for {
		ways := []vec{all[r.IntN(len(all))]}
		for range 2 + r.IntN(2) {
			ways = append(ways, all[r.IntN(len(all))])
		}
		corners = []vec{{500, 500, 500}}
		need, back, fits := t.StraightEnd, 0.0, true
		for i, w := range ways {
			set := 0.0
			if i+1 < len(ways) {
				turn := standardTurn(w, ways[i+1])
				fits, set = fits && turn > 0, bends.Setback(t.Radius, turn)
			} else {
				need = t.StraightEnd
			}
			corners = append(corners, corners[i].Add(w.Mul(need+back+set+60*r.Float64())))
			need, back = t.StraightBetween, set
		}
		if fits {
			return corners, ways[0], ways[len(ways)-1]
		}
	}
}

// TestSlidingBendsFindWhatIsThere: between the ends of any tube of such legs a tube of
// such legs is found that costs no more, unless the legs have no freedom, or two.
func TestSlidingBendsFindWhatIsThere(t *testing.T) {
	const seed = 20
	r := rand.New(rand.NewPCG(seed, 1))
	tried := 0
	for range 400 {
		tube, fittings := kit()
		corners, first, last := slidTube(r, tube.Tube)
		stop, n := fittings[0].Stop, len(corners)-1
		plan := between(corners[0].Sub(first.Mul(stop)), first, corners[n].Add(last.Mul(stop)), last.Mul(-1))
		h, err := newScene(plan).newHunt(plan.Runs[0], request{below: anyCost})
		if err != nil {
			t.Fatal(err)
		}
		h.starts, h.ends = h.chains()
		built, ok := h.drawUp(h.starts[0], h.ends[0], corners[1:n])
		if !ok || !h.stands(&built) || !oneFreedom(corners) {
			continue
		}
		tried++
		ways := h.slidingBends()
		if len(ways) == 0 {
			t.Errorf("seed %d: nothing found where a tube by %v stands", seed, corners)
			continue
		}
		w := ways[0]
		if cost := w.Cost - h.missCost(&w); cost > built.cost+rounding {
			t.Errorf("seed %d: found one that costs %.3f by %v, there is one of %.3f by %v", seed, cost, w.Formed.Corners, built.cost, corners)
		}
		for _, b := range w.Formed.Bends {
			if !isTurn(b.Turn, 45) && !isTurn(b.Turn, 90) {
				t.Errorf("seed %d: a bend of %g degrees", seed, b.Turn)
			}
		}
	}
	if tried < 100 {
		t.Errorf("only %d tubes tried", tried)
	}
}

// oneFreedom reports whether the ways of a path's legs span one dimension less than
// there are legs.
func oneFreedom(corners []vec) bool {
	var ways []vec
	for i := range corners[1:] {
		ways = append(ways, corners[i+1].Sub(corners[i]))
	}
	flat := true // all in one plane
	for i := range ways {
		for j := range ways {
			for k := range ways {
				flat = flat && abs64(ways[i].Cross(ways[j]).Dot(ways[k])) < rounding
			}
		}
	}
	return len(ways) == 3 && flat || len(ways) == 4 && !flat
}

func abs64(x float64) float64 { return max(x, -x) }

// TestFreedom: the lengths solved for lead from end to end whatever the freedom's
// value, and from a known set of lengths back to it.
func TestFreedom(t *testing.T) {
	const seed = 21
	r := rand.New(rand.NewPCG(seed, 1))
	all := evenWays(worldAxes())
	solvedFor := 0
	for range 2000 {
		ways := make([]vec, 3+r.IntN(2))
		known, w := make([]float64, len(ways)), vec{}
		for i := range ways {
			ways[i], known[i] = all[r.IntN(len(all))], 10+90*r.Float64()
			w = w.Add(ways[i].Mul(known[i]))
		}
		from, by, ok := freedom(ways, w)
		if !ok {
			continue
		}
		solvedFor++
		for _, value := range []float64{0, 1, -37} {
			rest := w
			for i := range ways {
				rest = rest.Sub(ways[i].Mul(from[i] + value*by[i]))
			}
			if rest.Len() > rounding {
				t.Fatalf("seed %d: %v with freedom %g ends %g mm off", seed, ways, value, rest.Len())
			}
		}
		for i := range ways {
			if by[i] == 1 { // the free one, or one that goes with it
				for j := range ways {
					if d := from[j] + known[i]*by[j] - known[j]; from[i] == 0 && abs64(d) > rounding {
						t.Fatalf("seed %d: %v: leg %d is %g off its known length", seed, ways, j, d)
					}
				}
			}
		}
	}
	if solvedFor < 300 {
		t.Errorf("only %d solved", solvedFor)
	}
}
