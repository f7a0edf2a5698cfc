// Package nest solves one-dimensional cutting stock: which pieces to saw from
// which bars so that the bought bars cost least; among those, fewest bars; then
// the longest remnant worth keeping. It says whether that is proven, and if not
// how far off it may be.
//
// Every length is a whole number of hundredths of a millimetre and every price
// a whole number of hundredths of the plan's money, so all arithmetic that
// decides is exact. A piece takes its length plus one kerf, unless it ends
// exactly at the bar's end: n pieces fit a bar when
//
//	Σ lengths + (n − 1)·kerf ≤ length of the bar
//
// and what is left after the last cut is the bar less lengths less n kerfs, or
// nothing where that falls below zero. The package knows no plan and no tube.
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
	Length, Price int // Price: of the stock, on all or on none; an offcut's does not count
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

// Result is the best plan found. Patterns are in sawing order: offcuts first,
// then the bar with the longest pieces.
type Result struct {
	Patterns []Pattern
	Bars     int // of all kinds
	Bought   int
	Cost     int // of the bought; their number where no stock has a price
	Bound    int // proven: no plan costs less (has fewer bought bars where no stock has a price)
	Proven   bool
	// Certificate is what proves Bound; nil where Bound is 0 or pieces stay uncut.
	Certificate *Certificate
}

// Length is the whole length of the bar a pattern is cut from.
func (j Job) Length(p Pattern) int { return j.bar(p).Length }

func (j Job) bar(p Pattern) Bar {
	if p.Offcut {
		return j.Offcuts[p.Bar]
	}
	return j.Stock[p.Bar]
}

// Priced reports whether the stock has prices, so that costs are money.
func (j Job) Priced() bool {
	for _, b := range j.Stock {
		if b.Price > 0 {
			return true
		}
	}
	return false
}
