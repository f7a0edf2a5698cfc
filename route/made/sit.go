package made

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
)

// End is how an end of a made tube sits in its socket.
type End struct {
	Gap      float64 // from the stop to the tube's end along the way out, mm; below 0: it would stand past the stop
	Sideways float64 // of the tube's end from the socket's line, mm
	Degrees  float64 // between the tube and the socket's line
}

// Seat is how a made tube sits between its ports as they are now known.
type Seat struct {
	Run     string
	Formed  bends.Formed  // the tube as made, from stop to stop, where it now stands best
	Laid    [2]route.Laid // the fittings on the ports as they now are
	Ends    [2]End
	Try     route.Attempt
	Strain  float64    // the worst of what its sockets are asked to give, in parts of what they give; up to 1 it fits
	Trim    [2]float64 // what to take off each end so that it fits, mm; zero where trimming does not help or is not needed
	Trimmed bool       // with Trim taken off it fits
}

// Fits reports whether both sockets take the tube as it is.
func (s Seat) Fits() bool { return s.Strain <= 1+strainNoise }

// strainNoise is rounding of a strain: a thousandth of what a socket gives.
const strainNoise = 1e-3

// Sit seats the tube of a run that is made between its ports as the plan has
// them now. The tube keeps its shape; it is turned and shifted so that the
// worst of what it asks of its two sockets (sideways and degrees against their
// give, the gap to the stop against insertion) is as small as can be. The error
// says why there is nothing to seat: *EntryError, or *route.ChainError of
// fittings that cannot be laid.
func Sit(plan route.Plan, run route.Run) (Seat, error) {
	try, ok := run.AsMade()
	if !ok {
		return Seat{}, &EntryError{run.Name, "no tube of it is made", "Record a try first."}
	}
	s := Seat{Run: run.Name, Try: try}
	for end, ref := range [2]route.PortRef{run.From, run.To} {
		port, ok := plan.FindPort(ref)
		if !ok {
			return Seat{}, &EntryError{run.Name, fmt.Sprintf("there is no port %s", ref), "Name a port of a part."}
		}
		laid, err := plan.Lay(port, settled([2]route.Chain{try.Start, try.End}[end]))
		if err != nil {
			return Seat{}, err
		}
		s.Laid[end] = laid
	}
	tube, _ := plan.TubeOf(run)
	if err := s.place(tube.Tube, plan.Saw.Square); err != nil {
		return Seat{}, err
	}
	return s, nil
}

// settled is a chain whose rolls all count.
func settled(c route.Chain) route.Chain {
	out := make(route.Chain, len(c))
	for i, step := range c {
		step.Rolled = true
		out[i] = step
	}
	return out
}

// AsFact is a tube for forming what is there already: the former it was bent on
// took it, so nothing is refused any more.
func AsFact(t bends.Tube, radius float64) bends.Tube {
	t.Radius, t.LeastRadius, t.StraightBetween, t.StraightEnd = radius, 0, 0, 0
	return t
}

// place finds where the tube stands best, and what trimming does.
func (s *Seat) place(tube bends.Tube, square float64) error {
	formed, err := bends.Form(AsFact(tube, s.Try.Radius), bends.Path{Corners: s.Try.Corners})
	if err != nil {
		return err
	}
	f := newFit(formed.Corners, s.Laid, s.spare(formed.Developed))
	f.settle()
	s.Ends, s.Strain = f.ends(), f.strain()
	if formed, err = bends.Form(formed.Tube, bends.Path{Corners: f.corners}); err != nil {
		return err
	}
	s.Formed = formed
	if !s.Fits() {
		s.tryTrim(f)
	}
	return nil
}

// spare is how far each end of the tube stands back from the stop it was made
// for: the seat gap, and of what the cut missed the aim by, half at each end.
func (s *Seat) spare(developed float64) (gap [2]float64) {
	total := developed - s.Try.Cut
	for end := range gap {
		gap[end] = s.Laid[end].Socket.SeatGap
	}
	off := (total - gap[0] - gap[1]) / 2
	return [2]float64{gap[0] + off, gap[1] + off}
}

// tryTrim looks whether the tube fits when its ends are cut back to the seat gap.
func (s *Seat) tryTrim(f *fit) {
	loose := *f
	loose.corners = append([]mgl64.Vec3{}, f.corners...)
	loose.slide = true
	loose.settle()
	if loose.strain() > 1+strainNoise {
		return
	}
	ends, long := loose.ends(), 0.0
	for end := range ends {
		long += s.Laid[end].Socket.SeatGap - ends[end].Gap
	}
	trim := [2]float64{}
	if len(f.corners) == 2 { // a straight one slides: either end will do
		trim[0] = math.Max(0, long)
	} else {
		for end := range ends {
			trim[end] = math.Max(0, s.Laid[end].Socket.SeatGap-ends[end].Gap)
		}
	}
	for end := range trim {
		trim[end] = math.Ceil(trim[end]*10-1e-6) / 10 // to the tenth that people saw to
	}
	if trim == [2]float64{} {
		return
	}
	short := loose
	short.slide = false
	short.gap = [2]float64{f.gap[0] + trim[0], f.gap[1] + trim[1]}
	short.settle()
	if short.strain() <= 1+strainNoise {
		s.Trim, s.Trimmed = trim, true
	}
}

// Excess is the worst miss: how far beyond what the sockets take, in mm or
// degrees, at which end, and what of: "long", "short", "sideways" or "askew".
func (s Seat) Excess() (measure float64, unit, what string, end int) {
	worst := -1.0
	for e, at := range s.Ends {
		socket := s.Laid[e].Socket
		play := socket.Insertion.Play()
		for _, m := range []struct {
			over, per  float64
			unit, what string
		}{
			{-at.Gap, play / 2, "mm", "long"},
			{at.Gap - play, play / 2, "mm", "short"},
			{at.Sideways - socket.Give.Sideways, socket.Give.Sideways, "mm", "sideways"},
			{at.Degrees - socket.Give.Degrees, socket.Give.Degrees, "deg", "askew"},
		} {
			if over := m.over / math.Max(m.per, leastGive); over > worst {
				worst, measure, unit, what, end = over, m.over, m.unit, m.what, e
			}
		}
	}
	return measure, unit, what, end
}
