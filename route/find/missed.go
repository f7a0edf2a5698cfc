package find

import (
	"cmp"
	"math"
	"slices"
)

// sortMissed puts the nearest first: ways that can be formed and only hit
// something before those that cannot, then the least that lacks; lengths within
// a micron count as one and go by name.
func sortMissed(list []missed) {
	slices.SortStableFunc(list, func(a, b missed) int {
		return cmp.Or(cmp.Compare(unformed(a), unformed(b)), cmp.Compare(microns(a.hit.short), microns(b.hit.short)), cmp.Compare(a.name, b.name))
	})
}

// microns counts a length in mm in thousandths, for comparing without the last bit.
func microns(mm float64) float64 {
	if math.IsInf(mm, 0) {
		return mm
	}
	return math.Round(mm * 1000)
}

// unformed is 1 for a way that cannot be formed.
func unformed(m missed) int {
	if m.hit.what == "" {
		return 1
	}
	return 0
}

// nearer reports whether a came nearer than b.
func nearer(a, b missed) bool {
	return cmp.Or(cmp.Compare(unformed(a), unformed(b)), cmp.Compare(microns(a.hit.short), microns(b.hit.short))) < 0
}
