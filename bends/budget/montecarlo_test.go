package budget_test

import (
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"tubewright/bends/budget"
)

// amount is how much the check against drawing does: a few tubes in every test,
// 300 bent ones and 50 straight with as many draws each as TUBEWRIGHT_DRAWS asks for.
func amount(t *testing.T) (tubes, draws, pieces int, within, points float64) {
	t.Helper()
	asked := os.Getenv("TUBEWRIGHT_DRAWS")
	if asked == "" {
		return 14, 20_000, 1_500, 0.06, 0.045
	}
	n, err := strconv.Atoi(asked)
	if err != nil || n < 10 {
		t.Fatalf("TUBEWRIGHT_DRAWS=%q: want a number of draws, at least 10", asked)
	}
	return 350, n, n / 10, 0.05, 0.03
}

// Standard deviations and chances are held against pieces formed wrong on
// purpose, through the exact chain.
func TestBudgetAgainstDraws(t *testing.T) {
	tubes, draws, pieces, within, points := amount(t)
	worst, far := 0.0, 0.0
	for seed := range uint64(tubes) {
		r := rand.New(rand.NewPCG(seed, 5))
		j := randomJob(r, int(seed+1)%7) // 0: straight
		b := budget.Of(j)
		got, chance := drawnMany(j, r, draws, pieces)
		for _, c := range []struct {
			what     string
			got, sds float64
		}{
			{"aside in the plane", b.AsBent.Sideways[0], got[0]},
			{"aside out of it", b.AsBent.Sideways[1], got[1]},
			{"askew in the plane", b.AsBent.Degrees[0], got[2] / degree},
			{"askew out of it", b.AsBent.Degrees[1], got[3] / degree},
			{"length", b.AsBent.Length, got[4]},
		} {
			off := c.got/c.sds - 1
			worst = max(worst, math.Abs(off))
			if math.Abs(off) > within {
				t.Errorf("seed %d, %d bends: %s %.4f, %d draws %.4f: %.1f %% off", seed, len(j.Tube.Bends), c.what, c.got, draws, c.sds, 100*off)
			}
		}
		far = max(far, math.Abs(b.Chance-chance))
		if math.Abs(b.Chance-chance) > points {
			t.Errorf("seed %d, %d bends: chance %.3f, %d pieces %.3f", seed, len(j.Tube.Bends), b.Chance, pieces, chance)
		}
	}
	t.Logf("%d tubes, %d draws: standard deviations within %.1f %%, chances of %d pieces within %.1f points", tubes, draws, 100*worst, pieces, 100*far)
}

// drawnMany gives the standard deviations of the miss as bent about 0, and the
// part of the pieces that seat.
func drawnMany(j budget.Job, r *rand.Rand, draws, pieces int) (sd [5]float64, chance float64) {
	near, far := planned(j)
	var sum, squares [5]float64
	good := 0
	for n := range draws {
		d := drawn(j, r, near, far)
		for k, v := range d.asBent() {
			sum[k] += v
			squares[k] += v * v
		}
		if n < pieces && seats(j, d, r) {
			good++
		}
	}
	for k := range sd {
		mean := sum[k] / float64(draws)
		sd[k] = math.Sqrt(squares[k]/float64(draws) - mean*mean)
	}
	return sd, float64(good) / float64(pieces)
}
