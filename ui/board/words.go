package board

import (
	"strconv"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// Words tells what a target is in one line; "" for nothing.
func (s *Scene) Words(t Target) string {
	switch t.Kind {
	case OnPart:
		p, _ := s.Part(t.Part)
		if p.Kind != "" && p.Kind != p.Name {
			return p.Name + " (" + p.Kind + ")"
		}
		return t.Part
	case OnPort:
		return s.portWords(t.Port)
	case OnRun:
		return s.runWords(t)
	case OnFinding:
		for _, f := range s.Findings {
			if f.Index == t.Finding {
				return f.What
			}
		}
	case Nothing:
	}
	return ""
}

func (s *Scene) portWords(ref route.PortRef) string {
	p, _ := s.Port(ref)
	text := ref.String()
	if p.Thread != "" {
		text += ", " + p.Thread
	}
	switch p.Flow {
	case route.In:
		text += ", coolant in"
	case route.Out:
		text += ", coolant out"
	case route.Any:
	}
	if p.Used() {
		return text + ", holds " + p.Run
	}
	return text + ", free"
}

func (s *Scene) runWords(t Target) string {
	tube, _ := s.Tube(t.Run)
	if tube.Broken {
		return t.Run + ", no tube yet"
	}
	text := tube.Letter + "  " + t.Run
	switch {
	case t.Piece == Whole:
		return text + ", fittings"
	case t.Piece%2 == 0:
		return text + ", straight " + strconv.Itoa(t.Piece/2+1)
	}
	return text + ", bend " + strconv.Itoa(t.Piece/2+1)
}

// boxOf gives the box around some targets; ok is false when they are nowhere.
func (s *Scene) boxOf(targets []Target) (lo, hi mgl64.Vec3, ok bool) {
	show := Show{Selection: targets}
	add := func(l, h mgl64.Vec3) {
		if !ok {
			lo, hi, ok = l, h, true
		}
		for k := range 3 {
			lo[k], hi[k] = min(lo[k], l[k]), max(hi[k], h[k])
		}
	}
	for i := range s.solids {
		if b := &s.solids[i]; show.chosen(s.targets[b.id]) {
			add(b.lo.wide(), b.hi.wide())
		}
	}
	for _, f := range s.Findings {
		if show.chosen(FindingTarget(f.Index)) {
			add(f.At, f.At)
		}
	}
	return lo, hi, ok
}
