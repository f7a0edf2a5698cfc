package find

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"

	"tubewright/route/clear"
)

// rival is the square search done plainly: every state and every step of the
// lattice as they are, each straight and bend measured against every solid by
// package clear, and gonum's Dijkstra over the whole graph.
type rival struct {
	*quest
	graph *simple.WeightedDirectedGraph
	first int64
	goal  int64
}

func newRival(q *quest) *rival {
	r := &rival{quest: q, graph: simple.NewWeightedDirectedGraph(0, math.Inf(1))}
	n := int64(len(q.grid[0]) * len(q.grid[1]) * len(q.grid[2]) * 6)
	r.first, r.goal = n, n+1
	r.graph.AddNode(simple.Node(r.first))
	r.graph.AddNode(simple.Node(r.goal))
	r.build()
	return r
}

func (r *rival) id(n node, out int) int64 {
	return int64(((n[0]*len(r.grid[1])+n[1])*len(r.grid[2])+n[2])*6 + out)
}

func (r *rival) build() {
	for x := range r.grid[0] {
		for y := range r.grid[1] {
			for z := range r.grid[2] {
				for d := range 6 {
					n := node{x, y, z}
					r.steps(r.id(n, d), r.grid.at(n), d, r.radius, r.between)
				}
			}
		}
	}
	r.steps(r.first, r.start.ray.at, r.start.axis, 0, r.leastEnd)
}

// steps adds every step along one straight.
func (r *rival) steps(from int64, at vec, d int, setback, need float64) {
	for x := range r.grid[0] {
		for y := range r.grid[1] {
			for z := range r.grid[2] {
				n := node{x, y, z}
				corner := r.grid.at(n)
				leg, ok := aheadOf(at, d, corner)
				if run := leg - setback - r.radius; ok && run >= need-bendSlack && r.room.holds(corner) {
					r.bends(from, at, d, setback, run, n)
				}
			}
		}
	}
	leg, ok := aheadOf(at, d, r.end.ray.at)
	if run := leg - setback; ok && from != r.first && d == r.end.axis^1 && run >= r.leastEnd-bendSlack && r.open(at, d, setback, setback+run) {
		r.edge(from, r.goal, costKey(r.weigh.Millimetre*run))
	}
}

func (r *rival) bends(from int64, at vec, d int, setback, run float64, n node) {
	if !r.open(at, d, setback, setback+run) {
		return
	}
	for out := range 6 {
		if out/2 != d/2 && r.turn(r.grid.at(n), d, out) {
			r.edge(from, r.id(n, out), costKey(r.weigh.Millimetre*run+r.squareCost))
		}
	}
}

func (r *rival) open(at vec, d int, from, to float64) bool {
	return r.free(clear.Rod{From: at.Add(heading(d).Mul(from)), To: at.Add(heading(d).Mul(to))})
}

func (r *rival) turn(corner vec, in, out int) bool {
	from := corner.Sub(heading(in).Mul(r.radius))
	return r.free(clear.Arc{Centre: from.Add(heading(out).Mul(r.radius)), U: heading(out).Mul(-1), V: heading(in), Bend: r.radius, Turn: 90})
}

func (r *rival) free(s clear.Shape) bool {
	for i := range r.walls {
		// arcs are measured too short by up to clear.ChordError
		if !clear.Farther(s, r.walls[i].shape, r.walls[i].keep-2*clear.ChordError) {
			return false
		}
	}
	return true
}

func (r *rival) edge(from, to, cost int64) {
	r.graph.SetWeightedEdge(r.graph.NewWeightedEdge(simple.Node(from), simple.Node(to), float64(cost)))
}

// shortest is the least cost from the start to the end; infinite when there is no way.
func (r *rival) cost() float64 {
	return path.DijkstraFrom(r.graph.Node(r.first), r.graph).WeightTo(r.goal)
}

// scene is a small lattice among a few boxes and cylinders.
func lattices(seed uint64) *quest {
	rng := rand.New(rand.NewPCG(seed, 1))
	at := func() vec { return v(40+rng.Float64()*320, 40+rng.Float64()*320, 40+rng.Float64()*320) }
	q := &quest{radius: 20, between: 12, leastEnd: 15, weigh: between(vec{}, v(1, 0, 0), vec{}, v(1, 0, 0)).Weigh}
	q.squareCost = q.bendCost(90)
	q.room = room{boxed: true, lo: v(8, 8, 8), hi: v(392, 392, 392)}
	for range 3 + rng.IntN(5) {
		p := at()
		var s clear.Shape = clear.Box{Centre: p, Axes: mgl64.Ident3(), Half: v(5+rng.Float64()*60, 5+rng.Float64()*60, 5+rng.Float64()*60)}
		if rng.IntN(3) == 0 {
			s = clear.Cylinder{From: p, To: p.Add(v(rng.Float64()*80, rng.Float64()*80, 10)), Radius: 5 + rng.Float64()*25}
		}
		q.walls = append(q.walls, newWall(worldAxes(), s, 8+rng.Float64()*6))
	}
	q.start, q.end = endAt(at(), rng.IntN(6)), endAt(at(), rng.IntN(6))
	for _, e := range []*rayEnd{&q.start, &q.end} {
		q.grid.addPoint(e.ray.at)
		q.grid.addPoint(e.ray.ahead(q.leastEnd + q.radius))
	}
	q.grid.addPoint(at())
	q.grid.addPoint(at())
	return q
}

func endAt(p vec, axis int) rayEnd { return rayEnd{ray{p, heading(axis)}, axis, 0} }

// TestSquareSearchAgainstDijkstra: the quick search and the plain one find the
// same least cost on every lattice.
func TestSquareSearchAgainstDijkstra(t *testing.T) {
	ways := 0
	for seed := range uint64(240) {
		q := lattices(seed)
		want := newRival(q).cost()
		q.search = new(search)
		q.search.bound = math.MaxInt64
		got, err := q.shortest(context.Background(), false)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case len(got) == 0 && math.IsInf(want, 1):
		case len(got) == 0 || math.Abs(float64(got[0].cost)-want) > 100:
			t.Errorf("seed %d: got %v, Dijkstra %.0f", seed, got, want)
		default:
			ways++
		}
	}
	if ways < 60 {
		t.Errorf("only %d of the lattices have a way: the test says little", ways)
	}
}

func BenchmarkSquare(b *testing.B) {
	b.Run("ours", func(b *testing.B) {
		for b.Loop() {
			for seed := range uint64(10) {
				q := lattices(seed)
				q.search = searches.Get().(*search)
				q.search.bound = math.MaxInt64
				if _, err := q.shortest(context.Background(), false); err != nil {
					b.Fatal(err)
				}
				searches.Put(q.search)
			}
		}
	})
	b.Run("gonum Dijkstra", func(b *testing.B) {
		for b.Loop() {
			for seed := range uint64(10) {
				newRival(lattices(seed)).cost()
			}
		}
	})
}
