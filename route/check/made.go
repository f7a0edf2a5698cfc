package check

import (
	"fmt"
	"strings"

	"tubewright/route"
	"tubewright/route/made"
)

// MadeNoLonger is the code of a tube that is made and does not fit what is now
// known of its ports.
const MadeNoLonger Code = "made-no-longer-fits"

// checkMade tells of tubes that are made and fit no longer between their ports
// as they are now known. Of a tube that is made only this is asked of its ends:
// it was there when it fitted.
func (r *referee) checkMade() {
	for i := range r.runs {
		if !r.runs[i].made {
			continue
		}
		run, _ := r.plan.FindRun(r.runs[i].name)
		seat, err := made.Sit(r.plan, run)
		if err == nil && !seat.Fits() {
			r.tellMade(seat)
		}
	}
}

func (r *referee) tellMade(s made.Seat) {
	measure, unit, what, end := s.Excess()
	port := s.Laid[end].Port.Ref
	f := Finding{
		Code: MadeNoLonger, Runs: []string{s.Run}, Parts: []string{port.Part}, Measure: measure, Unit: unit,
		What: fmt.Sprintf("The tube made for run %s no longer fits: %s.", s.Run, r.missOf(s, measure, what, end)),
		Fix:  fmt.Sprintf("Make it again: say so of run %s, and it is planned anew. Or measure %s once more.", s.Run, port),
	}
	if s.Trimmed {
		f.Fix = "Trim " + r.trims(s.Trim) + ", and record its new length."
	}
	r.tell(f.at(s.Laid[end].Stop.At))
}

// missOf says by how much a tube misses.
func (r *referee) missOf(s made.Seat, measure float64, what string, end int) string {
	on := s.Laid[end].Port.Ref.String()
	give := s.Laid[end].Socket.Give
	switch what {
	case "long":
		return fmt.Sprintf("it is %s too long to go home in its socket on %s", r.length(measure), on)
	case "short":
		return fmt.Sprintf("it ends %s short of the least insertion in its socket on %s", r.length(measure), on)
	case "sideways":
		return fmt.Sprintf("it stands %s beside the line of its socket on %s, which gives %s", r.length(s.Ends[end].Sideways), on, r.length(give.Sideways))
	}
	return fmt.Sprintf("it leaves its socket on %s %s askew, and the socket gives %s", on, route.Degrees(s.Ends[end].Degrees), route.Degrees(give.Degrees))
}

// trims words what to take off.
func (r *referee) trims(trim [2]float64) string {
	var words []string
	for end, name := range []string{"A", "B"} {
		if trim[end] > 0 {
			words = append(words, fmt.Sprintf("%s off its end %s", r.length(trim[end]), name))
		}
	}
	return strings.Join(words, " and ")
}
