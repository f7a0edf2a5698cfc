package route

import (
	"slices"

	"github.com/go-gl/mathgl/mgl64"
)

// Attempt is one try at making a run's tube. One that fits says how the tube
// was made, so that it can be found again whatever moves around it: corners,
// radius and both chains. What is not written down is zero.
type Attempt struct {
	Cut     float64      // finished length along the centreline as it came out, mm
	Blank   float64      // sawn for it, mm
	CutFrom float64      // length of the bar it was sawn from, mm
	Fits    bool         // it goes in
	Wrong   string       // what was wrong with it: "2 mm long"
	Date    string       // as typed
	Radius  float64      // centreline radius of its bends, mm; 0: it has none
	Corners []mgl64.Vec3 // its centreline in the case from stop to stop, both included
	Start   Chain        // fittings from the From port outward, all rolls settled
	End     Chain        // the same at the To port
}

// AsMade gives the attempt that holds: the last one, if it fits and says how
// it was made. Such a run is a fact; its tube is neither searched nor cut again.
func (r Run) AsMade() (Attempt, bool) {
	if len(r.Made) == 0 {
		return Attempt{}, false
	}
	last := r.Made[len(r.Made)-1]
	return last, last.Fits && len(last.Corners) > 1
}

// MadeCount is how many tubes of a run are there: the attempts that fit, when
// the last one does; one for each machine.
func (r Run) MadeCount() (n int) {
	if _, ok := r.AsMade(); !ok {
		return 0
	}
	for _, a := range r.Made {
		if a.Fits {
			n++
		}
	}
	return n
}

func cloneAttempt(a Attempt) Attempt {
	a.Corners, a.Start, a.End = slices.Clone(a.Corners), slices.Clone(a.Start), slices.Clone(a.End)
	return a
}
