package steps

import "slices"

// The order of the bends. Making more bends only takes room from those still to
// be made, so whether a bend can be made last hangs on nothing but the set of the
// others, and a smaller set never takes room away. So it is safe to go backward:
// any bend that can be the last of a set is taken as the last, and if at some
// point none can, there is no order at all (the sets that can be made form an
// antimatroid; Korte, Lovász and Schrader, Greedoids, 1991, chapter III: from
// memory). The marks count from end A, so that order is tried first.

// arrange finds an order with room, or says why there is none.
func (j Job) arrange() Work {
	w := Work{First: endNames[0], Ons: [2]On{{Before: -1}, {Before: -1}}}
	if len(j.Bench.Bends) == 0 {
		return w
	}
	r := j.room()
	for end := range 2 {
		w.Ons[end].Leg, w.Ons[end].Need = r.leg(end), r.collars[end].needs()
	}
	if order, ok := r.order(); ok {
		w.Order = order
	} else {
		w.Order, w.Fault = fromA(len(r.start)), r.fault()
	}
	if n := len(w.Order); n > 1 && w.Order[0] == n-1 {
		w.First = endNames[1]
	}
	w.setCollars(&r)
	return w
}

// setCollars says before which bend each collar goes on.
func (w *Work) setCollars(r *room) {
	w.BFirst = r.bFirst && r.early == [2]bool{true, true}
	for end := range 2 {
		if !r.early[end] {
			continue
		}
		w.Ons[end].Before = r.endBend(end)
		if r.atOnce[end] {
			w.Ons[end].Before = w.Order[0]
		}
	}
}

// timing is when early collars go on: just before their own bend or at once,
// before any bend, and then A first or B.
type timing struct {
	atOnce [2]bool
	bFirst bool
}

// timings are in the order in which they are tried: as late as can be first, to
// keep collars out of the heat.
var timings = [...]timing{
	{},
	{atOnce: [2]bool{true, false}},
	{atOnce: [2]bool{false, true}, bFirst: true},
	{atOnce: [2]bool{true, true}},
	{atOnce: [2]bool{true, true}, bFirst: true},
}

// inTurn are the two ends in the order in which their collars go on.
func inTurn(bFirst bool) [2]int {
	if bFirst {
		return [2]int{1, 0}
	}
	return [2]int{0, 1}
}

// order tries to put early collars on as late as can be, then before any bend.
func (r *room) order() ([]int, bool) {
	for _, t := range timings {
		r.timing = t
		if !r.collarsRest() {
			continue
		}
		for _, order := range [][]int{fromA(len(r.start)), fromB(len(r.start)), r.peeled()} {
			if order != nil && r.works(order) {
				return order, true
			}
		}
	}
	r.timing = timing{}
	return nil, false
}

// collarsRest reports whether every early collar can stand on its finished leg,
// and go on the blank where it does so at once.
func (r *room) collarsRest() bool {
	on := 0.0
	for _, end := range inTurn(r.bFirst) {
		if !r.early[end] {
			continue
		}
		if r.collars[end].Length > r.leg(end)+slack {
			return false
		}
		if r.atOnce[end] {
			if r.length-2*r.trim-on < r.collars[end].needs()-slack {
				return false
			}
			on = r.collars[end].Length
		}
	}
	return true
}

func fromA(n int) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	return order
}

func fromB(n int) []int {
	order := fromA(n)
	slices.Reverse(order)
	return order
}

// works reports whether every bend of an order can be made in its turn.
func (r *room) works(order []int) bool {
	made := make([]bool, len(order))
	for _, i := range order {
		if !r.can(i, made) {
			return false
		}
		made[i] = true
	}
	return true
}

// peeled is the order found backward, nil when there is none.
func (r *room) peeled() []int {
	made := r.peel()
	if slices.Contains(made.left, true) {
		return nil
	}
	slices.Reverse(made.last)
	return made.last
}

// peeling is how far the search backward came.
type peeling struct {
	left []bool // bends none of which can be the last
	last []int  // those that can, the last one first
}

func (r *room) peel() peeling {
	p := peeling{left: make([]bool, len(r.start))}
	for i := range p.left {
		p.left[i] = true
	}
	for again := true; again; {
		again = false
		for i := len(p.left) - 1; i >= 0; i-- {
			if !p.left[i] {
				continue
			}
			p.left[i] = false
			if r.can(i, p.left) {
				p.last, again = append(p.last, i), true
				break
			}
			p.left[i] = true
		}
	}
	return p
}

// fault says what stands against every order.
func (r *room) fault() error {
	for end := range 2 {
		if leg := r.leg(end); r.early[end] && r.collars[end].Length > leg+slack {
			return &CollarError{endNames[end], r.endBend(end) + 1, NoLeg, leg, r.collars[end].Length}
		}
	}
	early := r.early
	r.early = [2]bool{}
	if p := r.peel(); slices.Contains(p.left, true) {
		return r.stuck(p.left)
	}
	r.early = early
	if e := r.startFault(); e.Shortfall() > slack {
		return e
	}
	for _, on := range [][2]bool{{true, false}, {false, true}, {true, true}} { // whether one collar alone is too much
		r.early = [2]bool{on[0] && early[0], on[1] && early[1]}
		if r.peeled() == nil {
			break
		}
	}
	return r.gripFault()
}

// stuck names the bends none of which can be made last, and the one that lacks least.
func (r *room) stuck(left []bool) error {
	e := &NoOrderError{}
	least := 0.0
	for i := range left {
		if !left[i] {
			continue
		}
		left[i] = false
		short, have := r.lacks(i, left)
		left[i] = true
		if len(e.Bends) == 0 || short < least {
			least, e.Last, e.Have, e.Need = short, i+1, have, have+short
		}
		e.Bends = append(e.Bends, i+1)
	}
	return e
}

// gripFault is the collar that takes most of the room its bend needs.
func (r *room) gripFault() *CollarError {
	var worst *CollarError
	for end := range 2 {
		if !r.early[end] {
			continue
		}
		i := r.endBend(end)
		made := make([]bool, len(r.start))
		have, _ := r.stretch(i, 2*end-1, made)
		for k := range made {
			made[k] = k != i
		}
		short, _ := r.lacks(i, made)
		e := &CollarError{endNames[end], i + 1, NoGrip, have, have + max(short, 0)}
		if worst == nil || e.Shortfall() > worst.Shortfall() {
			worst = e
		}
	}
	return worst
}

// startFault is the collar that lacks straight to go on over, or has least to
// spare, though the whole tube is straight: in the better order of the two.
func (r *room) startFault() *CollarError {
	a, b := r.startLacks(false), r.startLacks(true)
	if b.Shortfall() < a.Shortfall() {
		return b
	}
	return a
}

func (r *room) startLacks(bFirst bool) (worst *CollarError) {
	have := r.length - 2*r.trim
	for _, end := range inTurn(bFirst) {
		if !r.early[end] {
			continue
		}
		e := &CollarError{endNames[end], r.endBend(end) + 1, NoStart, have, r.collars[end].needs()}
		if worst == nil || e.Shortfall() > worst.Shortfall() {
			worst = e
		}
		have -= r.collars[end].Length
	}
	return worst
}
