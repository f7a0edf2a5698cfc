package find

import (
	"math"
	"sync"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// questSpare is what a quest keeps over the guard's own gap, mm: it runs along
// faces at exactly its distance, and the guard must not refuse that for a
// rounding.
const questSpare = 1e-5

// wallRoom keeps room for the walls of a quest for use again.
var wallRoom = sync.Pool{New: func() any { return new([]wall) }}

// free gives the room of a quest's walls back: the quest is over.
func (q *quest) free() {
	walls := q.walls
	wallRoom.Put(&walls)
	q.walls = nil
}

// wallsOf are what a run must keep away from, in a frame.
func (h *hunt) wallsOf(m axes, start, end *build) []wall {
	half := h.tube.OD/2 + margin + questSpare
	walls := (*wallRoom.Get().(*[]wall))[:0]
	h.halt.did((len(h.parts) + len(h.others)) / 2)
	for i := range h.parts {
		s := &h.parts[i]
		w := h.partWall(m, i)
		w.keep = half + h.plan.Clear
		if s.part == h.a.part {
			w.keep, w.fromStart = half, start.mouth()
		}
		if s.part == h.b.part {
			w.keep, w.fromEnd = half, end.mouth()
		}
		walls = append(walls, w)
	}
	for i := range h.others {
		walls = append(walls, runWall(m, h.others[i].shape, half+h.plan.Clear))
	}
	walls = append(walls, bodyWalls(m, start, half, true)...)
	return append(walls, bodyWalls(m, end, half, false)...)
}

// partWall is a solid of a part as a frame sees it.
func (sc *scene) partWall(m axes, i int) wall {
	if m == worldAxes() {
		return sc.walls[i]
	}
	return newWall(m, sc.parts[i].shape, 0)
}

// runWall is what another run takes up as a frame sees it. A straight along an
// axis is everything within its radius of a line, and a line is an upright box,
// which is quicker to keep away from than anything round.
func runWall(m axes, s clear.Shape, keep float64) wall {
	rod, ok := s.(clear.Rod)
	if !ok {
		return newWall(m, s, keep)
	}
	from, to := m.in(rod.From), m.in(rod.To)
	if way, ok := unit(to.Sub(from)); !ok || axisOf(way) < 0 {
		return newWall(m, s, keep)
	}
	var half vec
	for i := range half {
		half[i] = math.Abs(to[i]-from[i]) / 2
	}
	return newWall(worldAxes(), clear.Box{Centre: from.Add(to).Mul(0.5), Axes: mgl64.Ident3(), Half: half}, keep+rod.Radius)
}

// bodyWalls are a chain's own fittings: the straight that leaves them is exempt.
func bodyWalls(m axes, b *build, half float64, start bool) []wall {
	var walls []wall
	for _, l := range b.room() {
		w := newWall(m, l.shape, half)
		if start {
			w.fromStart = math.Inf(1)
		} else {
			w.fromEnd = math.Inf(1)
		}
		walls = append(walls, w)
	}
	return walls
}
