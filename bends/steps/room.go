package steps

// room is one tube at the bench: where its bends lie on the squared blank, and
// what stands in the way of making one.
type room struct {
	start, end  []float64 // of each bend, mm from end A of the blank
	length      float64   // of the blank, mm
	trim        float64   // at each end, mm
	held, drawn float64
	ringGap     float64 // from a bend to a collar, at least, mm
	collars     [2]Collar
	early       [2]bool // the collar goes on before its end's bend
	timing
}

// side is the bare straight on one side of a bend being made.
type side struct {
	bare float64
	ring bool // ends at a collar
}

func (j Job) room() room {
	r := room{
		trim: j.Tube.Tube.Trim, length: j.Cut.Aim + 2*j.Tube.Tube.Trim,
		held: j.Tool.Held, drawn: j.Tool.Drawn, collars: j.Collars,
	}
	if j.Tool == (Tool{}) {
		r.held, r.drawn = j.Tube.Tube.StraightBetween, j.Tube.Tube.StraightBetween
	}
	if heated(j.Material) {
		r.ringGap = j.Tube.Tube.OD // the heat reaches one diameter past the bend
	}
	for _, b := range j.Bench.Bends {
		r.start, r.end = append(r.start, b.BlankA.Start), append(r.end, b.BlankA.End)
	}
	for end := range 2 {
		r.early[end] = r.collars[end].Length > 0 && r.leg(end) < r.collars[end].needs()-slack
	}
	return r
}

// leg is the finished straight at an end, mm.
func (r *room) leg(end int) float64 {
	if end == 0 {
		return r.start[0] - r.trim
	}
	return r.length - r.end[len(r.end)-1] - r.trim
}

// endBend is the bend next to an end.
func (r *room) endBend(end int) int { return end * (len(r.start) - 1) }

// stretch is the straight from a point of the blank before or after bend i to
// the nearest bend made that way, or to the blank's end, and whether it is the end.
func (r *room) stretch(i, way int, made []bool) (length float64, atEnd bool) {
	from := r.start[i]
	if way > 0 {
		from = r.end[i]
	}
	for k := i + way; k >= 0 && k < len(made); k += way {
		if !made[k] {
			continue
		}
		if way < 0 {
			return from - r.end[k], false
		}
		return r.start[k] - from, false
	}
	if way < 0 {
		return from, true
	}
	return r.length - from, true
}

// sides are the bare straights before and after bend i when those bends are made.
func (r *room) sides(i int, made []bool) (s [2]side) {
	for end, way := range [2]int{-1, 1} {
		bare, atEnd := r.stretch(i, way, made)
		s[end].bare = bare
		if atEnd && r.early[end] && (i == r.endBend(end) || r.atOnce[end]) {
			s[end] = side{bare - r.collars[end].Length, true}
		}
	}
	return s
}

// lacks is how much bare straight bend i lacks in the better way of holding it,
// with what that side has; 0 and less when it can be made.
func (r *room) lacks(i int, made []bool) (short, have float64) {
	s := r.sides(i, made)
	for n, needs := range [2][2]float64{{r.held, r.drawn}, {r.drawn, r.held}} {
		worst, bare := 0.0, 0.0
		for end := range 2 {
			need := needs[end]
			if s[end].ring {
				need = max(need, r.ringGap)
			}
			if d := need - s[end].bare; end == 0 || d > worst {
				worst, bare = d, s[end].bare
			}
		}
		if n == 0 || worst < short {
			short, have = worst, bare
		}
	}
	return short, have
}

// can reports whether bend i can be made after those, and its collars put on
// just before it where they were not at once.
func (r *room) can(i int, made []bool) bool {
	short, _ := r.lacks(i, made)
	return short <= slack && r.collarsGoOn(i, made)
}

// collarsGoOn reports whether the collars that go on just before bend i can,
// A before B.
func (r *room) collarsGoOn(i int, made []bool) bool {
	for end, way := range [2]int{-1, 1} {
		if !r.early[end] || r.atOnce[end] || i != r.endBend(end) {
			continue
		}
		free, whole := r.atEndStretch(i, -way, made)
		other := 1 - end
		if whole && r.early[other] && (r.atOnce[other] || end == 1) {
			free -= r.collars[other].Length // on the same stretch
		}
		if free < r.collars[end].needs()-slack {
			return false
		}
	}
	return true
}

// atEndStretch is the finished straight from the end by which bend i is the
// first, to the first bend made: what a collar sees that goes on over that end.
// It says too whether that is the whole tube.
func (r *room) atEndStretch(i, way int, made []bool) (straight float64, whole bool) {
	beyond, whole := r.stretch(i, way, made)
	straight = r.leg(0)
	if way < 0 {
		straight = r.leg(1)
	}
	straight += r.end[i] - r.start[i] + beyond
	if whole {
		straight -= r.trim
	}
	return straight, whole
}
