// Package nest solves one-dimensional cutting stock: which pieces to saw from
// which bars so that the bought bars cost least; among those, fewest bars; then
// the longest remnant worth keeping. It says whether that is proven, and if not
// how far off it may be.
//
// Every length is a whole number of hundredths of a millimetre and every price
// a whole number of hundredths of the plan's money, so all arithmetic that
// decides is exact. A piece takes its length plus one kerf, unless it ends
// exactly at the bar's end. The package knows no plan and no tube.
package nest

// Job is what to cut from what.
type Job struct {
	Pieces   []Piece
	Stock    []Bar // bought
	Offcuts  []Bar // on hand, free, at most Most of each
	Kerf     int   // lost per cut
	KeepOver int   // a remnant shorter than this is waste
}

// Piece is a length wanted Count times.
type Piece struct{ Length, Count int }

// Bar is a length to cut from.
type Bar struct {
	Length, Price int
	Most          int // 0: as many as you like (stock), one (offcut)
}

// Pattern is Count bars cut alike.
type Pattern struct {
	Count  int
	Offcut bool
	Bar    int   // index into Job.Stock or Job.Offcuts
	Pieces []int // lengths, longest first
	Left   int   // after the last cut
}

// Result is the best plan found.
type Result struct {
	Patterns []Pattern
	Bars     int // of all kinds
	Bought   int
	Cost     int // of the bought
	Bound    int // proven: no plan costs less (has fewer bought bars where no stock has a price)
	Proven   bool
}
