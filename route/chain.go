package route

import (
	"fmt"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// Frame is a place on the way out of a port: where, which way on, and the
// direction rolls are counted from. Dir and Ref are unit and square to each other.
type Frame struct{ At, Dir, Ref mgl64.Vec3 }

// steep is how much of a facing may lie along y before z serves as reference:
// beyond it the part of y square to the facing is too short to be a steady one.
const steep = 0.9

// NewFrame is the frame of a port: rolls count from the part of +y that is
// square to the facing; from that of +z where the facing is near ±y.
func NewFrame(at, facing mgl64.Vec3) Frame {
	dir := facing.Normalize()
	up := mgl64.Vec3{0, 1, 0}
	if dir[1] > steep || dir[1] < -steep {
		up = mgl64.Vec3{0, 0, 1}
	}
	return Frame{At: at, Dir: dir, Ref: up.Sub(dir.Mul(up.Dot(dir))).Normalize()}
}

// Side is the direction square to the way at a roll in degrees: Ref turned
// about Dir by the right-hand rule.
func (f Frame) Side(roll float64) mgl64.Vec3 {
	s, c := SinCos(roll)
	return f.Ref.Mul(c).Add(f.Dir.Cross(f.Ref).Mul(s))
}

// Ahead is the point at distance d along the way.
func (f Frame) Ahead(d float64) mgl64.Vec3 { return f.At.Add(f.Dir.Mul(d)) }

// Past is the frame after a fitting set at a roll. A socket's frame is the
// tube's end at its stop; a plug ends the way where it is.
func (f Frame) Past(fit *Fitting, roll float64) Frame {
	switch fit.Kind {
	case Socket:
		f.At = f.Ahead(fit.Stop)
	case Extender, Tee, Valve, Coupler:
		f.At = f.Ahead(fit.Length)
	case Offset:
		f.At = f.Ahead(fit.Length).Add(f.Side(roll).Mul(fit.Sideways))
	case Elbow:
		return f.round(fit, roll)
	case Plug:
	}
	return f
}

// round is the frame after an elbow, which turns the way toward Side(roll).
func (f Frame) round(fit *Fitting, roll float64) Frame {
	side := f.Side(roll)
	s, c := SinCos(fit.Turn)
	dir := f.Dir.Mul(c).Add(side.Mul(s))
	axis := f.Dir.Cross(side)
	corner := f.Ahead(fit.Legs[0])
	return Frame{At: corner.Add(dir.Mul(fit.Legs[1])), Dir: dir, Ref: turnAbout(f.Ref, axis, s, c)}
}

// turnAbout turns v about a unit axis by the angle of this sine and cosine
// (Rodrigues' formula).
func turnAbout(v, axis mgl64.Vec3, s, c float64) mgl64.Vec3 {
	return v.Mul(c).Add(axis.Cross(v).Mul(s)).Add(axis.Mul(axis.Dot(v) * (1 - c)))
}

// Body is the room one fitting of a chain takes.
type Body struct {
	Fitting Fitting
	Roll    float64 // degrees
	From    Frame   // where it stands on the one before
	Shapes  []clear.Shape
}

// Laid is a chain on its port: the bodies from the port outward and, when the
// chain ends in a socket, the tube's end fully home and the way it leaves.
type Laid struct {
	Port   PlacedPort
	Bodies []Body
	Stop   Frame
	Socket Fitting // zero when the chain holds no tube
}

// ChainError says which step of a chain cannot be, and why.
type ChainError struct {
	Port PortRef
	Step int // counts from 0 at the port
	What string
}

func (e *ChainError) Error() string {
	return fmt.Sprintf("fittings on %s: step %d: %s", e.Port, e.Step+1, e.What)
}

// Lay puts a chain of fittings on a port. Free rolls are taken as their Roll
// stands. A chain that holds a tube ends in its only socket; one that closes
// the port ends in a plug. Errors are of type *ChainError.
func (p Plan) Lay(port PlacedPort, chain Chain) (Laid, error) {
	laid := Laid{Port: port, Stop: port.Frame}
	for i, step := range chain {
		fit, ok := p.FindFitting(step.Fitting)
		if !ok {
			return Laid{}, &ChainError{port.Ref, i, fmt.Sprintf("there is no fitting %q", step.Fitting)}
		}
		if last := fit.Kind == Socket || fit.Kind == Plug; last != (i == len(chain)-1) {
			return Laid{}, &ChainError{port.Ref, i, "a socket or a plug goes last, and nothing else does"}
		}
		laid.Bodies = append(laid.Bodies, Body{fit, step.Roll, laid.Stop, Room(laid.Stop, &fit, step.Roll)})
		laid.Stop = laid.Stop.Past(&fit, step.Roll)
		if fit.Kind == Socket {
			laid.Socket = fit
		}
	}
	return laid, nil
}

// Room is the space a fitting takes when it stands at a frame: cylinders
// about its way, a ball where the way turns, the collar of a socket.
func Room(f Frame, fit *Fitting, roll float64) []clear.Shape {
	r := fit.Body / 2
	switch fit.Kind {
	case Socket:
		return []clear.Shape{clear.Cylinder{From: f.At, To: f.Ahead(fit.Collar.Length), Radius: fit.Collar.OD / 2}}
	case Offset:
		a, b := f.Ahead(fit.Length/2), f.Past(fit, roll).At
		c := a.Add(f.Side(roll).Mul(fit.Sideways))
		return []clear.Shape{
			clear.Cylinder{From: f.At, To: a, Radius: r},
			clear.Rod{From: a, To: c, Radius: r},
			clear.Cylinder{From: c, To: b, Radius: r},
		}
	case Elbow:
		corner := f.Ahead(fit.Legs[0])
		return []clear.Shape{
			clear.Cylinder{From: f.At, To: corner, Radius: r},
			clear.Rod{From: corner, To: corner, Radius: r},
			clear.Cylinder{From: corner, To: f.Past(fit, roll).At, Radius: r},
		}
	case Plug:
		return []clear.Shape{clear.Cylinder{From: f.At, To: f.Ahead(fit.Length), Radius: r}}
	case Tee:
		side := f.Ahead(fit.Length / 2)
		return []clear.Shape{
			clear.Cylinder{From: f.At, To: f.Ahead(fit.Length), Radius: r},
			clear.Cylinder{From: side, To: side.Add(f.Side(roll).Mul(fit.Side)), Radius: r},
		}
	case Extender, Valve, Coupler:
	}
	return []clear.Shape{clear.Cylinder{From: f.At, To: f.Ahead(fit.Length), Radius: r}}
}
