package bends

// Cut is how long to cut the tube for its two sockets. The square is what
// squaring its ends costs once a piece, mm. Ends that leave less than nothing
// make a negative length, which the checks of a plan report; here it is only
// arithmetic.
func (f Formed) Cut(e Ends, square float64) Cut {
	c := Cut{
		Aim:      f.Developed - e.SeatGap[0] - e.SeatGap[1],
		Shortest: f.Developed - e.Play[0] - e.Play[1],
		Longest:  f.Developed,
	}
	c.Blank = f.Tube.Blank(c.Aim, square, len(f.Bends) > 0)
	return c
}

// Blank is what to saw from the bar for a finished length, mm: the square more,
// and for a bent tube a trim at each end.
func (t Tube) Blank(finished, square float64, bent bool) float64 {
	if bent {
		finished += 2 * t.Trim
	}
	return finished + square
}

// FormTo is how far to turn the former for a bend of this turn, in degrees: the
// bend opens by the springback when it comes off.
func (s Springback) FormTo(turn float64) float64 { return turn*(1+s.Percent/100) + s.Degrees }
