package nest

import (
	"errors"
	"fmt"
	"slices"
)

// Limits that keep every sum inside 64 bits and a job inside a coffee break.
const (
	// maxLength is 10 km in hundredths of a millimetre, and more than any
	// 31-bit length given in hundredths.
	maxLength = 1 << 40
	// maxPrice is two million of the plan's money in hundredths.
	maxPrice = 1 << 28
	// maxPieces holds the sum of all lengths and of all costs below 2^62.
	maxPieces = 1 << 14
	// maxKinds of different piece lengths, or of bars: the linear program keeps
	// a square of them.
	maxKinds = 2000
)

var (
	atMostLength = fmt.Sprintf("at most %d", maxLength)
	upToPrice    = fmt.Sprintf("from 0 to %d", maxPrice)
)

// check gives every number of the job that cannot be, joined.
func (j Job) check() error {
	if err := j.checkAmount(); err != nil {
		return err
	}
	var bad []error
	need := func(ok bool, have int, need, what string, args ...any) {
		if !ok {
			bad = append(bad, &NumberError{fmt.Sprintf(what, args...), have, need})
		}
	}
	for i, p := range j.Pieces {
		need(p.Length > 0, p.Length, "above 0", "piece %d: length", i+1)
		need(p.Length <= maxLength, p.Length, atMostLength, "piece %d: length", i+1)
		need(p.Count > 0, p.Count, "above 0", "piece %d: count", i+1)
	}
	for i, b := range j.Stock {
		checkBar(need, b, "stock", i)
		need(b.Price > 0 || !j.Priced(), b.Price, "above 0, since other stock has a price", "stock %d: price", i+1)
	}
	for i, b := range j.Offcuts {
		checkBar(need, b, "offcut", i)
	}
	need(j.Kerf >= 0 && j.Kerf <= maxLength, j.Kerf, "0 or more, and shorter than a bar", "kerf")
	need(j.KeepOver >= 0, j.KeepOver, "0 or more", "least remnant to keep")
	return errors.Join(bad...)
}

func checkBar(need func(bool, int, string, string, ...any), b Bar, kind string, i int) {
	need(b.Length > 0, b.Length, "above 0", "%s %d: length", kind, i+1)
	need(b.Length <= maxLength, b.Length, atMostLength, "%s %d: length", kind, i+1)
	need(b.Price >= 0 && b.Price <= maxPrice, b.Price, upToPrice, "%s %d: price", kind, i+1)
	need(b.Most >= 0, b.Most, "0 or more", "%s %d: limit", kind, i+1)
}

func (j Job) checkAmount() error {
	pieces := 0
	for _, p := range j.Pieces {
		pieces += max(0, min(p.Count, maxPieces+1))
		if pieces > maxPieces {
			return &TooManyError{"pieces", max(p.Count, pieces), maxPieces}
		}
	}
	if n := len(j.Stock) + len(j.Offcuts); n > maxKinds {
		return &TooManyError{"bars to choose from", n, maxKinds}
	}
	if n := len(mergePieces(j.Pieces)); n > maxKinds {
		return &TooManyError{"different lengths", n, maxKinds}
	}
	return nil
}

// tooLong gives the pieces no bar holds.
func (j Job) tooLong() error {
	longest := 0
	for _, b := range slices.Concat(j.Stock, j.Offcuts) {
		longest = max(longest, b.Length)
	}
	var over []Piece
	for _, p := range mergePieces(j.Pieces) {
		if p.Length > longest {
			over = append(over, p)
		}
	}
	if over == nil {
		return nil
	}
	return &TooLongError{over, longest}
}

// mergePieces adds up equal lengths and sorts, longest first.
func mergePieces(pieces []Piece) []Piece {
	sorted := slices.Clone(pieces)
	slices.SortStableFunc(sorted, func(a, b Piece) int { return b.Length - a.Length })
	merged := sorted[:0]
	for _, p := range sorted {
		if n := len(merged); n > 0 && merged[n-1].Length == p.Length {
			merged[n-1].Count += p.Count
		} else {
			merged = append(merged, p)
		}
	}
	return merged
}
