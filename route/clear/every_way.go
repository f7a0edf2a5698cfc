package clear

import "math"

const (
	// DepthError bounds how much too large the depth of two convex shapes may be
	// given where a cylinder is one of them, mm.
	DepthError = 1e-3
	// firstTile is half the side of the tiles the directions are first cut into:
	// a quarter of a side of the cube around the unit ball.
	firstTile = 0.5
	// leastTile ends the halving: the bound is then good to size·leastTile²/2,
	// under DepthError for parts of some metres.
	leastTile = 1e-5
	// tilesOpen is room for the first 24 tiles and three for each halving.
	tilesOpen = 24 + 3*16
)

// tile is a square of directions on a side of the cube around the unit ball.
type tile struct {
	side    int // the axis, and 3 more for its negative half
	x, y, h float64
}

// middle is the tile's middle direction, and the sine of an angle within which
// all of its directions lie.
func (t tile) middle() (u v3, spread float64) {
	k := 1 / math.Sqrt(t.x*t.x+t.y*t.y+1)
	x, y, z := t.x*k, t.y*k, k
	if t.side >= 3 {
		z = -z
	}
	switch t.side % 3 {
	case 0:
		u = v3{z, x, y}
	case 1:
		u = v3{y, z, x}
	default:
		u = v3{x, y, z}
	}
	return u, math.Sqrt2 * t.h * k
}

// quarters adds the four quarters of a tile.
func (t tile) quarters(open []tile) []tile {
	h := t.h / 2
	return append(
		open,
		tile{t.side, t.x - h, t.y - h, h}, tile{t.side, t.x - h, t.y + h, h},
		tile{t.side, t.x + h, t.y - h, h}, tile{t.side, t.x + h, t.y + h, h},
	)
}

// allTiles are the first tiles, all directions.
func allTiles(open []tile) []tile {
	for side := range 6 {
		open = tile{side, 0, 0, 2 * firstTile}.quarters(open)
	}
	return open
}

// everyWay searches all directions by branch and bound. The farthest touching
// shift s in a tile's middle direction is one in every direction of the tile,
// so none of them takes less than s does along it: no less than
// |s|·cos(angle from s to the middle + spread). Near the least way s points
// along the direction, and the bound is good to the square of the spread.
func (l *leastWay) everyWay() {
	var room [tilesOpen]tile
	open := allTiles(room[:0])
	for len(open) > 0 {
		t := open[len(open)-1]
		open = open[:len(open)-1]
		u, sin := t.middle()
		before := l.depth
		s := l.tryOne(u)
		if l.depth < before {
			l.walk(t.h)
		}
		low := s.dot(u)*math.Sqrt(1-sin*sin) - s.cross(u).len()*sin
		if low < l.depth-DepthError && t.h > leastTile {
			open = t.quarters(open)
		}
	}
}

const (
	// lastStep ends a walk: the depth is then good to size·lastStep².
	lastStep = 1e-6
	// worth is the least gain of a step, mm for a step of one radian: the square
	// of smaller steps is all a smooth dip has to give, and in a sharp valley the
	// walk must not creep.
	worth = 0.02
)

// walk goes down from the best direction by steps in eight ways, quartered when
// none leads down.
func (l *leastWay) walk(step float64) {
	for step > lastStep {
		if !l.step(step) {
			step /= 4
		}
	}
}

func (l *leastWay) step(size float64) bool {
	x := l.way.square()
	y := l.way.cross(x)
	start, was := l.way, l.depth
	for _, d := range eightWays {
		u := start.plus(d.x*size, x).plus(d.y*size, y).unit()
		l.tryOne(u)
	}
	return l.depth < was-worth*size*size
}

var eightWays = [8]dir2{
	{1, 0},
	{math.Sqrt2 / 2, math.Sqrt2 / 2},
	{0, 1},
	{-math.Sqrt2 / 2, math.Sqrt2 / 2},
	{-1, 0},
	{-math.Sqrt2 / 2, -math.Sqrt2 / 2},
	{0, -1},
	{math.Sqrt2 / 2, -math.Sqrt2 / 2},
}

// far is a point of the core farthest in a direction.
func (c *core) far(u v3) v3 {
	switch c.kind {
	case isRod:
		if c.q.dot(u) > c.p.dot(u) {
			return c.q
		}
		return c.p
	case isBox:
		return c.block.far(u)
	}
	return c.drum.far(u)
}

// far is a corner of the block farthest in a direction.
func (b *block) far(u v3) v3 {
	p := b.c
	for i := range 3 {
		p = p.plus(math.Copysign(b.half[i], b.axis[i].dot(u)), b.axis[i])
	}
	return p
}

// reach is how far the core reaches in a direction from the origin.
func (c *core) reach(u v3) float64 {
	switch c.kind {
	case isRod:
		return max(c.p.dot(u), c.q.dot(u))
	case isBox:
		return c.block.reach(u)
	}
	return c.drum.reach(u)
}
