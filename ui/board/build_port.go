package board

import (
	"tubewright/route"
)

// The port's mark, mm. A G1/4 seat is about 20 mm wide (common practice).
const (
	portRadius = 9.0
	portThick  = 1.2
	portRim    = 2.0  // of the ring round a free port
	portFlange = 1.6  // how far a used port's disc looks out from under its fitting
	arrowLong  = 17.0 // from the port's face to the tip
	arrowHead  = 7.0
	arrowWide  = 3.4
	arrowThin  = 1.1
)

func (s *Scene) addPort(p route.PlacedPort, end runEnd) {
	radius := portRadius
	if end.radius > 0 {
		radius = end.radius + portFlange
	}
	id := s.id(PortTarget(p.Ref))
	part := len(s.Parts) - 1
	s.Ports = append(s.Ports, ScenePort{
		Ref: p.Ref, Frame: p.Frame, Thread: p.Thread, Flow: p.Flow, Run: end.run, Radius: radius, id: id,
	})
	at, dir := p.Frame.At, p.Frame.Dir
	if end.run != "" {
		s.body(id, part, inkPort, func(m *mesh) { m.cylinder(at, at.Add(dir.Mul(portThick)), radius) })
		return
	}
	s.body(id, part, inkPort, func(m *mesh) { m.lathe(at, dir, hollow(radius)) })
	s.body(id, part, inkPortFace, func(m *mesh) {
		m.lathe(at, dir, []station{{portThick, radius - portRim, 0, 1}, {portThick, 0, 0, 1}})
	})
	s.body(id, part, inkPort, func(m *mesh) { m.lathe(at, dir, arrow()) })
}

// hollow is a ring with an open face.
func hollow(r float64) []station {
	return []station{
		{0, r, 1, 0},
		{portThick, r, 1, 0},
		{portThick, r, 0, 1},
		{portThick, r - portRim, 0, 1},
	}
}

// arrow is a shaft with a head, along the port's facing.
func arrow() []station {
	neck := arrowLong - arrowHead
	return []station{
		{portThick, arrowThin, 1, 0},
		{neck, arrowThin, 1, 0},
		{neck, arrowThin, 0, -1},
		{neck, arrowWide, 0, -1},
		{neck, arrowWide, .9, .44},
		{arrowLong, 0, .9, .44},
	}
}
