package nest_test

import (
	"slices"

	"tubewright/cutlist/nest"
)

// teller is the part of a test that a check needs.
type teller interface {
	Helper()
	Errorf(format string, args ...any)
}

// checkPlan is an independent look at a plan: every piece wanted and not listed
// as uncut is there, every bar holds its pieces with the kerfs between, no
// limit is passed, and what is said of each bar and of all is so.
func checkPlan(t teller, job nest.Job, r nest.Result, uncut []nest.Piece) {
	t.Helper()
	want := map[int]int{}
	for _, p := range job.Pieces {
		want[p.Length] += p.Count
	}
	for _, p := range uncut {
		want[p.Length] -= p.Count
	}
	used := map[[2]int]int{}
	bars, bought, cost := 0, 0, 0
	for _, p := range r.Patterns {
		list, offcut := job.Stock, 0
		if p.Offcut {
			list, offcut = job.Offcuts, 1
		}
		bar := list[p.Bar]
		used[[2]int{offcut, p.Bar}] += p.Count
		checkBar(t, job, p, bar)
		for _, l := range p.Pieces {
			want[l] -= p.Count
		}
		bars += p.Count
		if !p.Offcut {
			bought += p.Count
			cost += p.Count * bar.Price
		}
	}
	if !job.Priced() {
		cost = bought
	}
	if bars != r.Bars || bought != r.Bought || cost != r.Cost {
		t.Errorf("bars %d, bought %d, cost %d; counted %d, %d, %d", r.Bars, r.Bought, r.Cost, bars, bought, cost)
	}
	if r.Bound > r.Cost || r.Proven && r.Bound != r.Cost {
		t.Errorf("bound %d, cost %d, proven %v", r.Bound, r.Cost, r.Proven)
	}
	for l, n := range want {
		if n != 0 {
			t.Errorf("pieces of %d: %d too few (below 0: too many)", l, n)
		}
	}
	for i, b := range job.Stock {
		if n := used[[2]int{0, i}]; b.Most > 0 && n > b.Most {
			t.Errorf("stock %d used %d times, at most %d", i, n, b.Most)
		}
	}
	for i, b := range job.Offcuts {
		if n := used[[2]int{1, i}]; n > max(1, b.Most) {
			t.Errorf("offcut %d used %d times, at most %d", i, n, max(1, b.Most))
		}
	}
}

func checkBar(t teller, job nest.Job, p nest.Pattern, bar nest.Bar) {
	t.Helper()
	if p.Count < 1 || len(p.Pieces) == 0 {
		t.Errorf("empty pattern %+v", p)
	}
	sum := 0
	for _, l := range p.Pieces {
		sum += l
	}
	if sum+(len(p.Pieces)-1)*job.Kerf > bar.Length {
		t.Errorf("pattern %+v does not fit a bar of %d with kerf %d", p, bar.Length, job.Kerf)
	}
	if want := max(0, bar.Length-sum-len(p.Pieces)*job.Kerf); p.Left != want {
		t.Errorf("pattern %+v leaves %d", p, want)
	}
	if !slices.IsSortedFunc(p.Pieces, func(a, b int) int { return b - a }) {
		t.Errorf("pieces of %+v are not longest first", p)
	}
}
