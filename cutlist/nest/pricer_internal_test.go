package nest

import (
	"math/rand/v2"
	"testing"
)

func randomWares(rnd *rand.Rand, size int) []ware {
	var goods []ware
	at := size
	for i := range 1 + rnd.IntN(8) {
		at = max(1, at-rnd.IntN(size/6))
		goods = append(goods, ware{kind: int32(i), size: at, value: rnd.IntN(55) - 5, most: 1 + rnd.IntN(3)})
	}
	for range rnd.IntN(4) {
		if a, b := rnd.IntN(len(goods)), rnd.IntN(len(goods)); a != b {
			goods[a].apart, goods[b].apart = append(goods[a].apart, int32(b)), append(goods[b].apart, int32(a))
		}
	}
	return goods
}

// tryLoads gives the most that a load is worth that leaves no more than waste, by
// trying all; below 0: there is none.
func tryLoads(goods []ware, counts []int, room, waste, value int) int {
	i := len(counts)
	if i == len(goods) {
		if room > waste || forbidden(goods, counts) {
			return nowhere
		}
		return value
	}
	best := nowhere
	for n := 0; n <= goods[i].most && n*goods[i].size <= room; n++ {
		best = max(best, tryLoads(goods, append(counts, n), room-n*goods[i].size, waste, value+n*goods[i].value))
	}
	return best
}

func forbidden(goods []ware, counts []int) bool {
	for a, g := range goods {
		for _, b := range g.apart {
			if counts[a] > 0 && counts[b] > 0 {
				return true
			}
		}
	}
	return false
}

// What the pricer says no load is worth more than is what trying all finds, or
// the limit below which it need not look; on a grid as with a place for each
// unit of length.
func TestPricerAgainstTryingAll(t *testing.T) {
	for seed := range uint64(3000) {
		rnd := rand.New(rand.NewPCG(seed, 3))
		size := 20 + rnd.IntN(100) + 40_000*int(seed%2)
		waste := size
		if seed%3 > 0 {
			waste = rnd.IntN(size / 4)
		}
		p := &pricer{meter: &meter{}, goods: randomWares(rnd, size)}
		over := rnd.IntN(60)
		want := max(over, tryLoads(p.goods, nil, size, waste, 0))
		p.set(size, waste)
		best := over
		got := p.loads(size, over, 100, 1_000_000, func(value int) { best = max(best, value) })
		if got != want || best != want {
			t.Fatalf("seed %d: size %d, waste %d, over %d, %+v: no load above %d, best found %d; want %d", seed, size, waste, over, p.goods, got, best, want)
		}
	}
}
