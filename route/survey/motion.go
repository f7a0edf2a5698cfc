package survey

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"
	"gonum.org/v1/gonum/mat"

	"tubewright/route"
)

// Motion is how a part has moved from where the plan has it.
type Motion struct {
	By    mgl64.Vec3 // shift of the middle of its measured ports, mm
	Angle float64    // about Axis by the right-hand rule, degrees; 0: only shifted
	Axis  mgl64.Vec3 // unit; zero where Angle is 0
	At    mgl64.Vec3 // the part's place then
	Turn  mgl64.Vec3 // and its turn, as plans write it
	Left  float64    // the worst of what the motion leaves unexplained, mm
}

// fitted is the motion that takes points nearest to others by the least squares:
// their middles together and, when it may turn, the rotation of Kabsch (1976).
// What the points do not fix (the turn of two points about their line) stays as
// it was.
func fitted(part route.Part, was, is []mgl64.Vec3, turns bool) Motion {
	from, to := middle(was), middle(is)
	spin := mgl64.Ident3()
	if turns {
		spin = kabsch(was, is, from, to)
	}
	m := Motion{By: to.Sub(from)}
	old := route.Turned(part.Turn)
	m.Turn = part.Turn
	if m.Angle, m.Axis = angleOf(spin); m.Angle > 0 {
		m.Turn = anglesOf(spin.Mul3(old))
	}
	m.At = to.Sub(route.Turned(m.Turn).Mul3x1(old.Transpose().Mul3x1(from.Sub(part.At))))
	for i := range m.At {
		m.At[i] = hundredth(m.At[i])
	}
	whole := route.Turned(m.Turn).Mul3(old.Transpose())
	for i := range was {
		there := whole.Mul3x1(was[i].Sub(part.At)).Add(m.At)
		m.Left = math.Max(m.Left, there.Sub(is[i]).Len())
	}
	return m
}

func middle(points []mgl64.Vec3) (sum mgl64.Vec3) {
	for _, p := range points {
		sum = sum.Add(p)
	}
	return sum.Mul(1 / float64(len(points)))
}

// hold is how strongly a turn that no port asks about stays as it was, in parts
// of what the ports ask.
const hold = 1e-6

// kabsch is the rotation that takes the points about one middle nearest to those
// about another. A little of the identity is mixed in, so that a turn the points
// leave open is none.
func kabsch(was, is []mgl64.Vec3, from, to mgl64.Vec3) mgl64.Mat3 {
	h := mat.NewDense(3, 3, nil)
	size := 0.0
	for n := range was {
		p, q := was[n].Sub(from), is[n].Sub(to)
		size += p.Len() * q.Len()
		for i := range 3 {
			for j := range 3 {
				h.Set(i, j, h.At(i, j)+q[i]*p[j])
			}
		}
	}
	for i := range 3 {
		h.Set(i, i, h.At(i, i)+hold*size+1e-12)
	}
	var svd mat.SVD
	if !svd.Factorize(h, mat.SVDFull) {
		return mgl64.Ident3()
	}
	var u, v, r mat.Dense
	svd.UTo(&u)
	svd.VTo(&v)
	flip := mat.NewDiagDense(3, []float64{1, 1, math.Copysign(1, mat.Det(&u)*mat.Det(&v))})
	r.Product(&u, flip, v.T())
	out := mgl64.Mat3{}
	for i := range 3 {
		for j := range 3 {
			out.Set(i, j, r.At(i, j))
		}
	}
	return out
}

// noSpin is the turn below which there is none, degrees: a tenth of what is written.
const noSpin = 0.005

// angleOf is a rotation's angle in degrees and its axis.
func angleOf(m mgl64.Mat3) (angle float64, axis mgl64.Vec3) {
	twice := mgl64.Vec3{m.At(2, 1) - m.At(1, 2), m.At(0, 2) - m.At(2, 0), m.At(1, 0) - m.At(0, 1)}
	angle = mgl64.RadToDeg(math.Atan2(twice.Len()/2, (m.Trace()-1)/2))
	if angle < noSpin {
		return 0, mgl64.Vec3{}
	}
	if twice.Len() < 1e-9 { // half a turn: no port is measured that far off
		return angle, mgl64.Vec3{0, 1, 0}
	}
	return angle, twice.Normalize()
}

// anglesOf gives the turn about x, then y, then z that makes a rotation, to a
// hundredth of a degree. Where y is a quarter turn, x takes all of the rest.
func anglesOf(m mgl64.Mat3) mgl64.Vec3 {
	const quarter = 1 - 1e-9
	var a, b, c float64
	switch s := -m.At(2, 0); {
	case s > quarter:
		a, b = math.Atan2(m.At(0, 1), m.At(1, 1)), math.Pi/2
	case s < -quarter:
		a, b = math.Atan2(-m.At(0, 1), m.At(1, 1)), -math.Pi/2
	default:
		a, b, c = math.Atan2(m.At(2, 1), m.At(2, 2)), math.Asin(s), math.Atan2(m.At(1, 0), m.At(0, 0))
	}
	return mgl64.Vec3{hundredth(mgl64.RadToDeg(a)), hundredth(mgl64.RadToDeg(b)), hundredth(mgl64.RadToDeg(c))}
}

func hundredth(v float64) float64 { return math.Round(v*100)/100 + 0 }

// words say the motion in a sentence's tail: "shifted by 0.2, 5.1, 0.0 mm and
// turned 2.1° about 0 0 1".
func (m Motion) words(u route.Units) string {
	text := fmt.Sprintf("shifted by %s, %s, %s (x, y, z)", u.Text(m.By[0]), u.Text(m.By[1]), u.TextUnit(m.By[2]))
	if m.Angle > 0 {
		text += fmt.Sprintf(" and turned %s about the direction %s", route.Degrees(m.Angle), FacingText(roundedAxis(m.Axis)))
	}
	return text
}

func roundedAxis(v mgl64.Vec3) mgl64.Vec3 {
	for i := range v {
		v[i] = math.Round(v[i]*100)/100 + 0
	}
	return v
}
