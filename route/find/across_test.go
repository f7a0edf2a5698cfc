package find

import (
	"context"
	"math"
	"testing"
)

// acrossTheOther is the cheapest way of the run "down" of two that cross, when to
// cross the other costs so many mm of tube.
func acrossTheOther(t *testing.T, price float64) (w Way, apart float64) {
	t.Helper()
	plan := crossing()
	plan.Parts[1].At[0], plan.Parts[3].At[0] = 380, 290
	tb := newTable(newScene(plan))
	for _, i := range tb.order {
		if err := tb.list(context.Background(), i); err != nil {
			t.Fatal(err)
		}
	}
	tb.rows[0].chosen = 0 // straight across the case
	a := &across{limbs: tb.rows[0].options[:1], of: []int{0}, price: []int64{costKey(price), 0}, below: math.MaxInt64 / 8}
	ways, spent, err := tb.askAcross(context.Background(), 1, a)
	if err != nil || len(ways) == 0 || spent == 0 {
		t.Fatalf("got %v after %d states: %v", names(ways), spent, err)
	}
	return ways[0], tb.apart(newOption(ways[0]), tb.rows[0].options[0], math.Inf(1))
}

// TestRunsCrossWhenThatIsCheap: "down" goes through "run" with two bends where that
// costs little, and round it where it is dearer than a detour.
func TestRunsCrossWhenThatIsCheap(t *testing.T) {
	near, short := acrossTheOther(t, 1)
	far, apart := acrossTheOther(t, 5000)
	if short <= 0 {
		t.Errorf("at 1 mm %q keeps clear", near.Name)
	}
	if apart > 0 {
		t.Errorf("at 5000 mm %q lacks %.3f mm", far.Name, apart)
	}
	if near.Cost >= far.Cost {
		t.Errorf("through costs %.1f, round %.1f", near.Cost, far.Cost)
	}
}

// TestTollsCountEachEntry: along a line through two runs each is paid once, from
// either side, however the line is cut up.
func TestTollsCountEachEntry(t *testing.T) {
	q := &quest{radius: 32, keep: 20, search: newSearch(), effort: &effort{}}
	q.grid = lattice{{0, 50, 100, 150, 200, 250, 300}, {0, 40}, {0, 40}}
	var rooms []wall
	for _, x := range []float64{90, 110, 220} {
		rooms = append(rooms, boxRoom(v(x, -100, 0), v(x, 100, 0), q.keep))
	}
	q.crossing(&across{price: []int64{7, 100}})
	q.tolls.rooms.walls, q.tolls.of = rooms, []int{0, 0, 1}
	q.search.size = [3]int{7, 2, 2}
	q.openTolls()
	defer q.tolls.close()
	for _, from := range []int{0, 6} {
		for _, step := range []int{1, 2, 3, 6} {
			sum := int64(0)
			for i := from; i >= 0 && i <= 6 && i+way(from)*step >= 0 && i+way(from)*step <= 6; i += way(from) * step {
				sum += q.tollAlong(node{i, 0, 0}, 0, q.grid[0][i], q.grid[0][i+way(from)*step])
			}
			if sum != 107 {
				t.Errorf("from %d in steps of %d: %d, want 107", from, step, sum)
			}
		}
	}
	for _, bend := range []struct {
		at      node
		in, out int
		want    int64
	}{
		{node{2, 0, 0}, 0, 2, 7},       // begins at x = 68, before the room
		{node{3, 0, 0}, 0, 2, 0},       // begins at x = 118, in it: paid for already
		{node{2, 1, 0}, 3, 0, 0},       // begins in it too
		{node{5, 0, 0}, 1, 2, 0},       // begins at x = 282, ends before the other
		{node{4, 1, 0}, 3, 0, 107 - 7}, // begins at y = 72 on the face of the other, and turns into it
	} {
		if toll := q.tollBend(bend.at, bend.in, bend.out); toll != bend.want {
			t.Errorf("a bend at %v from %d to %d costs %d, want %d", bend.at, bend.in, bend.out, toll, bend.want)
		}
	}
}

// way is 1 from the lower end, −1 from the upper.
func way(from int) int {
	if from == 0 {
		return 1
	}
	return -1
}
