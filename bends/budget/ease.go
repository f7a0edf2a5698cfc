package budget

import "math"

// The ways a piece can be moved, in this order: aside in the near socket, askew
// in it, turned about it, slid along it; then about each fitting that turns, the
// near ones first.
const (
	shiftIn = iota
	shiftOut
	tiltIn
	tiltOut
	spin
	slide
	rotary
	moves = rotary + 2*mostRotary
)

// mostRotary is how many fittings that turn are used at one end: two of them
// reach every point of a plane.
const mostRotary = 2

const (
	// slides and turns are what moving a piece is worth in parts of the sockets'
	// give: sliding it by slides mm, or turning it by turns radians (45 degrees),
	// is as bad as using up a give. So errors of a few millimetres are slid away
	// for next to nothing where that helps, and legs that are almost parallel are
	// not slid by a hand's breadth to bring them together. A fitting that turns is
	// turned by about swings radians (2 degrees): it was set where the plan wants
	// it, and what is small of a screw is no longer so far round.
	slides = 5
	turns  = math.Pi / 4
	swings = math.Pi / 90
)

// The limits a piece must keep, each written so that within is at most 1 in
// size: aside and askew in the near socket, the same in the far one, then what
// the legs want.
const (
	nearAside = 0
	nearAskew = 2
	farAside  = 4
	farAskew  = 6
	discs     = 8 // rows that count in pairs, as a distance
	wants     = 8 // rows that count one by one, from above only
	limits    = 10
)

// easing is what is left of a miss after easing, in parts of what is allowed.
type easing struct {
	rows [limits][components]float64 // by the miss as bent
	mean [limits]float64             // as planned
	unit [limits]float64             // mm or radians that 1 stands for; 0: no limit
	n    int                         // moves there are
}

// ease works out how a piece is eased.
func (j *Job) ease() easing {
	near, far := j.nearView(), j.farView()
	var e easing
	e.unit = j.units()
	var by [moves]miss
	by, e.n = j.movesSeen(near, far)
	var normal [moves][moves]float64
	for k := range e.n {
		for m := range e.n {
			for c := range along {
				u := e.unit[farAside+c]
				normal[k][m] += by[k][c] * by[m][c] / (u * u)
			}
		}
	}
	for k := range spin {
		normal[k][k] += 1 / (e.unit[k] * e.unit[k])
	}
	normal[slide][slide] += 1 / float64(slides*slides)
	normal[spin][spin] += 1 / (turns * turns)
	for k := rotary; k < e.n; k++ {
		normal[k][k] += 1 / (swings * swings)
	}
	inv := inverse(&normal, e.n)

	var answer [moves][components]float64 // the move that answers a miss
	for k := range e.n {
		for c := range along {
			u := e.unit[farAside+c]
			for m := range e.n {
				answer[k][c] -= inv[k][m] * by[m][c] / (u * u)
			}
		}
	}
	e.fill(&answer, &by)
	e.plan(j, near, far, &inv, &by)
	return e
}

// units are what 1 stands for in each row.
func (j *Job) units() (u [limits]float64) {
	for end, s := range j.Ends {
		if s.Sideways == 0 {
			s.Sideways = AssumedSideways
		}
		if s.Degrees == 0 {
			s.Degrees = AssumedDegrees
		}
		r := farAside * end
		u[r], u[r+1] = s.Sideways, s.Sideways
		u[r+2], u[r+3] = s.Degrees*perDegree, s.Degrees*perDegree
		if len(j.Tube.Bends) > 0 {
			u[wants+end] = max(j.Tube.Tube.Trim+s.Slack, least)
		} else {
			u[wants] += max(s.Slack, 0)
		}
	}
	if len(j.Tube.Bends) == 0 {
		u[wants] = max(u[wants], least)
	}
	return u
}

// least is the least room a leg is taken to have, mm: a hundredth, so that a
// window of nothing is a number.
const least = 0.01

// movesSeen is what each move does at the far socket, and how many there are. To
// turn a fitting before the far socket is to turn the rest the other way.
func (j *Job) movesSeen(near, far view) (by [moves]miss, n int) {
	a, b := j.Ends[0].Stop, j.Ends[1].Stop
	for k, t := range [rotary]twist{
		shifted(near.in), shifted(near.out),
		turned(near.out, a, b), turned(near.in, a, b),
		turned(near.way, a, b), shifted(near.way),
	} {
		by[k] = far.sees(t)
	}
	n = rotary
	for end, s := range j.Ends {
		for _, axis := range s.Rotary[:min(len(s.Rotary), mostRotary)] {
			by[n] = far.sees(turned(axis.Along, axis.Through, b)).times(1 - 2*float64(end))
			n++
		}
	}
	return by, n
}

// fill writes the rows: what the sockets and the legs see of a miss once it is
// answered.
func (e *easing) fill(answer *[moves][components]float64, by *[moves]miss) {
	for c := range along {
		for k := range spin {
			e.rows[k][c] = answer[k][c]
		}
		for r := range along {
			if r == c {
				e.rows[farAside+r][c] = 1
			}
			for k := range e.n {
				e.rows[farAside+r][c] += by[k][r] * answer[k][c]
			}
		}
		far := 0.0
		for k := range e.n {
			far -= by[k][along] * answer[k][c]
		}
		e.want(c, answer[slide][c], far)
	}
	e.want(along, 0, -1)
	for r := range e.rows {
		for c := range e.rows[r] {
			if e.unit[r] > 0 {
				e.rows[r][c] /= e.unit[r]
			}
		}
	}
}

// want writes what both legs want of one component; a straight tube has one leg.
func (e *easing) want(c int, near, far float64) {
	if e.unit[wants+1] == 0 {
		e.rows[wants][c] = near + far
		return
	}
	e.rows[wants][c], e.rows[wants+1][c] = near, far
}

// plan writes where the tube stands when nothing goes wrong: sockets that are not
// quite in line use up some of their give beforehand.
func (e *easing) plan(j *Job, near, far view, inv *[moves][moves]float64, by *[moves]miss) {
	last := len(j.Tube.Corners) - 1
	at := near.sees(twist{j.Tube.Corners[0].Sub(j.Ends[0].Stop), near.way.Cross(leg(j.Tube, 0))})
	end := far.sees(twist{j.Tube.Corners[last].Sub(j.Ends[1].Stop), far.way.Cross(leg(j.Tube, last-1))})
	var pull, x [moves]float64
	for k := range e.n {
		if k < spin {
			pull[k] -= at[k] / (e.unit[k] * e.unit[k])
		}
		for c := range along {
			u := e.unit[farAside+c]
			pull[k] -= by[k][c] * end[c] / (u * u)
		}
	}
	for k := range e.n {
		for m := range e.n {
			x[k] += inv[k][m] * pull[m]
		}
	}
	for k := range spin {
		e.mean[k] = (at[k] + x[k]) / e.unit[k]
	}
	for c := range along {
		left := end[c]
		for k := range e.n {
			left += by[k][c] * x[k]
		}
		e.mean[farAside+c] = left / e.unit[farAside+c]
	}
}

// inverse of the first n rows and columns of a positive matrix, which is used up,
// by Gauss and Jordan. It is small and asked for at every tube, so it stays on the
// stack.
func inverse(a *[moves][moves]float64, n int) (inv [moves][moves]float64) {
	for k := range n {
		inv[k][k] = 1
	}
	for k := range n {
		p := 1 / a[k][k]
		for c := range n {
			a[k][c] *= p
			inv[k][c] *= p
		}
		for r := range n {
			if f := a[r][k]; r != k && f != 0 {
				for c := range n {
					a[r][c] -= f * a[k][c]
					inv[r][c] -= f * inv[k][c]
				}
			}
		}
	}
	return inv
}
