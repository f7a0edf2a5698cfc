package session

import (
	"fmt"
	"slices"

	"tubewright/route"
)

// RangeError says that a count is outside what it may be.
type RangeError struct {
	What            string
	Got, Least, Max int
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("%s must be between %d and %d, not %d", e.What, e.Least, e.Max, e.Got)
}

// The most a plan may count: beyond any workshop, and small enough that no
// product of counts overflows.
const (
	mostOnHand = 100000
	mostBuild  = 1000
)

// SetOnHand says how many of an item lie on the shelf.
func (s *Session) SetOnHand(item string, count int) error {
	if count < 0 || count > mostOnHand {
		return &RangeError{"the count of " + item + " on hand", count, 0, mostOnHand}
	}
	old := onHand(s.history.plan(), item)
	if old == count {
		return nil
	}
	return s.Edit("Count "+item+" on hand", func(p route.Plan) route.Plan {
		p.OnHand = slices.DeleteFunc(p.OnHand, func(h route.OnHand) bool { return h.Item == item && count == 0 })
		i := slices.IndexFunc(p.OnHand, func(h route.OnHand) bool { return h.Item == item })
		switch {
		case i >= 0:
			p.OnHand[i].Count = count
		case count > 0:
			p.OnHand = append(p.OnHand, route.OnHand{Item: item, Count: count})
		}
		return p
	})
}

func onHand(p route.Plan, item string) int {
	for _, h := range p.OnHand {
		if h.Item == item {
			return h.Count
		}
	}
	return 0
}

// SetBuild says how many of the machine are built.
func (s *Session) SetBuild(count int) error {
	if count < 1 || count > mostBuild {
		return &RangeError{"the number of machines", count, 1, mostBuild}
	}
	if s.history.plan().Build == count {
		return nil
	}
	return s.Edit(fmt.Sprintf("Build %d", count), func(p route.Plan) route.Plan {
		p.Build = count
		return p
	})
}
