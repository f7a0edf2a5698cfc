package find

import (
	"context"
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/graph"
	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"
)

// stepGraph is the quick search's own graph laid out in full for gonum: the same
// states, the same steps, every straight and bend already measured. The start
// and the end are its two last nodes.
type stepGraph struct {
	*simple.WeightedDirectedGraph
	q          *quest
	start, end int64
	states     int
}

func newStepGraph(q *quest) *stepGraph {
	q.search = searches.Get().(*search)
	q.search.bound, q.search.limited = math.MaxInt64, false
	q.prepare()
	q.begin()
	s := q.search
	n := s.size[0] * s.size[1] * s.size[2] * 6
	g := &stepGraph{simple.NewWeightedDirectedGraph(0, math.Inf(1)), q, int64(n), int64(n + 1), n}
	for _, l := range s.labels { // what begin has opened
		g.edge(g.start, int64(l.state), l.cost)
	}
	for state := range n {
		g.steps(int32(state))
	}
	return g
}

func (g *stepGraph) edge(from, to, cost int64) {
	g.SetWeightedEdge(g.NewWeightedEdge(simple.Node(from), simple.Node(to), float64(cost)))
}

// steps lets the search go on from one state alone, and notes what it opens.
func (g *stepGraph) steps(state int32) {
	s := g.q.search
	for i := range s.heads {
		s.heads[i] = head{}
	}
	l := g.label(state)
	s.labels, s.homes = append(s.labels[:0], l), s.homes[:0]
	s.heads[state] = head{l.cost, s.pass, 0}
	g.q.goOn(entry{label: 0})
	for i := range s.labels[1:] {
		g.edge(int64(state), int64(s.labels[i+1].state), s.labels[i+1].cost)
	}
	for _, h := range s.homes {
		g.edge(int64(state), g.end, h.cost)
	}
}

func (g *stepGraph) label(state int32) label {
	size, rest := g.q.search.size, int(state)/6
	n := [3]uint8{uint8(rest / size[2] / size[1]), uint8(rest / size[2] % size[1]), uint8(rest % size[2])}
	return label{state: state, crossing: int32(rest), at: n, heading: uint8(state % 6), next: -1}
}

// estimate is the search's own.
func (g *stepGraph) estimate(x, _ graph.Node) float64 {
	if x.ID() >= g.start {
		return 0
	}
	l := g.label(int32(x.ID()))
	return float64(g.q.least(&l))
}

// cost is the least cost by gonum's A*.
func (g *stepGraph) cost() float64 {
	shortest, _ := path.AStar(simple.Node(g.start), simple.Node(g.end), g, g.estimate)
	return shortest.WeightTo(g.end)
}

// raced is a scene for the race: ports along axes, no via point, boxes only, and
// more lines.
func raced(seed uint64) *quest {
	c := newCrowd(seed)
	c.odd, c.more = false, 14
	c.quest()
	c.q.weigh.Bend = 60
	c.q.squareCost = c.q.bendCost(90)
	c.fill(5 + c.IntN(56))
	c.ports()
	c.lines()
	c.q.via = nil
	return c.q
}

// TestStepsAgainstAStar: gonum's A* over the search's own steps comes to the
// same cost, so the race is over the same thing.
func TestStepsAgainstAStar(t *testing.T) {
	ways := 0
	for seed := range uint64(6) {
		q := raced(seed)
		want := newStepGraph(q).cost()
		got := alone(t, q)
		if len(got) == 0 != math.IsInf(want, 1) || len(got) > 0 && float64(got[0].cost) != want {
			t.Errorf("seed %d: got %v, A* %.0f", seed, got, want)
		}
		ways += len(got)
	}
	if ways == 0 {
		t.Error("no scene has a way: the test says nothing")
	}
}

// BenchmarkSquare races the search against gonum's A* with the same estimate
// over the same states: with its graph built beforehand, and built each time.
func BenchmarkSquare(b *testing.B) {
	const scenes = 10
	var list []*quest
	var graphs []*stepGraph
	for seed := range uint64(scenes) {
		list = append(list, raced(seed))
		graphs = append(graphs, newStepGraph(raced(seed)))
	}
	b.Run("ours", func(b *testing.B) {
		for b.Loop() {
			for _, q := range list {
				alone(b, q)
			}
		}
	})
	b.Run("ours, walls known", func(b *testing.B) {
		for b.Loop() {
			for _, g := range graphs {
				g.q.search.again()
				if _, err := g.q.cheapest(context.Background(), false); err != nil {
					b.Fatal(err)
				}
			}
		}
	})
	b.Run("gonum A star, graph ready", func(b *testing.B) {
		for b.Loop() {
			for _, g := range graphs {
				g.cost()
			}
		}
	})
	b.Run("gonum A star, building its graph", func(b *testing.B) {
		for b.Loop() {
			for seed := range uint64(scenes) {
				newStepGraph(raced(seed)).cost()
			}
		}
	})
}

// TestNoAllocationOnTheWay: a search that has found its working room once takes
// no more memory while it looks.
func TestNoAllocationOnTheWay(t *testing.T) {
	for seed := range uint64(8) {
		q := lattices(seed)
		q.search = newSearch()
		q.search.bound = math.MaxInt64
		states := 0
		look := func() {
			q.prepare()
			q.begin()
			for states = 0; q.search.open.len() > 0; states++ {
				if e := q.search.open.pop(); e.label >= 0 {
					q.goOn(e)
				}
			}
		}
		look()
		if states < 100 {
			continue
		}
		q.prepare()
		q.begin()
		loop := testing.AllocsPerRun(5, look) - testing.AllocsPerRun(5, func() { q.prepare(); q.begin() })
		if loop > 0 {
			t.Errorf("seed %d: %.0f allocations over %d states", seed, loop, states)
		}
	}
}

// growing is a plan-sized quest among n boxes: the same share of the room taken
// up whatever their number.
func growing(n int, seed uint64) *quest {
	c := newCrowd(seed)
	c.odd = false
	c.quest()
	c.q.weigh.Bend = 60
	c.q.squareCost = c.q.bendCost(90)
	c.q.room = room{boxed: true, lo: v(8, 8, 8), hi: v(592, 592, 592)}
	side := 400 * math.Cbrt(0.05/float64(n)) * 1.5
	for range n {
		p := v(c.Float64()*600, c.Float64()*600, c.Float64()*600)
		half := v(0.5+c.Float64(), 0.5+c.Float64(), 0.5+c.Float64()).Mul(side / 2)
		c.q.walls = append(c.q.walls, newWall(worldAxes(), boxAt(p, half), 8))
	}
	c.ports()
	return c.q
}

// BenchmarkGrowth fits how the time of a whole quest, its refinements included,
// grows from 10 to 1,000 boxes.
func BenchmarkGrowth(b *testing.B) {
	var logs, times []float64
	for _, n := range []int{10, 30, 100, 300, 1000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			rounds := 0
			for b.Loop() {
				for seed := range uint64(10) {
					q := growing(n, seed)
					if _, err := q.routes(context.Background(), math.MaxInt64); err != nil {
						b.Fatal(err)
					}
				}
				rounds++
			}
			logs = append(logs, math.Log(float64(n)))
			times = append(times, math.Log(b.Elapsed().Seconds()/float64(rounds)))
			b.ReportMetric(slope(logs, times), "exponent")
		})
	}
}

// slope is that of the straight line that fits best.
func slope(x, y []float64) float64 {
	n := float64(len(x))
	var sx, sy, sxx, sxy float64
	for i := range x {
		sx, sy, sxx, sxy = sx+x[i], sy+y[i], sxx+x[i]*x[i], sxy+x[i]*y[i]
	}
	if d := n*sxx - sx*sx; d > 0 {
		return (n*sxy - sx*sy) / d
	}
	return 0
}
