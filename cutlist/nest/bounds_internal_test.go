package nest

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// Quick bounds never pass what is possible, and the dual-feasible functions are
// no worse than the material alone.
func TestBoundsHold(t *testing.T) {
	for seed := range uint64(200) {
		rnd := rand.New(rand.NewPCG(seed, 2))
		j := Job{Stock: []Bar{{Length: 100}}, Kerf: rnd.IntN(3)}
		for range 1 + rnd.IntN(14) {
			j.Pieces = append(j.Pieces, Piece{10 + rnd.IntN(80), 1})
		}
		task := newTask(j)
		material, functions, best := task.barsBy(task.clearOut(0)), ceilDiv(task.functionDuals().bound(newSearch(task, nil).start().rest), task.bars[0].cost), solved(t, j).Bars
		if functions < material || functions > best {
			t.Errorf("seed %d: %+v: material %d, functions %d, best %d", seed, j, material, functions, best)
		}
		if l := linear(j, false); l > float64(best)+1e-6 {
			t.Errorf("seed %d: %+v: relaxation %v, best %d", seed, j, l, best)
		}
	}
}

// Both ways to fill a bar find what trying every load finds, and what they
// prove of all loads holds.
func TestKnapsackAgainstTryingAll(t *testing.T) {
	for seed := range uint64(300) {
		rnd := rand.New(rand.NewPCG(seed, 3))
		var task task
		var want, values []int
		for range 1 + rnd.IntN(6) {
			task.sizes = append(task.sizes, 3+rnd.IntN(30))
			want, values = append(want, rnd.IntN(4)), append(values, rnd.IntN(50))
		}
		size := rnd.IntN(100)
		best := fillByTrying(task.sizes, want, values, size)
		k := newKnapsack(task, want, values, newMeter(context.Background(), Options{}), &table{})
		for name, f := range map[string]filling{"depth": k.byDepth(size, 0, 1_000_000, noPlan), "table": k.byTable(size, 0)} {
			value, room := 0, size
			if len(f.finds) > 0 {
				for i, n := range f.finds[len(f.finds)-1] {
					value += n * k.items[i].value
					room -= n * k.items[i].size
				}
			}
			if value != best || room < 0 || !f.exact || f.most != best {
				t.Errorf("seed %d, %s: sizes %v, want %v, values %v, bar %d: value %d, most %d, best %d",
					seed, name, task.sizes, want, values, size, value, f.most, best)
			}
		}
	}
}

func fillByTrying(sizes, want, values []int, room int) int {
	if len(sizes) == 0 {
		return 0
	}
	best := 0
	for n := 0; n <= want[0] && n*sizes[0] <= room; n++ {
		best = max(best, n*values[0]+fillByTrying(sizes[1:], want[1:], values[1:], room-n*sizes[0]))
	}
	return best
}

// The ladder of costs lets no plan's cost pass and has no rung that no plan has.
func TestLadder(t *testing.T) {
	j := Job{
		Pieces: []Piece{{300, 4}, {100, 3}}, Stock: []Bar{{Length: 500, Price: 740}, {Length: 1000, Price: 1290}},
		Offcuts: []Bar{{Length: 310, Most: 2}},
	}
	task := newTask(j)
	l := newLadder(task, 10*task.bars[2].cost)
	tests := []struct {
		price, want int
		source      string
	}{
		{0, 1290, "1500 less two offcuts of 310 wants 900 of stock, counted in the pieces' unit of 100"},
		{1290, 1290, "one long bar"},
		{1291, 1480, "two short ones"},
		{1481, 2030, "one of each"},
		{2031, 2220, "three short ones"},
	}
	for _, tt := range tests {
		if got := l.up(tt.price*task.scale) / task.scale; got != tt.want {
			t.Errorf("from %d up: %d, want %d (%s)", tt.price, got, tt.want, tt.source)
		}
	}
	if got := l.up(1290*task.scale + 3); got != 1290*task.scale+3 {
		t.Errorf("three bars at 1290 become %d", got-1290*task.scale)
	}
}

func TestMulDiv(t *testing.T) {
	// 7·494109216260077275 = 3·2^60 − 3
	if got := mulDiv(1<<60, 3, 7, false); got != 494109216260077275 {
		t.Errorf("2^60·3/7 = %d", got)
	}
	if got := mulDiv(1<<60, 3, 7, true); got != 494109216260077276 {
		t.Errorf("2^60·3/7 rounded up = %d", got)
	}
	if !mulLess(1<<61, 8, 1<<62, 5) || mulLess(1<<61, 8, 1<<62, 4) {
		t.Error("2^64 is less than 5·2^62 and not less than 2^64")
	}
}

// A singular basis leaves the program as it was; a regular one is made afresh
// without moving the solution.
func TestRemake(t *testing.T) {
	j := Job{Pieces: []Piece{{45, 97}, {36, 610}, {31, 395}, {14, 211}}, Stock: []Bar{{Length: 100}}}
	task := newTask(j)
	g := newSearch(task, newMeter(context.Background(), Options{})).newTree()
	g.optimise()
	before := slices.Clone(g.lp.value)
	g.lp.remake()
	for i, v := range g.lp.value {
		if math.Abs(v-before[i]) > 1e-6 {
			t.Errorf("value %d moves from %v to %v", i, before[i], v)
		}
	}
	g.lp.basis[0] = g.lp.basis[1]
	inverse := slices.Clone(g.lp.inverse)
	g.lp.remake()
	if !slices.Equal(inverse, g.lp.inverse) {
		t.Error("a singular basis was taken")
	}
}
