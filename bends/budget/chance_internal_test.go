package budget

import (
	"math"
	"math/rand/v2"
	"testing"
)

// randomLimits is an easing of random rows and a random covariance in k
// dimensions.
func randomLimits(r *rand.Rand, k int) (easing, square) {
	var e easing
	var cov square
	for i := range e.rows {
		for c := range components {
			e.rows[i][c] = r.NormFloat64() * 0.3
		}
		e.unit[i] = 1
	}
	for i := range discs {
		e.mean[i] = r.NormFloat64() * 0.15
	}
	for range k {
		var m miss
		for c := range m {
			m[c] = r.NormFloat64()
		}
		cov.add(m)
	}
	return e, cov
}

// The few lines are held against many and against drawing.
func TestFewLinesAreEnough(t *testing.T) {
	for k := 1; k <= components; k++ {
		many := spread(k, 100*lines[k])
		worst, off := 0.0, 0.0
		for seed := range uint64(20) {
			r := rand.New(rand.NewPCG(seed, uint64(k)))
			e, cov := randomLimits(r, k)
			g, n := e.reduced(&cov)
			if n > k || n == 0 {
				t.Fatalf("seed %d: %d dimensions for %d", seed, n, k)
			}
			if n < k {
				continue // one of them hardly matters
			}
			few, fine := e.chance(&cov), e.over(&g, k, many)
			worst = max(worst, math.Abs(few-fine))
			off = max(off, math.Abs(fine-e.tried(r, &cov, 5_000)))
		}
		t.Logf("%d dimensions: few lines within %.4f of many, many within %.4f of 5,000 draws", k, worst, off)
		if worst > 0.01 || off > 0.025 {
			t.Errorf("%d dimensions: few lines are %.4f off many, many %.4f off draws; want at most 0.01 and 0.025", k, worst, off)
		}
	}
}

// tried draws misses and counts those within all limits.
func (e *easing) tried(r *rand.Rand, cov *square, draws int) float64 {
	l := factor(cov)
	good := 0
	for range draws {
		var z, m miss
		for c := range z {
			z[c] = r.NormFloat64()
		}
		for i := range m {
			for c := range z {
				m[i] += l[i][c] * z[c]
			}
		}
		if e.keeps(m) {
			good++
		}
	}
	return float64(good) / float64(draws)
}

func (e *easing) keeps(m miss) bool {
	at := e.mean
	for r := range at {
		for c := range m {
			at[r] += e.rows[r][c] * m[c]
		}
	}
	for r := 0; r < discs; r += 2 {
		if math.Hypot(at[r], at[r+1]) > 1 {
			return false
		}
	}
	return at[wants] <= 1 && at[wants+1] <= 1
}

// Two or more sources that share a direction make a covariance without full
// rank: its factor still gives it back.
func TestFactorOfAnyRank(t *testing.T) {
	for seed := range uint64(50) {
		r := rand.New(rand.NewPCG(seed, 7))
		_, cov := randomLimits(r, int(seed)%6)
		l := factor(&cov)
		for i := range cov {
			for j := range cov {
				sum := 0.0
				for k := range l {
					sum += l[i][k] * l[j][k]
				}
				if math.Abs(sum-cov[i][j]) > 1e-6*(1+cov[i][i]+cov[j][j]) {
					t.Errorf("seed %d: factor gives %v at %d, %d; want %v", seed, sum, i, j, cov[i][j])
				}
			}
		}
	}
}

// The chi distribution at values printed in tables of chi squared.
func TestWithin(t *testing.T) {
	for _, tt := range []struct {
		k           int
		chi2, below float64
	}{
		// Abramowitz and Stegun, table 26.8: percentage points of chi squared.
		{1, 3.84146, 0.95},
		{2, 5.99147, 0.95},
		{3, 7.81473, 0.95},
		{4, 9.48773, 0.95},
		{5, 11.0705, 0.95},
		{3, 2.36597, 0.5},
		{5, 4.35146, 0.5},
	} {
		if got := within(tt.k, math.Sqrt(tt.chi2)); math.Abs(got-tt.below) > 1e-5 {
			t.Errorf("within(%d, √%g) = %.6f, want %g", tt.k, tt.chi2, got, tt.below)
		}
		if within(tt.k, math.Inf(1)) != 1 || within(tt.k, 0) != 0 {
			t.Errorf("%d dimensions: not 0 at nothing and 1 everywhere", tt.k)
		}
	}
}
