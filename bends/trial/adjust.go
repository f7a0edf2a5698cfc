package trial

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

const (
	// mostRounds bounds the Gauss-Newton rounds. Readings are a few thousandths
	// off and each round squares what is left: five do.
	mostRounds = 40
	// still is the change of the unknowns, mm and degrees, at which it stands: a
	// thousandth of what is written.
	still = 1e-8
)

// adjustment is the state of a fit.
type adjustment struct {
	od    float64
	list  []Bend
	law   law
	cov   reading // of one bend's readings
	p     params
	moved []reading    // what each reading was adjusted by
	root  mat.SymDense // covariance of the free unknowns, at the sigmas given
	sum   float64      // Σ of squared adjustments over their variances
}

// free is how many unknowns there are.
func (a *adjustment) free() int {
	if a.law.told {
		return unknowns
	}
	return unknowns - 1
}

// run adjusts until nothing moves. It reports false where the equations have no
// answer: bends without any gain.
func (a *adjustment) run() bool {
	a.moved = make([]reading, len(a.list))
	for range mostRounds {
		step, ok := a.round()
		if !ok {
			return false
		}
		if step <= still {
			return true
		}
	}
	return false
}

// round is one round of Gauss-Newton: the two equations of each bend, made
// linear at its adjusted readings, with the covariance the readings give them.
func (a *adjustment) round() (step float64, ok bool) {
	n := a.free()
	normal, right := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	pairs := make([]pair, len(a.list))
	for i, b := range a.list {
		pairs[i] = a.pairOf(b, a.moved[i])
		pairs[i].add(normal, right, n)
	}
	var chol mat.Cholesky
	if !chol.Factorize(normal) {
		return 0, false
	}
	var by mat.VecDense
	if chol.SolveVecTo(&by, right) != nil || chol.InverseTo(&a.root) != nil {
		return 0, false
	}
	for k := range n {
		a.p[k] += by.AtVec(k)
		step = max(step, math.Abs(by.AtVec(k)))
	}
	a.p = a.law.tied(a.p)
	a.settle(pairs, &by)
	return step, !math.IsNaN(step)
}

// settle gives every bend the smallest adjustment that meets its equations.
func (a *adjustment) settle(pairs []pair, by *mat.VecDense) {
	a.sum = 0
	for i, q := range pairs {
		w := [2]float64{q.off[0], q.off[1]}
		for k := range by.Len() {
			w[0] += q.c[0].with[k] * by.AtVec(k)
			w[1] += q.c[1].with[k] * by.AtVec(k)
		}
		pull := q.weigh(w)
		for r := range readings {
			v := -a.cov[r] * (q.c[0].by[r]*pull[0] + q.c[1].by[r]*pull[1])
			a.moved[i][r] = v
			a.sum += v * v / a.cov[r]
		}
	}
}

// pair is the two equations of one bend.
type pair struct {
	c   [2]condition
	off [2]float64    // what the readings as taken miss them by
	inv [2][2]float64 // inverse of the covariance of off
}

func (a *adjustment) pairOf(b Bend, moved reading) pair {
	x := b.reading()
	for r := range x {
		x[r] += moved[r]
	}
	q := pair{c: [2]condition{b.lengths(a.od, x, a.p), a.law.opening(x, a.p)}}
	var m [2][2]float64
	for i := range q.c {
		q.off[i] = q.c[i].value
		for r := range readings {
			q.off[i] -= q.c[i].by[r] * moved[r]
			for j := range q.c {
				m[i][j] += q.c[i].by[r] * q.c[j].by[r] * a.cov[r]
			}
		}
	}
	det := m[0][0]*m[1][1] - m[0][1]*m[1][0]
	q.inv = [2][2]float64{{m[1][1] / det, -m[0][1] / det}, {-m[1][0] / det, m[0][0] / det}}
	return q
}

func (q *pair) weigh(w [2]float64) [2]float64 {
	return [2]float64{q.inv[0][0]*w[0] + q.inv[0][1]*w[1], q.inv[1][0]*w[0] + q.inv[1][1]*w[1]}
}

// add puts the bend's share into the normal equations.
func (q *pair) add(normal *mat.SymDense, right *mat.VecDense, n int) {
	w := q.weigh(q.off)
	for j := range n {
		col := q.weigh([2]float64{q.c[0].with[j], q.c[1].with[j]})
		for i := range j + 1 {
			normal.SetSym(i, j, normal.At(i, j)+q.c[0].with[i]*col[0]+q.c[1].with[i]*col[1])
		}
		right.SetVec(j, right.AtVec(j)-q.c[0].with[j]*w[0]-q.c[1].with[j]*w[1])
	}
}
