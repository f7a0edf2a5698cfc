package route

import "slices"

// find gives the first element called name, own list first.
func find[T any](own, shelf []T, name string, of func(T) string) (T, bool) {
	for _, list := range [][]T{own, shelf} {
		if i := slices.IndexFunc(list, func(t T) bool { return of(t) == name }); i >= 0 {
			return list[i], true
		}
	}
	var none T
	return none, false
}

func (p Plan) shelf() Catalogue {
	if p.Catalogue == nil {
		return Catalogue{}
	}
	return *p.Catalogue
}

// FindTube gives the tube called name: the plan's own, else the catalogue's.
func (p Plan) FindTube(name string) (Tube, bool) {
	return find(p.Tubes, p.shelf().Tubes, name, func(t Tube) string { return t.Name })
}

// FindFitting gives the fitting called name: the plan's own, else the catalogue's.
func (p Plan) FindFitting(name string) (Fitting, bool) {
	return find(p.Fittings, p.shelf().Fittings, name, func(f Fitting) string { return f.Name })
}

// FindKind gives the catalogue part called kind.
func (p Plan) FindKind(kind string) (Part, bool) {
	return find(nil, p.shelf().Parts, kind, func(k Part) string { return k.Name })
}

// FindPart gives the plan's part called name, as the plan writes it.
func (p Plan) FindPart(name string) (Part, bool) {
	return find(p.Parts, nil, name, func(k Part) string { return k.Name })
}

// FindRun gives the plan's run called name.
func (p Plan) FindRun(name string) (Run, bool) {
	return find(p.Runs, nil, name, func(r Run) string { return r.Name })
}

// TubeOf gives the tube a run is made of: its own, else the plan's default.
func (p Plan) TubeOf(r Run) (Tube, bool) {
	if r.Tube != "" {
		return p.FindTube(r.Tube)
	}
	return p.FindTube(p.Tube)
}

// AllFittings lists every fitting the plan may use, the plan's own first; a
// catalogue entry the plan has changed is left out.
func (p Plan) AllFittings() []Fitting {
	all := slices.Clone(p.Fittings)
	for _, f := range p.shelf().Fittings {
		if !slices.ContainsFunc(p.Fittings, func(own Fitting) bool { return own.Name == f.Name }) {
			all = append(all, f)
		}
	}
	return all
}

// SocketFor gives the first socket that takes a tube of this outside diameter
// and fits the thread ("" fits any), the plan's own sockets first.
func (p Plan) SocketFor(od float64, thread string) (Fitting, bool) {
	for _, f := range p.AllFittings() {
		if f.Kind == Socket && SameSize(f.OD, od) && SameThread(f.Thread, thread) {
			return f, true
		}
	}
	return Fitting{}, false
}

// sameSize is how far two nominal diameters may differ and still be one size:
// tubes are sold in steps of a tenth of a millimetre or more.
const sameSize = 0.05

// SameSize reports whether two nominal diameters in mm are one size.
func SameSize(a, b float64) bool { return a-b <= sameSize && b-a <= sameSize }

// SameThread reports whether two threads go together; an empty one says nothing
// and goes with any.
func SameThread(a, b string) bool { return a == "" || b == "" || a == b }

// Clone gives a plan that shares nothing with p that an edit could change. The
// catalogue is shared: nobody writes to it.
func (p Plan) Clone() Plan {
	p.Tubes, p.Fittings = cloneEach(p.Tubes, cloneTube), cloneEach(p.Fittings, cloneFitting)
	p.Parts, p.Runs = cloneEach(p.Parts, clonePart), cloneEach(p.Runs, cloneRun)
	p.Stock, p.OnHand = slices.Clone(p.Stock), slices.Clone(p.OnHand)
	p.Pictures = slices.Clone(p.Pictures)
	p.Offcuts = cloneEach(p.Offcuts, func(o Offcuts) Offcuts {
		o.Lengths = slices.Clone(o.Lengths)
		return o
	})
	return p
}

func cloneEach[T any](list []T, one func(T) T) []T {
	out := slices.Clone(list)
	for i := range out {
		out[i] = one(out[i])
	}
	return out
}

func cloneTube(t Tube) Tube {
	t.TestBends = slices.Clone(t.TestBends)
	return t
}

func cloneFitting(f Fitting) Fitting {
	f.Rolls = slices.Clone(f.Rolls)
	return f
}

func clonePart(k Part) Part {
	k.Solids, k.Ports = slices.Clone(k.Solids), slices.Clone(k.Ports)
	k.Passages, k.Metals = slices.Clone(k.Passages), slices.Clone(k.Metals)
	return k
}

func cloneRun(r Run) Run {
	r.Via, r.Start, r.End = slices.Clone(r.Via), slices.Clone(r.Start), slices.Clone(r.End)
	r.Made = cloneEach(r.Made, cloneAttempt)
	return r
}
