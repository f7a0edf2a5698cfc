package find_test

import (
	"context"
	"math/rand/v2"
	"testing"

	"tubewright/route/find"
)

// BenchmarkStraights solves ten port pairs with straights: ours, all else that a
// solve does included, and every chain at every roll.
func BenchmarkStraights(b *testing.B) {
	var all []*joint
	for seed := range uint64(10) {
		all = append(all, anyJoint(rand.New(rand.NewPCG(seed, 17))))
	}
	b.Run("ours", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			for _, j := range all {
				if _, err := find.Solve(context.Background(), j.plan); err != nil {
					b.Fatal(err)
				}
			}
		}
	})
	b.Run("every_chain", func(b *testing.B) {
		for b.Loop() {
			for _, j := range all {
				j.aims = map[string][][]float64{}
				j.search()
			}
		}
	})
}
