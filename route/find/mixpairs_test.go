package find

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"
)

// TestCheapestPairsIsASort: what is kept of many pairs, many of them equal, is the
// front of a stable sort of all.
func TestCheapestPairsIsASort(t *testing.T) {
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 21))
		best := cheapestPairs{most: 1 + r.IntN(12)}
		all := make([]rankedPair, r.IntN(60))
		for n := range all {
			all[n] = rankedPair{int64(r.IntN(9)), n, chainPair{start: &build{rank: n}}}
			if best.wants(all[n].key) {
				best.add(all[n].pair, all[n].key)
			}
		}
		slices.SortStableFunc(all, func(a, b rankedPair) int { return cmp.Compare(a.key, b.key) })
		got := best.inOrder()
		if len(got) != min(len(all), best.most) {
			t.Fatalf("seed %d: %d pairs kept", seed, len(got))
		}
		for n, p := range got {
			if p != all[n].pair {
				t.Errorf("seed %d: place %d holds pair %d, want %d", seed, n, p.start.rank, all[n].pair.start.rank)
			}
		}
	}
}
