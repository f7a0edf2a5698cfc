package budget

import (
	"math"
	"strconv"
)

// square is a symmetric matrix over the components of a miss.
type square [components][components]float64

// add adds the covariance of one error.
func (s *square) add(m miss) {
	for i := range m {
		for j := range m {
			s[i][j] += m[i] * m[j]
		}
	}
}

func (s *square) plus(t *square, times float64) {
	for i := range s {
		for j := range s {
			s[i][j] += times * t[i][j]
		}
	}
}

// kind of a source of errors.
type kind int

const (
	position kind = iota
	facing
	mark
	turn
	roll
	radius
	springback
	cut
)

// source is one thing that goes wrong, and what that does at the far socket.
type source struct {
	kind kind
	at   int // end or bend, from 0
	cov  square
}

// words name a source as the person would.
func (s *source) words(j *Job) string {
	switch s.kind {
	case position:
		return "position of " + j.Ends[s.at].Name
	case facing:
		return "facing of " + j.Ends[s.at].Name
	case mark:
		return "mark of bend " + strconv.Itoa(s.at+1)
	case turn:
		return "turn of bend " + strconv.Itoa(s.at+1)
	case roll:
		return "roll of bend " + strconv.Itoa(s.at+1)
	case radius:
		return "radius of the former"
	case springback:
		return "springback"
	case cut:
	}
	return "cut"
}

// few is how many sources fit without asking for room: those of a tube of six bends.
const few = 4 + 3*6 + 2

// sources lists what goes wrong with a tube.
func (j *Job) sources(list []source) []source {
	far := j.farView()
	list = j.portSources(list, far)
	if len(j.Tube.Bends) == 0 {
		s := source{kind: cut}
		s.cov.add(miss{along: j.Errors.Cut})
		return append(list, s)
	}
	return j.bendSources(list, far)
}

// portSources are of both ports: the near one carries the tube along.
func (j *Job) portSources(list []source, far view) []source {
	e, at := j.Errors, j.Ends[1].Stop
	for end := range j.Ends {
		p, f := source{kind: position, at: end}, source{kind: facing, at: end}
		for axis := range 3 {
			var by vec
			by[axis] = e.Port
			p.cov.add(far.sees(shifted(by)))
		}
		first := anySquare(j.Ends[end].Facing)
		for _, axis := range [2]vec{first, j.Ends[end].Facing.Cross(first)} {
			f.cov.add(far.sees(turned(axis, j.Ends[end].Port, at)).times(e.Facing * perDegree))
		}
		list = append(list, p, f)
	}
	return list
}

// bendSources are of each bend, and of the former they share.
func (j *Job) bendSources(list []source, far view) []source {
	e, at := j.Errors, j.Ends[1].Stop
	former, spring := source{kind: radius}, source{kind: springback}
	var byRadius, byFixed, byPercent miss
	for i, b := range j.Tube.Bends {
		bend := jointOf(j.Tube, i)
		m, t := source{kind: mark, at: i}, source{kind: turn, at: i}
		m.cov.add(far.sees(bend.byMark()).times(e.Cut))
		byTurn := far.sees(bend.byTurn(at))
		t.cov.add(byTurn.times(e.Turn * perDegree))
		list = append(list, m, t)
		if i > 0 {
			r := source{kind: roll, at: i}
			r.cov.add(far.sees(bend.byRoll(j.Tube, i, at)).times(e.Roll * perDegree))
			list = append(list, r)
		}
		byR := far.sees(bend.byRadius())
		for k := range byR {
			byRadius[k] += byR[k] * e.Radius
			byFixed[k] -= byTurn[k] * perDegree
			byPercent[k] -= byTurn[k] * perDegree * b.Turn / 100
		}
	}
	former.cov.add(byRadius)
	a, b, c := halves(e.Springback)
	for k := range byFixed {
		byFixed[k], byPercent[k] = a*byFixed[k]+b*byPercent[k], c*byPercent[k]
	}
	spring.cov.add(byFixed)
	spring.cov.add(byPercent)
	return append(list, former, spring)
}

// halves are the Cholesky factor of a covariance of two: a in the first alone,
// b of the same in the second, c in the second alone.
func halves(cov [2][2]float64) (a, b, c float64) {
	if cov[0][0] > 0 {
		a = math.Sqrt(cov[0][0])
		b = cov[0][1] / a
	}
	return a, b, math.Sqrt(max(cov[1][1]-b*b, 0))
}

// nearView and farView are how the two sockets see the tube.
func (j *Job) nearView() view {
	last := len(j.Tube.Corners) - 2
	return viewOf(j.Ends[0].Dir, leg(j.Tube, min(1, last)))
}

func (j *Job) farView() view {
	last := len(j.Tube.Corners) - 2
	return viewOf(j.Ends[1].Dir.Mul(-1), leg(j.Tube, max(0, last-1)))
}
