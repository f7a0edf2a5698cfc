package budget_test

import (
	"math"
	"math/rand/v2"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/bends/budget"
)

// This file forms tubes wrong on purpose, one at a time and exactly: every turn
// a real rotation, every mark and cut where it fell, and easing by trying. It
// shares nothing with the package but the words.

type vec = mgl64.Vec3

const degree = math.Pi / 180

// rotated turns a vector about a rotation vector in radians.
func rotated(v, by vec) vec {
	angle := by.Len()
	if angle == 0 {
		return v
	}
	return mgl64.QuatRotate(angle, by.Mul(1/angle)).Rotate(v)
}

// frame is a place, a way, and the direction the next bend turns to.
type frame struct{ at, way, side vec }

func (f frame) rotated(by, about vec) frame {
	return frame{rotated(f.at.Sub(about), by).Add(about), rotated(f.way, by), rotated(f.side, by)}
}

func (f frame) shifted(by vec) frame {
	f.at = f.at.Add(by)
	return f
}

func (f frame) out() vec { return f.way.Cross(f.side) }

// planned gives both sockets' frames, sides in the planes of the bends beside them.
func planned(j budget.Job) (near, far frame) {
	c := j.Tube.Corners
	side := func(way, other vec) vec {
		s := other.Sub(way.Mul(other.Dot(way)))
		if s.Len() < 1e-9 {
			s = mgl64.QuatBetweenVectors(vec{0, 0, 1}, way).Rotate(vec{1, 0, 0})
		}
		return s.Normalize()
	}
	n := len(c)
	a, b := j.Ends[0].Dir, j.Ends[1].Dir.Mul(-1)
	near = frame{j.Ends[0].Stop, a, side(a, c[min(2, n-1)].Sub(c[min(1, n-2)]))}
	far = frame{j.Ends[1].Stop, b, side(b, c[max(n-2, 1)].Sub(c[max(n-3, 0)]))}
	return near, far
}

// draw is one workshop's piece: the tube's end, held true in its near socket as
// that came to stand, and the two sockets.
type draw struct{ near, end, far frame }

// drawn makes one.
func drawn(j budget.Job, r *rand.Rand, near, far frame) draw {
	e := j.Errors
	d := draw{near: misplaced(near, j.Ends[0], e, r), far: misplaced(far, j.Ends[1], e, r)}
	a, b, c := 0.0, 0.0, 0.0
	if v := e.Springback[0][0]; v > 0 {
		a = math.Sqrt(v)
		b = e.Springback[0][1] / a
	}
	c = math.Sqrt(max(e.Springback[1][1]-b*b, 0))
	z1, z2 := r.NormFloat64(), r.NormFloat64()
	fixed, percent := a*z1, b*z1+c*z2
	larger := e.Radius * r.NormFloat64()

	f, s := d.near, 0.0 // s is how far along the tube f stands
	for i, bend := range j.Tube.Bends {
		start := bend.Start + e.Cut*r.NormFloat64()
		f = f.shifted(f.way.Mul(start - s))
		turn := bend.Turn + e.Turn*r.NormFloat64() - fixed - percent*bend.Turn/100
		if i > 0 {
			f.side = rotated(f.side, f.way.Mul((bend.Roll+e.Roll*r.NormFloat64())*degree))
		}
		radius := bend.Radius + larger
		f = f.rotated(f.way.Cross(f.side).Mul(turn*degree), f.at.Add(f.side.Mul(radius)))
		s = start + radius*turn*degree
	}
	length := j.Tube.Developed
	if len(j.Tube.Bends) == 0 {
		length += e.Cut * r.NormFloat64()
	}
	d.end = f.shifted(f.way.Mul(length - s))
	return d
}

// misplaced is a socket whose port stands and faces a little wrong.
func misplaced(f frame, s budget.Socket, e budget.Errors, r *rand.Rand) frame {
	axis := s.Facing.Cross(vec{0.6, -0.48, 0.64})
	axis = axis.Normalize()
	by := axis.Mul(r.NormFloat64()).Add(s.Facing.Cross(axis).Mul(r.NormFloat64())).Mul(e.Facing * degree)
	return f.rotated(by, s.Port).shifted(vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Mul(e.Port))
}

// asBent is how the end stands to the far socket: aside in and out, askew in and
// out (radians), along.
func (d draw) asBent() [5]float64 {
	off := d.end.at.Sub(d.far.at)
	return [5]float64{
		off.Dot(d.far.side), off.Dot(d.far.out()),
		math.Atan2(d.end.way.Dot(d.far.side), d.end.way.Dot(d.far.way)),
		math.Atan2(d.end.way.Dot(d.far.out()), d.end.way.Dot(d.far.way)),
		off.Dot(d.far.way),
	}
}

// fitting is what a person can do about it.
type fitting struct {
	draw
	give   [2][2]float64 // mm, radians
	rotary [2][]budget.Axis
}

// at gives what must be given after a move, in parts of the give, then what the
// move costs; and what the near and the far leg want, mm. The last two moves turn
// a fitting at either end.
func (f fitting) at(x [8]float64) (left [12]float64, wants [2]float64) {
	for _, a := range f.rotary[0] {
		by := a.Along.Mul(x[6])
		f.near, f.end = f.near.rotated(by, a.Through), f.end.rotated(by, a.Through)
	}
	for _, a := range f.rotary[1] {
		f.far = f.far.rotated(a.Along.Mul(x[7]), a.Through)
	}
	n := f.near
	by := n.out().Mul(x[2]).Sub(n.side.Mul(x[3]))
	end := f.end.shifted(n.way.Mul(x[5])).rotated(n.way.Mul(x[4]), n.at).rotated(by, n.at)
	end = end.shifted(n.side.Mul(x[0]).Add(n.out().Mul(x[1])))
	off := f.far.at.Sub(end.at)
	reach := off.Dot(f.far.way) / end.way.Dot(f.far.way) // from the end on to the far stop's plane
	miss := end.at.Add(end.way.Mul(reach)).Sub(f.far.at)
	left = [12]float64{
		x[0] / f.give[0][0], x[1] / f.give[0][0], x[2] / f.give[0][1], x[3] / f.give[0][1],
		miss.Dot(f.far.side) / f.give[1][0], miss.Dot(f.far.out()) / f.give[1][0],
		end.way.Dot(f.far.side) / f.give[1][1], end.way.Dot(f.far.out()) / f.give[1][1],
		x[4] / (45 * degree), x[5] / 5, x[6] / (2 * degree), x[7] / (2 * degree),
	}
	return left, [2]float64{x[5], reach}
}

// eased moves the piece about until the squares of what is left are least.
func (f fitting) eased() (left [12]float64, wants [2]float64) {
	var x [8]float64
	for range 4 {
		base, _ := f.at(x)
		var by [8][12]float64
		for k := range x {
			y := x
			y[k] += 1e-6
			moved, _ := f.at(y)
			for r := range moved {
				by[k][r] = (moved[r] - base[r]) / 1e-6
			}
		}
		step := leastSquares(by, base)
		far := 0.0
		for k := range x {
			x[k] += step[k]
			far = max(far, math.Abs(step[k]))
		}
		if far < 1e-5 {
			break
		}
	}
	return f.at(x)
}

// leastSquares solves for the step that takes most of what is left, by the
// normal equations and elimination.
func leastSquares(by [8][12]float64, left [12]float64) (x [8]float64) {
	var a [8][9]float64
	for k := range by {
		for m := range by {
			for r := range left {
				a[k][m] += by[k][r] * by[m][r]
			}
		}
		for r := range left {
			a[k][8] -= by[k][r] * left[r]
		}
	}
	for k := range a {
		for r := range a {
			if r == k {
				continue
			}
			f := a[r][k] / a[k][k]
			for c := k; c < 9; c++ {
				a[r][c] -= f * a[k][c]
			}
		}
	}
	for k := range x {
		x[k] = a[k][8] / a[k][k]
	}
	return x
}

// seats reports whether the piece of a draw goes in.
func seats(j budget.Job, d draw, r *rand.Rand) bool {
	f := fitting{draw: d}
	for i, s := range j.Ends {
		f.give[i], f.rotary[i] = [2]float64{s.Sideways, s.Degrees * degree}, s.Rotary
	}
	left, wants := f.eased()
	for k := 0; k < 8; k += 2 {
		if math.Hypot(left[k], left[k+1]) > 1 {
			return false
		}
	}
	if len(j.Tube.Bends) == 0 {
		return wants[0]+wants[1] <= j.Ends[0].Slack+j.Ends[1].Slack
	}
	for i, s := range j.Ends {
		if wants[i] > j.Tube.Tube.Trim+s.Slack || j.Errors.Cut*r.NormFloat64() > s.Slack {
			return false
		}
	}
	return true
}

// randomJob is a tube of some bends between two sockets, and a person's hand.
func randomJob(r *rand.Rand, count int) budget.Job {
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	tube := bends.Tube{OD: 16, ID: 12, Radius: between(20, 50), Trim: between(5, 20)}
	var t bends.Table
	for i := range count {
		row := bends.Row{Length: between(25, 120), Turn: between(20, 120), Radius: tube.Radius}
		if i > 0 {
			row.Roll = between(-180, 180)
		}
		if r.IntN(2) == 0 {
			row.Turn, row.Roll = 90, math.Round(row.Roll/90)*90
		}
		t.Rows = append(t.Rows, row)
	}
	t.Last = between(30, 150)
	f, err := bends.Form(tube, t.Path())
	if err != nil {
		panic(err)
	}
	last := len(f.Corners) - 1
	j := budget.Job{Tube: f, Errors: budget.Errors{
		Port: between(0.3, 1.5), Facing: between(0.1, 0.8), Cut: between(0.2, 0.8),
		Turn: between(0.3, 1.5), Roll: between(0.5, 2), Radius: between(0.1, 1.5),
	}}
	d, p := between(0.1, 0.8), between(0.1, 0.8)
	j.Errors.Springback = [2][2]float64{{d * d, -0.5 * d * p}, {-0.5 * d * p, p * p}}
	for i, c := range [2][2]vec{{f.Corners[0], f.Corners[1]}, {f.Corners[last], f.Corners[last-1]}} {
		dir := c[1].Sub(c[0]).Normalize()
		j.Ends[i] = budget.Socket{
			Name: "part.port", Facing: dir, Dir: dir, Stop: c[0], Port: c[0].Sub(dir.Mul(between(5, 40))),
			Sideways: between(0.2, 1), Degrees: between(0.5, 2.5), Slack: between(1, 3),
		}
	}
	for i := range j.Ends {
		if s := &j.Ends[i]; r.IntN(3) == 0 {
			along := vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Normalize()
			s.Rotary = []budget.Axis{{Through: s.Port.Add(vec{3, -4, 12}), Along: along}}
		}
	}
	return j
}
