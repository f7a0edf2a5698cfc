package route

import (
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route/clear"
)

// Placed is a part where it stands in the case: solids and ports in the case's frame.
type Placed struct {
	Part   Part // with all that its kind gives; solids and ports still in its own frame
	Solids []clear.Shape
	Ports  []PlacedPort
}

// PlacedPort is a port where it stands in the case.
type PlacedPort struct {
	Ref       PortRef
	Frame     Frame
	Thread    string
	Flow      Flow
	KnownFrom KnownFrom
}

// Whole gives a part with all that its kind in the catalogue adds to it.
func (p Plan) Whole(part Part) Part {
	kind, ok := p.FindKind(part.Kind)
	if part.Stack.Given() || ok && kind.Stack.Given() {
		part.Stack = part.Stack.over(kind.Stack)
		part = part.Stack.part(part)
	}
	if part.Kind == "" || !ok {
		return part
	}
	if len(part.Solids) == 0 {
		part.Solids = kind.Solids
	}
	if len(part.Passages) == 0 {
		part.Passages = kind.Passages
	}
	if len(part.Metals) == 0 {
		part.Metals = kind.Metals
	}
	if part.Volume == 0 {
		part.Volume = kind.Volume
	}
	part.Ports = mergePorts(part, kind)
	return part
}

// mergePorts gives the kind's ports, each replaced by the part's own of the
// same name, then the part's others. A part that says where it is known from
// vouches for the ports of its kind too.
func mergePorts(part, kind Part) []Port {
	ports := slices.Clone(kind.Ports)
	for i := range ports {
		if part.KnownFrom != "" {
			ports[i].KnownFrom = part.KnownFrom
		} else if ports[i].KnownFrom == "" {
			ports[i].KnownFrom = kind.KnownFrom
		}
	}
	for _, own := range part.Ports {
		if i := slices.IndexFunc(ports, func(q Port) bool { return q.Name == own.Name }); i >= 0 {
			ports[i] = own
		} else {
			ports = append(ports, own)
		}
	}
	return ports
}

// Turned is the rotation of a part turned by the angles in degrees about the
// fixed axes x, then y, then z. Multiples of a right angle are exact.
func Turned(turn mgl64.Vec3) mgl64.Mat3 {
	return about(2, turn[2]).Mul3(about(1, turn[1])).Mul3(about(0, turn[0]))
}

func about(axis int, degrees float64) mgl64.Mat3 {
	s, c := SinCos(degrees)
	m := mgl64.Ident3()
	i, j := (axis+1)%3, (axis+2)%3
	m.Set(i, i, c)
	m.Set(j, j, c)
	m.Set(j, i, s)
	m.Set(i, j, -s)
	return m
}

// SinCos gives sine and cosine of an angle in degrees, exact at multiples of a
// right angle, where math.Sincos of a rounded π is not.
func SinCos(degrees float64) (s, c float64) {
	switch inCircle(degrees) {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(degrees * math.Pi / 180)
}

// inCircle brings an angle in degrees into [0, 360). Angles of less than a turn
// need no division, which is slow: what is taken off below is exact.
func inCircle(degrees float64) float64 {
	if degrees <= -360 || degrees >= 360 || math.IsNaN(degrees) {
		degrees = math.Mod(degrees, 360)
	}
	switch degrees += 360; {
	case degrees >= 720: // it was rounded up
		return degrees - 720
	case degrees >= 360:
		return degrees - 360
	}
	return degrees
}

// Place puts a part of the plan where it stands.
func (p Plan) Place(part Part) Placed {
	part = p.Whole(part)
	turn := Turned(part.Turn)
	placed := Placed{Part: part}
	for _, s := range part.Solids {
		placed.Solids = append(placed.Solids, s.placed(turn, part.At))
	}
	for _, q := range part.Ports {
		placed.Ports = append(placed.Ports, q.placed(part, turn))
	}
	return placed
}

// PlaceAll puts every part of the plan where it stands, in the plan's order.
func (p Plan) PlaceAll() []Placed {
	all := make([]Placed, len(p.Parts))
	for i, part := range p.Parts {
		all[i] = p.Place(part)
	}
	return all
}

// FindPort gives a port where it stands in the case.
func (p Plan) FindPort(ref PortRef) (PlacedPort, bool) {
	part, ok := p.FindPart(ref.Part)
	if !ok {
		return PlacedPort{}, false
	}
	for _, q := range p.Place(part).Ports {
		if q.Ref == ref {
			return q, true
		}
	}
	return PlacedPort{}, false
}

func (s Solid) placed(turn mgl64.Mat3, at mgl64.Vec3) clear.Shape {
	from, to := turn.Mul3x1(s.From).Add(at), turn.Mul3x1(s.To).Add(at)
	if !s.Box {
		return clear.Cylinder{From: from, To: to, Radius: s.Radius}
	}
	half := s.To.Sub(s.From).Mul(0.5)
	for i := range half {
		half[i] = math.Abs(half[i])
	}
	return clear.Box{Centre: from.Add(to).Mul(0.5), Axes: turn, Half: half}
}

func (q Port) placed(part Part, turn mgl64.Mat3) PlacedPort {
	known := q.KnownFrom
	if known == "" {
		known = part.KnownFrom
	}
	local := NewFrame(q.At, q.Facing)
	return PlacedPort{
		Ref: PortRef{part.Name, q.Name},
		Frame: Frame{
			At:  turn.Mul3x1(local.At).Add(part.At),
			Dir: turn.Mul3x1(local.Dir),
			Ref: turn.Mul3x1(local.Ref),
		},
		Thread: q.Thread, Flow: q.Flow, KnownFrom: known,
	}
}
