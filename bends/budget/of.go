package budget

import "math"

// Of works out the budget of a tube. A tube that was never formed has none: the
// zero value.
func Of(j Job) Budget {
	if len(j.Tube.Corners) < 2 {
		return Budget{}
	}
	var room [few]source
	list := j.sources(room[:0])
	e := j.ease()
	all := total(list)
	b := Budget{AsBent: missOf(&all), Eased: e.left(&all)}
	seats := j.cuts()
	b.Chance = seats * e.chance(&all)
	b.Largest = e.largest(&j, list, &all, seats)
	return b
}

// Chance is the chance of [Of] alone, at a third of the work.
func Chance(j Job) float64 {
	if len(j.Tube.Corners) < 2 {
		return 0
	}
	var room [few]source
	all := total(j.sources(room[:0]))
	e := j.ease()
	return j.cuts() * e.chance(&all)
}

func total(list []source) (all square) {
	for i := range list {
		all.plus(&list[i].cov, 1)
	}
	return all
}

// cuts is the chance that neither end of a trimmed tube is cut too short.
func (j *Job) cuts() float64 {
	chance := 1.0
	if len(j.Tube.Bends) == 0 || j.Errors.Cut <= 0 {
		return chance
	}
	for _, s := range j.Ends {
		chance *= 0.5 * math.Erfc(-s.Slack/j.Errors.Cut/math.Sqrt2)
	}
	return chance
}

// missOf gives the standard deviations of a covariance.
func missOf(s *square) Miss {
	sd := func(c int) float64 { return math.Sqrt(max(s[c][c], 0)) }
	return Miss{
		Sideways: [2]float64{sd(asideIn), sd(asideOut)},
		Degrees:  [2]float64{sd(askewIn) / perDegree, sd(askewOut) / perDegree},
		Length:   sd(along),
	}
}

// left gives the standard deviations of what is left at each socket.
func (e *easing) left(cov *square) (m [2]Miss) {
	sd := func(r int) float64 {
		sum := 0.0
		for i := range components {
			for k := range components {
				sum += e.rows[r][i] * cov[i][k] * e.rows[r][k]
			}
		}
		return math.Sqrt(max(sum, 0)) * e.unit[r]
	}
	for end := range m {
		r := farAside * end
		m[end] = Miss{
			Sideways: [2]float64{sd(r), sd(r + 1)},
			Degrees:  [2]float64{sd(r+2) / perDegree, sd(r+3) / perDegree},
			Length:   sd(wants + end),
		}
	}
	return m
}

// most is how many contributors are told.
const most = 2

// largest names the sources that matter most, and what half of each would do. Of
// equals the first counts.
func (e *easing) largest(j *Job, list []source, all *square, seats float64) []Part {
	var weight square
	for r := range discs {
		for i := range components {
			for k := range components {
				weight[i][k] += e.rows[r][i] * e.rows[r][k]
			}
		}
	}
	whole := weight.of(all)
	if whole <= 0 {
		return nil
	}
	parts := make([]Part, 0, most)
	taken := -1
	for range most {
		best, share := -1, noise
		for i := range list {
			if s := weight.of(&list[i].cov) / whole; i != taken && s > share+noise {
				best, share = i, s
			}
		}
		if best < 0 {
			break
		}
		taken = best
		halved := *all
		halved.plus(&list[best].cov, -0.75)
		parts = append(parts, Part{list[best].words(j), share, seats * e.chance(&halved)})
	}
	return parts
}

// of is the trace of a product: what a covariance weighs.
func (s *square) of(cov *square) float64 {
	sum := 0.0
	for i := range s {
		for k := range s {
			sum += s[i][k] * cov[i][k]
		}
	}
	return sum
}
