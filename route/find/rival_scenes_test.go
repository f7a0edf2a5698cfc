package find

import (
	"context"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route/clear"
)

// crowd makes the rivals' scenes: 5 to 60 boxes and cylinders in a cube, two
// ports anywhere, a few lattice lines by the ports and by faces of the solids.
type crowd struct {
	*rand.Rand
	q    *quest
	odd  bool // a port may face along no axis
	more int  // lattice lines besides those of the ports
}

func newCrowd(seed uint64) *crowd {
	return &crowd{Rand: rand.New(rand.NewPCG(seed, 1)), odd: seed%4 == 3, more: 4}
}

func (c *crowd) spot() vec {
	return v(40+c.Float64()*320, 40+c.Float64()*320, 40+c.Float64()*320)
}

// lattices is one scene. Of four in turn the second has a via point and the
// last may have ports that face along no axis; half of all have a bar that
// bounds the tube.
func lattices(seed uint64) *quest {
	c := newCrowd(seed)
	c.quest()
	c.fill(5 + c.IntN(56))
	c.ports()
	c.lines()
	return c.q
}

// quest is a tube of a small former and weights of all sorts.
func (c *crowd) quest() {
	c.q = &quest{radius: 20, between: 12, leastEnd: 15, weigh: between(vec{}, v(1, 0, 0), vec{}, v(1, 0, 0)).Weigh}
	c.q.weigh.Bend = []float64{60, 10, 200, 1}[c.IntN(4)]
	c.q.squareCost = c.q.bendCost(90)
	c.q.room = room{boxed: true, lo: v(8, 8, 8), hi: v(392, 392, 392)}
}

// fill puts solids in: many small ones or few large ones.
func (c *crowd) fill(n int) {
	size := 30 + 150/float64(n)
	for range n {
		p := c.spot()
		half := v(4+c.Float64()*size, 4+c.Float64()*size, 4+c.Float64()*size).Mul(0.5)
		var s clear.Shape = boxAt(p, half)
		switch c.IntN(6) {
		case 0:
			s = clear.Cylinder{From: p, To: p.Add(v(c.Float64()*size, c.Float64()*size, 10)), Radius: 4 + c.Float64()*size/3}
		case 1:
			s = clear.Box{Centre: p, Axes: anyTurn(c.Rand), Half: half}
		}
		c.q.walls = append(c.q.walls, newWall(worldAxes(), s, 8+c.Float64()*6))
	}
}

// ports sets the ends; each stands on a plate that its first straight may touch.
func (c *crowd) ports() {
	q := c.q
	q.start, q.end = c.end(), c.end()
	for i, e := range []*rayEnd{&q.start, &q.end} {
		w := newWall(worldAxes(), clear.Box{Centre: e.ray.ahead(-6), Axes: mgl64.Ident3(), Half: v(5, 5, 5)}, 8)
		if i == 0 {
			w.fromStart = 14
		} else {
			w.fromEnd = 14
		}
		q.walls = append(q.walls, w)
	}
}

func (c *crowd) end() rayEnd {
	if c.odd && c.IntN(2) == 0 {
		dir, _ := unit(v(c.NormFloat64(), c.NormFloat64(), c.NormFloat64()))
		return rayEnd{ray{c.spot(), dir}, axisOf(dir), 0}
	}
	d := c.IntN(6)
	return rayEnd{ray{c.spot(), heading(d)}, d, 0}
}

// lines puts in the lattice what the ends need and some faces of solids.
func (c *crowd) lines() {
	q := c.q
	if c.IntN(4) == 1 {
		q.via = append(q.via, c.spot())
		q.grid.addPoint(q.via[0])
	}
	for _, e := range []*rayEnd{&q.start, &q.end} {
		if e.axis >= 0 {
			q.grid.addPoint(e.ray.at)
		}
	}
	for _, e := range []*rayEnd{&q.start, &q.end} {
		if e.axis < 0 {
			for _, s := range q.stands(e)[:2] {
				q.grid.addPoint(e.ray.ahead(s))
			}
			continue
		}
		q.grid.add(e.axis/2, e.ray.ahead(q.leastEnd + q.radius)[e.axis/2])
	}
	for range c.more {
		w, axis := &q.walls[c.IntN(len(q.walls))], c.IntN(3)
		q.grid.add(axis, []float64{w.lo[axis] - w.keep, w.hi[axis] + w.keep}[c.IntN(2)])
	}
}

// alone runs one search on a scene.
func alone(tb testing.TB, q *quest) []found {
	tb.Helper()
	q.search = searches.Get().(*search)
	defer searches.Put(q.search)
	q.search.bound = math.MaxInt64
	q.effort = nil
	got, err := q.shortest(context.Background(), false)
	if err != nil {
		tb.Fatal(err)
	}
	return got
}

// rivals is how many scenes the search is checked on: TUBEWRIGHT_RIVALS=all
// runs those that the normal suite leaves out.
func rivals() uint64 {
	if os.Getenv("TUBEWRIGHT_RIVALS") == "all" {
		return 2000
	}
	return 300
}

// TestSquareSearchAgainstDijkstra: the quick search and the plain one find the
// same least cost in every scene, without limits and with a bar a little too
// short for the best route.
func TestSquareSearchAgainstDijkstra(t *testing.T) {
	var ways, short, kept int
	for seed := range rivals() {
		q := lattices(seed)
		got := alone(t, q)
		over := len(got) > 0 && !got[0].within
		many := over || len(got) > 0 && len(got[0].corners) >= mostBends
		agree(t, seed, got, newRival(q).best(q.weigh.Bend < 30 || many))
		if len(got) == 0 || over {
			continue
		}
		ways++
		if seed%2 == 0 {
			continue
		}
		q.most = measure(tubeOf(q), pathOf(q, got[0])).developed - 1 - 3*float64(seed%9)
		short++
		if got = alone(t, q); len(got) > 0 && got[0].within {
			kept++
		}
		agree(t, seed, got, newRival(q).best(true))
	}
	t.Logf("%d ways, %d with a bar too short, %d of those have another way", ways, short, kept)
	if n := int(rivals()); ways < n/4 || kept < n/40 {
		t.Errorf("%d ways, %d under a bar: the test says little", ways, kept)
	}
}

// best is cost, counting bends where there may be too many.
func (r *rival) best(count bool) float64 {
	r.counts = count
	return r.cost()
}

// tubeOf is the tube of a scene.
func tubeOf(q *quest) bends.Tube {
	return bends.Tube{Radius: q.radius, StraightBetween: q.between, StraightEnd: q.leastEnd}
}

// pathOf is a route from stop to stop.
func pathOf(q *quest, f found) []vec {
	return append(append([]vec{q.start.ray.at}, f.corners...), q.end.ray.at)
}

// agree compares a search's answer with the least cost, in mm of tube.
func agree(t *testing.T, seed uint64, got []found, want float64) {
	t.Helper()
	switch {
	case math.IsInf(want, 1) && (len(got) == 0 || !got[0].within):
	case len(got) == 0 || math.Abs(float64(got[0].cost)*sameCost-want) > 1e-3:
		t.Errorf("seed %d: got %+v, Dijkstra %.4f", seed, got, want)
	}
}

// boxAt is a box along the axes.
func boxAt(centre, half vec) clear.Box {
	return clear.Box{Centre: centre, Axes: mgl64.Ident3(), Half: half}
}
