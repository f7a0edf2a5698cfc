package nest

// partial gives a plan that leaves the fewest pieces uncut, where limits do not
// let all be cut. Those may as well be the longest: wherever others stay uncut,
// each piece of the plan can be replaced by one no longer.
//
// none says that it is proven that not all can be cut. The result is never
// proven: it may leave other pieces uncut for less.
func (j Job) partial(m *meter, none bool) (Result, error) {
	p := parts{job: j, all: splitPieces(j.Pieces), meter: m}
	few, many := 0, len(p.all)
	for few+1 < many {
		drop := (few + many) / 2
		if s := p.without(drop); s.best != nil {
			many, p.best = drop, s
		} else {
			few, none = drop, s.closed()
		}
	}
	err := &TooFewError{Uncut: mergePieces(p.all[:many]), Proven: none}
	if p.best == nil {
		return Result{}, err
	}
	j.Pieces = p.all[many:]
	r := j.answer(p.best)
	r.Proven, r.Certificate = false, nil
	return r, err
}

type parts struct {
	job   Job
	all   []Piece // one by one, longest first
	meter *meter
	best  *search
}

// partSteps go into each try: there are at most 14.
const partSteps = 100_000_000

func (p *parts) without(drop int) *search {
	job := p.job
	job.Pieces = p.all[drop:]
	if job.tooLong() != nil {
		panic("nest: fewer pieces are too long")
	}
	m := p.meter.within(partSteps)
	defer p.meter.after(m)
	return job.search(m, progress(nil))
}

func splitPieces(pieces []Piece) []Piece {
	var all []Piece
	for _, p := range mergePieces(pieces) {
		for range p.Count {
			all = append(all, Piece{p.Length, 1})
		}
	}
	return all
}
