package route

import "github.com/go-gl/mathgl/mgl64"

// Stack is a radiator with its fans as one part: what is bought apart but has
// to fit as a whole. Its zero value is no stack; of a part with a kind the
// fields left zero are the kind's.
//
// In the part's own frame the radiator lies along x with its lower, left, far
// corner at the origin, from z 0 to its thickness; fans on its far side reach
// below z 0, so that a change of the fans moves neither the radiator nor its
// ports.
type Stack struct {
	Fan          float64 // side of one fan, and height of the radiator, mm
	Fans         int     // beside each other along x
	Thickness    float64 // of the radiator, mm
	FanThickness float64 // of one fan, mm
	Sides        Sides   // where the fans are
	KeepOut      float64 // kept free in front of the fans, mm; 0: nothing
	Ports        Face    // where the ports look
}

// Sides says on which sides of a radiator its fans are.
type Sides string

// The sides that may carry fans. The empty value counts as NearSide.
const (
	NearSide  Sides = "near" // toward you before the part is turned
	FarSide   Sides = "far"
	BothSides Sides = "both"
	NoSide    Sides = "none"
)

// Face is a face of a radiator.
type Face string

// The faces that may carry the ports. The empty value counts as NearFace.
const (
	NearFace Face = "near"
	FarFace  Face = "far"
	EndFace  Face = "end" // the right end
)

// A radiator is longer than its fans by its two tanks (common practice, as in
// the catalogue): the narrow one at the left, at the right the one with the
// ports, whose middle they sit on, as far apart as two sockets need.
const (
	leftTank  = 10
	rightTank = 26
	portsAway = 24 // of each port from the radiator's middle, mm
)

// tight is the part of a radiator's volume that is coolant (common practice).
const tight = 0.2

// Given reports whether there is a stack at all.
func (s Stack) Given() bool { return s != Stack{} }

// over fills what is left zero from a kind's stack.
func (s Stack) over(kind Stack) Stack {
	if s.Fan == 0 {
		s.Fan = kind.Fan
	}
	if s.Fans == 0 {
		s.Fans = kind.Fans
	}
	if s.Thickness == 0 {
		s.Thickness = kind.Thickness
	}
	if s.FanThickness == 0 {
		s.FanThickness = kind.FanThickness
	}
	if s.Sides == "" {
		s.Sides = kind.Sides
	}
	if s.KeepOut == 0 {
		s.KeepOut = kind.KeepOut
	}
	if s.Ports == "" {
		s.Ports = kind.Ports
	}
	return s
}

// part gives the solids, ports, passage and volume that a stack is made of,
// where the part does not list its own.
func (s Stack) part(p Part) Part {
	if len(p.Solids) == 0 {
		p.Solids = s.solids()
	}
	if len(p.Passages) == 0 {
		p.Passages = [][2]string{{"low", "high"}}
	}
	if p.Volume == 0 {
		p.Volume = tight * s.Fan * s.Fan * float64(s.Fans) * s.Thickness / 1e6
	}
	p.Ports = mergePorts(p, Part{Ports: s.ports(), KnownFrom: p.KnownFrom})
	return p
}

// Depth is from the face of the far fans to the face of the near ones, with
// what is kept free before them, mm.
func (s Stack) Depth() float64 {
	lo, hi := s.depth()
	return hi - lo
}

// depth is from where to where the stack reaches along z.
func (s Stack) depth() (lo, hi float64) {
	hi = s.Thickness
	if s.Sides == FarSide || s.Sides == BothSides {
		lo = -s.FanThickness - s.KeepOut
	}
	if s.Sides != FarSide && s.Sides != NoSide {
		hi += s.FanThickness + s.KeepOut
	}
	return lo, hi
}

func (s Stack) length() float64 { return leftTank + s.Fan*float64(s.Fans) + rightTank }

func (s Stack) solids() []Solid {
	box := func(x0, x1, z0, z1 float64) Solid {
		return Solid{Box: true, From: mgl64.Vec3{x0, 0, z0}, To: mgl64.Vec3{x1, s.Fan, z1}}
	}
	list := []Solid{box(0, s.length(), 0, s.Thickness)}
	lo, hi := s.depth()
	from, to := float64(leftTank), leftTank+s.Fan*float64(s.Fans)
	if hi > s.Thickness {
		list = append(list, box(from, to, s.Thickness, hi))
	}
	if lo < 0 {
		list = append(list, box(from, to, lo, 0))
	}
	return list
}

func (s Stack) ports() []Port {
	at, facing := mgl64.Vec3{s.length() - rightTank/2, 0, s.Thickness}, mgl64.Vec3{0, 0, 1}
	switch s.Ports {
	case FarFace:
		at[2], facing = 0, mgl64.Vec3{0, 0, -1}
	case EndFace:
		at, facing = mgl64.Vec3{s.length(), 0, s.Thickness / 2}, mgl64.Vec3{1, 0, 0}
	case NearFace:
	}
	port := func(name string, up float64) Port {
		return Port{Name: name, At: at.Add(mgl64.Vec3{0, s.Fan/2 + up, 0}), Facing: facing, Thread: "G1/4", Flow: Any}
	}
	return []Port{port("low", -portsAway), port("high", portsAway)}
}
