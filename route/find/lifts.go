package find

import (
	"cmp"
	"math"
	"slices"
)

// mostFittings is how many fittings a straight may have before each socket:
// beyond it a chain leaks and leans more than a bend ever would.
const mostFittings = 3

// lift is a handful of extenders and how far they bring the port forward.
type lift struct {
	fits  kits
	total float64 // mm
	price float64
}

// liftsUpTo are the sums of up to this many extenders, by total, the empty one
// first.
func (s *side) liftsUpTo(most int) []lift { return s.lifts[max(most, 0)] }

// nothing is the lift of no extender.
var nothing = []lift{{}}

// sumsOf lists every length that up to most extenders add up to, the cheapest
// way to each.
func sumsOf(extenders kits, most int) []lift {
	list := []lift{{}}
	from := 0
	for range most {
		to := len(list)
		for _, l := range list[from:to] {
			for _, fit := range extenders {
				list = append(list, lift{append(l.fits[:len(l.fits):len(l.fits)], fit), l.total + fit.Length, l.price + fit.Price})
			}
		}
		from = to
	}
	return cheapestLifts(list)
}

// cheapestLifts keeps one lift of each total: the fewest fittings, then the
// lowest price.
func cheapestLifts(list []lift) []lift {
	slices.SortStableFunc(list, func(a, b lift) int {
		return cmp.Or(cmp.Compare(microns(a.total), microns(b.total)), cmp.Compare(len(a.fits), len(b.fits)), cmp.Compare(a.price, b.price))
	})
	return slices.CompactFunc(list, func(a, b lift) bool { return microns(a.total) == microns(b.total) })
}

// between cuts sorted lifts down to those of a total from lo to hi.
func liftsBetween(list []lift, lo, hi float64) []lift {
	from, _ := slices.BinarySearchFunc(list, lo, func(l lift, x float64) int { return cmp.Compare(l.total, x) })
	to := from
	for to < len(list) && list[to].total <= hi {
		to++
	}
	return list[from:to]
}

// reachWithin gives for which y the vector r + y·b is no longer than most:
// from lo to hi; false when for none. b of no length says nothing about y, and
// then only 0 is worth trying.
func reachWithin(r, b vec, most float64) (lo, hi float64, ok bool) {
	b2 := b.Dot(b)
	if b2 < nearParallel*nearParallel {
		return -sameSpot, sameSpot, r.Len() <= most
	}
	mid := -r.Dot(b) / b2
	gap := r.Add(b.Mul(mid)).Len()
	if gap > most {
		return 0, 0, false
	}
	half := math.Sqrt((most*most-gap*gap)/b2) + sameSpot
	return mid - half, mid + half, true
}
