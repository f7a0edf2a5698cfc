package route

import "slices"

// OwnTube gives the plan's own tube called name, to be changed: one of the
// catalogue becomes the plan's first. It is nil where there is none. The plan
// must be one that may be written to; see [Plan.Clone].
func (p *Plan) OwnTube(name string) *Tube {
	return own(&p.Tubes, name, func(t Tube) string { return t.Name }, func(name string) (Tube, bool) {
		t, ok := p.FindTube(name)
		return cloneTube(t), ok
	})
}

// OwnFitting is the same of a fitting.
func (p *Plan) OwnFitting(name string) *Fitting {
	return own(&p.Fittings, name, func(f Fitting) string { return f.Name }, func(name string) (Fitting, bool) {
		f, ok := p.FindFitting(name)
		return cloneFitting(f), ok
	})
}

func own[T any](list *[]T, name string, of func(T) string, shelf func(string) (T, bool)) *T {
	i := slices.IndexFunc(*list, func(x T) bool { return of(x) == name })
	if i < 0 {
		entry, ok := shelf(name)
		if !ok {
			return nil
		}
		i, *list = len(*list), append(*list, entry)
	}
	return &(*list)[i]
}
