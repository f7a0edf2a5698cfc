package find

import (
	"cmp"
	"math"
	"slices"
)

// sortMissed puts the nearest first; lengths within a micron count as one and
// go by name.
func sortMissed(list []missed) {
	slices.SortStableFunc(list, func(a, b missed) int {
		return cmp.Or(cmp.Compare(microns(a.hit.short), microns(b.hit.short)), cmp.Compare(a.name, b.name))
	})
}

// microns counts a length in mm in thousandths, for comparing without the last bit.
func microns(mm float64) float64 {
	if math.IsInf(mm, 0) {
		return mm
	}
	return math.Round(mm * 1000)
}
