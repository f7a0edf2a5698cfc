package made

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"
	"gonum.org/v1/gonum/mat"

	"tubewright/route"
)

const (
	// leastGive stands in for a give of nothing, mm or degrees: rigid, but for rounding.
	leastGive = 0.01
	// steps of the fit: the shape of the misses is settled long before.
	steps = 200
	// square is how many of them are of the plain squares, to come near first.
	square = 4
	// leastMiss keeps the weight of what is not missed at all from being lost, in
	// parts of what a socket gives.
	leastMiss = 1e-3
	// ridge holds what no socket asks about (a straight tube's turn about itself,
	// its slide when that is free), in parts of the largest pivot.
	ridge = 1e-9
)

// fit shifts and turns a rigid tube between two sockets until the worst of what
// it asks of them is least. It is Gauss and Newton's method on the weighted
// squares, the weights raised where the miss is large (Lawson 1961), which
// leads from the least squares to the least maximum.
type fit struct {
	corners []mgl64.Vec3
	stops   [2]route.Frame
	give    [2]route.Give
	play    [2]float64
	gap     [2]float64 // of the tube's ends from the first and last corner, mm
	slide   bool       // the gaps to the stops do not count
}

func newFit(corners []mgl64.Vec3, laid [2]route.Laid, gap [2]float64) *fit {
	f := &fit{corners: append([]mgl64.Vec3{}, corners...), gap: gap}
	for end := range laid {
		f.stops[end] = laid[end].Stop
		f.give[end], f.play[end] = laid[end].Socket.Give, laid[end].Socket.Insertion.Play()
	}
	return f
}

// end gives the tube's end and the way it goes on from there.
func (f *fit) end(e int) (at, dir mgl64.Vec3) {
	first, next := f.corners[0], f.corners[1]
	if e == 1 {
		n := len(f.corners)
		first, next = f.corners[n-1], f.corners[n-2]
	}
	dir = next.Sub(first).Normalize()
	return first.Add(dir.Mul(f.gap[e])), dir
}

// ask is one thing asked of a socket, in parts of what it gives, and how it
// changes with a small turn about the middle and a shift.
type ask struct {
	miss float64
	by   [6]float64
}

// asks lists what the tube asks of both sockets.
func (f *fit) asks(middle mgl64.Vec3) (list []ask) {
	for e, stop := range f.stops {
		at, dir := f.end(e)
		off, arm := at.Sub(stop.At), at.Sub(middle)
		side := stop.Dir.Cross(stop.Ref)
		aside, askew := math.Max(f.give[e].Sideways, leastGive), mgl64.DegToRad(math.Max(f.give[e].Degrees, leastGive))
		for _, across := range []mgl64.Vec3{stop.Ref, side} {
			list = append(list, moved(off.Dot(across), across, arm, aside), turned(dir.Dot(across), across, dir, askew))
		}
		list = append(list, f.along(e, off.Dot(stop.Dir), arm))
	}
	return list
}

// along is what an end asks of its socket's depth. Nothing where it stands as it
// was made; up to 1 from there to the stop, and to the least insertion.
func (f *fit) along(e int, gap float64, arm mgl64.Vec3) ask {
	if f.slide {
		return ask{}
	}
	off, give := f.depth(e, gap)
	return moved(off, f.stops[e].Dir, arm, give)
}

// depth is how far a gap is off the one the tube was made with, and how far it
// may be on that side.
func (f *fit) depth(e int, gap float64) (off, give float64) {
	made := min(max(f.gap[e], leastGive), max(f.play[e]-leastGive, leastGive))
	if off = gap - made; off < 0 {
		return off, made
	}
	return off, max(f.play[e]-made, leastGive)
}

// moved is a miss along a direction of a point at an arm: a turn w moves it by w × arm.
func moved(miss float64, along, arm mgl64.Vec3, give float64) ask {
	turn := arm.Cross(along)
	return ask{miss / give, [6]float64{turn[0] / give, turn[1] / give, turn[2] / give, along[0] / give, along[1] / give, along[2] / give}}
}

// turned is a miss of a direction.
func turned(miss float64, along, dir mgl64.Vec3, give float64) ask {
	turn := dir.Cross(along)
	return ask{miss / give, [6]float64{turn[0] / give, turn[1] / give, turn[2] / give}}
}

// settle moves the tube to where it stands best.
func (f *fit) settle() {
	weight := make([]float64, 10)
	for i := range weight {
		weight[i] = 1
	}
	best, least := f.corners, f.strain()
	for n := range steps {
		if least <= 1e-6 {
			break
		}
		if !f.step(weight) {
			break
		}
		if s := f.strain(); s < least {
			best, least = append([]mgl64.Vec3{}, f.corners...), s
		}
		if n >= square {
			f.reweigh(weight)
		}
	}
	f.corners = best
}

// twins pairs off what asks lists for one end: the two parts of one sideways
// miss, the two of one askew, and the depth alone.
var twins = [5]int{2, 3, 0, 1, 4}

// reweigh raises the weight of what is missed most; the two parts of one miss
// together, since a socket is round.
func (f *fit) reweigh(weight []float64) {
	sum := 0.0
	asks := f.asks(f.middle())
	for i, a := range asks {
		miss := math.Abs(a.miss)
		if twin := i/5*5 + twins[i%5]; twin != i {
			miss = math.Hypot(a.miss, asks[twin].miss)
		}
		weight[i] *= miss + leastMiss
		sum += weight[i]
	}
	for i := range weight {
		weight[i] = math.Max(weight[i]/sum*float64(len(weight)), 1e-6)
	}
}

func (f *fit) middle() mgl64.Vec3 {
	return f.corners[0].Add(f.corners[len(f.corners)-1]).Mul(0.5)
}

// step takes one step of the weighted least squares.
func (f *fit) step(weight []float64) bool {
	middle := f.middle()
	normal, right := mat.NewSymDense(6, nil), mat.NewVecDense(6, nil)
	for k, a := range f.asks(middle) {
		for i := range 6 {
			right.SetVec(i, right.AtVec(i)-weight[k]*a.by[i]*a.miss)
			for j := i; j < 6; j++ {
				normal.SetSym(i, j, normal.At(i, j)+weight[k]*a.by[i]*a.by[j])
			}
		}
	}
	top := 0.0
	for i := range 6 {
		top = math.Max(top, normal.At(i, i))
	}
	for i := range 6 {
		normal.SetSym(i, i, normal.At(i, i)+top*ridge)
	}
	var solver mat.Cholesky
	var x mat.VecDense
	if !solver.Factorize(normal) {
		return false
	}
	if err := solver.SolveVecTo(&x, right); err != nil && !isCondition(err) {
		return false
	}
	turn := mgl64.Vec3{x.AtVec(0), x.AtVec(1), x.AtVec(2)}
	shift := mgl64.Vec3{x.AtVec(3), x.AtVec(4), x.AtVec(5)}
	f.move(middle, turn, shift)
	return true
}

// isCondition reports an error that only warns of a stiff problem: the ridge
// makes one on purpose.
func isCondition(err error) bool {
	_, ok := err.(mat.Condition)
	return ok
}

// move turns the tube about a point by a rotation vector in radians, then shifts it.
func (f *fit) move(middle, turn, shift mgl64.Vec3) {
	angle := turn.Len()
	q := mgl64.QuatIdent()
	if angle > 0 {
		q = mgl64.QuatRotate(angle, turn.Mul(1/angle))
	}
	for i, c := range f.corners {
		f.corners[i] = middle.Add(q.Rotate(c.Sub(middle))).Add(shift)
	}
}

// ends says how the tube's ends sit.
func (f *fit) ends() (out [2]End) {
	for e, stop := range f.stops {
		at, dir := f.end(e)
		off := at.Sub(stop.At)
		gap := off.Dot(stop.Dir)
		out[e] = End{
			Gap: gap, Sideways: off.Sub(stop.Dir.Mul(gap)).Len(),
			Degrees: mgl64.RadToDeg(math.Atan2(stop.Dir.Cross(dir).Len(), stop.Dir.Dot(dir))),
		}
	}
	return out
}

// strain is the worst of what is asked, in parts of what the sockets give.
func (f *fit) strain() (worst float64) {
	for e, at := range f.ends() {
		worst = math.Max(worst, at.Sideways/math.Max(f.give[e].Sideways, leastGive))
		worst = math.Max(worst, at.Degrees/math.Max(f.give[e].Degrees, leastGive))
		if !f.slide {
			off, give := f.depth(e, at.Gap)
			worst = math.Max(worst, math.Abs(off)/give)
		}
	}
	return worst
}
