package board

import (
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
)

func (s *Scene) addRun(i int, solved find.Solved) {
	way, ok := solved.Way()
	if !ok {
		s.addBroken(i, solved)
		return
	}
	whole := s.id(RunTarget(solved.Run.Name))
	s.addFittings(whole, way.Start)
	s.addFittings(whole, way.End)
	t := SceneTube{
		Run: solved.Run.Name, Letter: cutlist.Letter(i), Colour: i % len(Style{}.Tubes),
		Corners: cornersOf(solved, way), OD: way.Tube.OD, Drawn: solved.Drawn, whole: whole,
	}
	s.addTube(&t, way.Formed)
	s.Tubes = append(s.Tubes, t)
}

// cornersOf gives the corners a person may take hold of. A drawn path keeps
// those without a turn, which forming leaves out.
func cornersOf(solved find.Solved, way find.Way) []mgl64.Vec3 {
	formed := way.Formed.Corners
	if !solved.Drawn || len(solved.Run.Via) == 0 || len(formed) < 2 {
		return formed
	}
	corners := append([]mgl64.Vec3{formed[0]}, solved.Run.Via...)
	return append(corners, formed[len(formed)-1])
}

// addBroken keeps where a run was asked for that has no tube.
func (s *Scene) addBroken(i int, solved find.Solved) {
	from, okA := s.Port(solved.Run.From)
	to, okB := s.Port(solved.Run.To)
	if !okA || !okB {
		return
	}
	corners := append([]mgl64.Vec3{from.Frame.At}, solved.Run.Via...)
	s.Tubes = append(s.Tubes, SceneTube{
		Run: solved.Run.Name, Colour: i % len(Style{}.Tubes),
		Corners: append(corners, to.Frame.At), Drawn: solved.Drawn, Broken: true,
	})
}

func (s *Scene) addFittings(id uint16, laid route.Laid) {
	for _, b := range laid.Bodies {
		k := inkMetal
		if b.Fitting.Kind == route.Socket {
			k = inkCollar
		}
		for _, shape := range b.Shapes {
			s.body(id, -1, k, func(m *mesh) { m.shape(shape) })
		}
	}
}

func (s *Scene) addTube(t *SceneTube, f bends.Formed) {
	var h hose
	for i, p := range f.Pieces() {
		if p.End-p.Start <= 0 {
			continue
		}
		id := s.id(Target{Kind: OnRun, Run: t.Run, Piece: i})
		t.pieces = append(t.pieces, scenePiece{id, i, p.From, p.To})
		s.body(id, -1, inkTube+ink(t.Colour), func(m *mesh) { m.sweep(&h, p, t.OD/2) })
	}
}
