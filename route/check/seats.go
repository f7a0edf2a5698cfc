package check

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

const (
	// leastWindow is the least range of cut lengths that is one, mm: finer than any saw.
	leastWindow = 0.01
	// seatNoise is rounding of where a tube's end rests, mm, and which way it
	// leaves, degrees.
	seatNoise = 0.001
)

// checkSeats tells of runs whose sockets leave no safe window of lengths, and
// of tubes that do not sit in their sockets.
func (r *referee) checkSeats() {
	for i := range r.runs {
		if r.runs[i].made {
			continue // see checkMade
		}
		r.checkWindow(&r.runs[i])
		for end := range 2 {
			r.checkSeat(&r.runs[i], end)
		}
	}
}

func (r *referee) checkWindow(run *laidRun) {
	a, b := run.ends[0].Socket, run.ends[1].Socket
	window := a.Insertion.Play() + b.Insertion.Play()
	spare := window - a.SeatGap - b.SeatGap
	room := run.formed.Developed - a.Insertion.Full - b.Insertion.Full
	switch {
	case room < -Rounding:
		r.tellWindow(run, room,
			fmt.Sprintf("The tube of run %s is %s from stop to stop, and its sockets take %s and %s of it.",
				run.name, r.length(run.formed.Developed), r.length(a.Insertion.Full), r.length(b.Insertion.Full)),
			fmt.Sprintf("Move its ports %s farther apart, or put shorter fittings between them.", r.enough(-room)))
	case window < leastWindow:
		r.tellWindow(run, window,
			fmt.Sprintf("The sockets of run %s leave no window of lengths: their full and least insertion differ by %s.", run.name, r.length(window)),
			"Give the least insertion that is safe, from the socket's drawing, or take other sockets.")
	case spare < -Rounding:
		r.tellWindow(run, spare,
			fmt.Sprintf("The seat gaps of run %s take its tube %s below the shortest safe length.", run.name, r.length(-spare)),
			fmt.Sprintf("Make the seat gaps %s smaller.", r.enough(-spare)))
	}
}

func (r *referee) tellWindow(run *laidRun, measure float64, what, fix string) {
	at, _ := run.stop(0)
	r.tell(Finding{Code: WindowMissed, Runs: []string{run.name}, Measure: measure, Unit: "mm", What: what, Fix: fix}.at(at))
}

// checkSeat tells of a tube's end that misses its stop, or leaves its socket
// askew, by more than the socket gives.
func (r *referee) checkSeat(run *laidRun, end int) {
	corners := run.formed.Corners
	if len(corners) < 2 {
		return
	}
	first, next := corners[0], corners[1]
	if end == 1 {
		first, next = corners[len(corners)-1], corners[len(corners)-2]
	}
	stop, dir := run.stop(end)
	give := run.ends[end].Socket.Give
	off := first.Sub(stop)
	along := off.Dot(dir)
	aside := off.Sub(dir.Mul(along)).Len()
	if turn := askew(dir, next.Sub(first)); turn > give.Degrees+seatNoise {
		r.tellAskew(run, end, turn, give.Degrees)
	}
	if miss := max(math.Abs(along), aside-give.Sideways); miss > seatNoise {
		r.tellSeat(run, end, miss)
	}
}

// askew is the angle between two directions in degrees.
func askew(a, b mgl64.Vec3) float64 {
	return mgl64.RadToDeg(math.Atan2(a.Cross(b).Len(), a.Dot(b)))
}

func (r *referee) tellAskew(run *laidRun, end int, turn, give float64) {
	at, _ := run.stop(end)
	r.tell(Finding{
		Code: WindowMissed, Runs: []string{run.name}, Measure: turn, Unit: "deg",
		What: fmt.Sprintf("The tube of run %s leaves its socket on %s %s askew, and the socket gives %s.",
			run.name, run.ends[end].Port.Ref, route.Degrees(turn), route.Degrees(give)),
		Fix: "Put the corner nearest to it in line with the port, or turn the tube there with an elbow.",
	}.at(at))
}

func (r *referee) tellSeat(run *laidRun, end int, miss float64) {
	at, _ := run.stop(end)
	r.tell(Finding{
		Code: WindowMissed, Runs: []string{run.name}, Measure: -miss, Unit: "mm",
		What: fmt.Sprintf("The tube of run %s ends %s off the stop of its socket on %s.", run.name, r.length(miss), run.ends[end].Port.Ref),
		Fix:  "Solve the run again, or move the drawn end to the stop.",
	}.at(at))
}
