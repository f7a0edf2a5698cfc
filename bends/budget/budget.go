// Package budget says how far a tube formed by hand will miss its far socket,
// how likely it seats at the first try, and what that hangs on most.
//
// # How a mechanic fits a tube
//
// A bent tube is marked, formed, and only then trimmed: both end legs have some
// to spare, the straights between bends are what they are. The piece is held
// with its near end true in the near socket and looked at from the far one: it
// is so much aside, so much askew, so much too long or too short. That is the
// miss as bent ([Budget.AsBent]).
//
// Then it is eased. The piece may be
//
//   - turned about the near socket: round tube in a round ring;
//   - slid along the near socket, by trimming the near leg or by standing back
//     in the socket's window; the far leg takes what that makes at the far end;
//   - let stand a little aside and askew in either socket: its give;
//   - helped by an offset or an elbow before either socket that turns freely
//     while it is fitted.
//
// It is brought to where the sum of squares of what both sockets must give, each
// in parts of what they can give, is least: the miss is shared, and no socket is
// strained while the other has room. Turning and sliding cost next to nothing;
// but nobody slides by a hand's breadth to win a hair ([slides], [turns]).
// What is then left in the sockets is [Budget.Eased].
//
// A piece seats when after that it stands in each socket no farther aside than
// give.sideways and no farther askew than give.degrees, and when no leg wants
// more tube than there is: its trim, and what it may stand back beyond its aim.
// Too long is no loss: it is trimmed again. Too short is a lost blank.
//
// A straight tube has no trim and nothing to turn. It is cut once, lies as its
// two sockets let it, and must not be shorter than its window.
//
// Two lines in space have an angle and a distance, and nothing else: what legs
// that can be trimmed and sockets that can be turned about leave of all errors
// is little. That is why one bend between two ports square to each other nearly
// always fits, and why an offset, whose legs are parallel, is less forgiving.
//
// # What goes wrong
//
// All errors are independent, with the standard deviations of [Errors]:
//
//   - the position of each port, the same in all three directions, and its
//     facing, about the two axes square to it, which carries the fittings on it
//     and the tube along;
//   - where each bend comes to lie against its mark: the same as a cut;
//   - the turn of each bend; the roll of each bend after the first;
//   - the radius of the former and the springback, the same in all bends.
//
// Bends are started at marks made from the near end before forming. So a bend
// that turns too far, or on a larger radius, takes its tube from the straight
// after it, and the next mark stays where it is along the tube.
//
// # How it is worked out
//
// To first order: each error is a small screw (a turn about a line and a shift)
// of all that comes after it, seen at the far stop. The covariances of these add
// up (Paul, Robot Manipulators, 1981, ch. 4, differential relationships; the law
// of propagation of errors). What is left after easing is linear in them, so its
// distribution is normal.
//
// The chance is the integral of that normal over the region where the tube
// seats: along each of a fixed set of directions out of the middle the region is
// one interval, whose part of a normal in k dimensions is known in closed form;
// the mean over the directions is the integral. There are at most five
// dimensions and mostly two.
//
// # Worked by hand
//
// One bend of 90 degrees with a leg of 100 mm from its end to the far stop, all
// errors none but the turn's of 1 degree: the leg swings about the centre of the
// bend, and the far end comes to lie 100·π/180 = 1.75 mm aside and 1 degree
// askew, both in the plane of the bend. It is no longer: the swing carries it
// on by R·π/180, and the longer arc takes as much of the leg. Sliding the near end takes the
// 1.75 mm away; the degree stays, half in each socket. Where each gives 1
// degree, the tube seats up to 2 degrees: with a standard deviation of 1, in 95
// of 100 (94 here: sliding is not quite free).
//
// Lengths are millimetres and angles degrees in every exported field. The
// package reads no files and knows no plan.
package budget

import (
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

// Errors is how well a person works: one standard deviation of each.
type Errors struct {
	Port       float64       // position of a port in each of three directions, mm
	Facing     float64       // of a port about each of two axes, degrees
	Cut        float64       // a cut, and a bend against its mark, mm
	Turn, Roll float64       // of each bend, degrees
	Radius     float64       // of the former, mm
	Springback [2][2]float64 // covariance of its fixed part in degrees and its percents
}

// Socket is one end of a tube as planned.
type Socket struct {
	Name     string     // of its port: "radiator.in"
	Port     mgl64.Vec3 // centre of the port's face
	Facing   mgl64.Vec3 // of the port, unit
	Stop     mgl64.Vec3 // where the tube's end rests when fully home
	Dir      mgl64.Vec3 // out of the socket, unit
	Sideways float64    // how far the tube may stand aside, mm; 0: not known, taken as [AssumedSideways]
	Degrees  float64    // how far askew; 0: not known, taken as [AssumedDegrees]
	Slack    float64    // how far the tube may stand back beyond its aim, mm
	Rotary   []Axis     // of fittings before the socket that turn freely; those beyond the first two of an end are taken as fixed
}

// Axis is a line in space.
type Axis struct {
	Through mgl64.Vec3
	Along   mgl64.Vec3 // unit
}

// Give of a socket nobody has measured: common practice for a ring in a groove.
const (
	AssumedSideways = 0.3 // mm
	AssumedDegrees  = 1.0
)

// Job is one tube to look at.
type Job struct {
	Tube   bends.Formed
	Ends   [2]Socket // near and far: first and last stop
	Errors Errors
}

// Miss is standard deviations at one socket. Index 0 of a pair lies in the plane
// of the bend nearest to the socket, index 1 square to that plane; of a straight
// tube both are any two.
type Miss struct {
	Sideways [2]float64 // mm
	Degrees  [2]float64 // askew in that plane, and out of it
	Length   float64    // too long or too short, mm
}

// Aside is the standard deviation of the distance aside: the root of both squares, mm.
func (m Miss) Aside() float64 { return math.Hypot(m.Sideways[0], m.Sideways[1]) }

// Askew is the same of the angle, degrees.
func (m Miss) Askew() float64 { return math.Hypot(m.Degrees[0], m.Degrees[1]) }

// Budget is how a tube will come out.
type Budget struct {
	AsBent  Miss    // at the far socket, the near end true in its own
	Eased   [2]Miss // left at the near and the far socket after easing; Length is of each leg, before it is trimmed
	Chance  float64 // that it seats at the first try, 0 to 1
	Largest []Part  // what the miss after easing hangs on most: two, fewer where there are fewer
}

// Worst is what easing leaves in the worse socket, of the distance and of the
// angle each by itself.
func (b Budget) Worst() Miss {
	m := b.Eased[0]
	if b.Eased[1].Aside() > m.Aside() {
		m.Sideways = b.Eased[1].Sideways
	}
	if b.Eased[1].Askew() > m.Askew() {
		m.Degrees = b.Eased[1].Degrees
	}
	m.Length = max(m.Length, b.Eased[1].Length)
	return m
}

// Part is one contributor.
type Part struct {
	What           string  // "turn of bend 2", "position of radiator.in"
	Share          float64 // of the squares of what the sockets must give, 0 to 1
	ChanceIfHalved float64 // were its standard deviation half of what it is
}
