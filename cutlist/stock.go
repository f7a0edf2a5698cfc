package cutlist

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tubewright/cutlist/nest"
	"tubewright/route"
	"tubewright/route/check"
)

// usualLengths are the lengths in mm rigid tube is sold in (common practice);
// they stand in where a plan lists no stock for a tube.
var usualLengths = []int{500, 1000}

// rack is what one kind of tube is cut from.
type rack struct {
	stock, offcuts []nest.Bar
	notes          []check.Finding // what had to be assumed
}

// rackOf gives the stock and the offcuts of a tube. Where no stock is listed the
// usual lengths stand in, without price; stock without a price among stock with
// one counts at the dearest rate per length of the others.
func rackOf(plan route.Plan, tube string, runs []string) rack {
	var r rack
	listed := false
	for _, s := range plan.Stock {
		if s.Tube != tube {
			continue
		}
		listed = true
		if most, some := leftOf(plan, s); some {
			r.stock = append(r.stock, nest.Bar{Length: hundredths(s.Length), Price: hundredths(s.Price), Most: most})
		}
	}
	for _, o := range plan.Offcuts {
		for _, length := range o.Lengths {
			if o.Tube == tube {
				r.offcuts = append(r.offcuts, nest.Bar{Length: hundredths(length), Most: 1})
			}
		}
	}
	slices.SortFunc(r.offcuts, func(a, b nest.Bar) int { return cmp.Compare(a.Length, b.Length) })
	if !listed {
		r.assumeStock(plan, tube, runs)
	}
	r.assumePrices(plan, tube, runs)
	return r
}

func (r *rack) assumeStock(plan route.Plan, tube string, runs []string) {
	names := ""
	for i, length := range usualLengths {
		r.stock = append(r.stock, nest.Bar{Length: length * 100})
		if i > 0 {
			names += " and "
		}
		names += plan.Units.TextUnit(float64(length))
	}
	r.note(tube, runs,
		fmt.Sprintf("The plan lists no stock for %s; the usual lengths of %s are assumed, without a price.", tube, names),
		fmt.Sprintf("List under stock the lengths of %s you can buy, with their prices.", tube))
}

func (r *rack) assumePrices(plan route.Plan, tube string, runs []string) {
	rate := 0.0
	for _, b := range r.stock {
		rate = max(rate, float64(b.Price)/float64(b.Length))
	}
	for i, b := range r.stock {
		if rate == 0 || b.Price > 0 {
			continue
		}
		r.stock[i].Price = max(1, int(math.Ceil(rate*float64(b.Length)-sameCent)))
		length := plan.Units.TextUnit(whole(b.Length))
		r.note(tube, runs,
			fmt.Sprintf("The stock of %s %s long has no price; %.2f is assumed, the dearest rate of its other lengths.",
				tube, length, whole(r.stock[i].Price)),
			fmt.Sprintf("Give the price of %s at %s.", tube, length))
	}
}

// sameCent keeps a rounding of the rate from adding a hundredth of money: it is
// far above the noise of one product and far below a hundredth.
const sameCent = 1e-6

func (r *rack) note(tube string, runs []string, what, fix string) {
	r.notes = append(r.notes, check.Finding{
		Code: check.StockAssumed, Severity: check.SeverityOf(check.StockAssumed), Runs: runs, Parts: []string{}, What: what, Fix: fix,
	})
}

// empty reports whether there is nothing to cut from: all that the plan lists is
// used up.
func (r rack) empty() bool { return len(r.stock)+len(r.offcuts) == 0 }

// longest is the length of the longest bar, mm.
func (r rack) longest() float64 {
	longest := 0
	for _, b := range slices.Concat(r.stock, r.offcuts) {
		longest = max(longest, b.Length)
	}
	return whole(longest)
}
