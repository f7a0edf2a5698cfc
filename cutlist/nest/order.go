package nest

// Units are what an order counts lengths in.
type Units string

// The units an order can name; without one its lengths are in any unit, with
// two decimals.
const (
	AnyUnit     Units = ""
	Millimetres Units = "mm"
	Inches      Units = "in"
)

// Per is how many of a job's whole numbers make one unit: hundredths of a
// millimetre, millionths of an inch. So 1/64 in = 0.015625 in is a whole number
// and pieces that just fit still do.
func (u Units) Per() int {
	if u == Inches {
		return 1_000_000
	}
	return 100
}

// Order is a job as somebody writes it: in a unit, in text.
type Order struct {
	Job   Job // lengths in parts of the unit, see Units.Per; prices in hundredths
	Units Units
}

// Amount is a length of the job in the order's unit.
func (o Order) Amount(length int) Amount { return Amount{length, o.Units.Per()} }

// Keeps reports whether what a pattern leaves is worth keeping; where nobody says
// from which length on, nothing is.
func (j Job) Keeps(p Pattern) bool { return j.KeepOver > 0 && p.Left >= j.KeepOver }
