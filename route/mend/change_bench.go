package mend

import (
	"fmt"
	"slices"

	"tubewright/route"
)

// Former bends a tube on a former of another radius, in every run made of it.
type Former struct {
	Tube        string
	Radius, Was float64 // to the centreline, mm
}

// Apply gives the plan with the tube's radius changed; a tube of the catalogue
// becomes one of the plan's own.
func (f Former) Apply(plan route.Plan) (route.Plan, error) {
	tube, ok := plan.FindTube(f.Tube)
	if !ok {
		return route.Plan{}, &MissingError{"tube", f.Tube}
	}
	plan = plan.Clone()
	tube.Radius = f.Radius
	i := slices.IndexFunc(plan.Tubes, func(t route.Tube) bool { return t.Name == f.Tube })
	if i < 0 {
		plan.Tubes = append(plan.Tubes, tube)
	} else {
		plan.Tubes[i] = tube
	}
	return plan, nil
}

// Words is "Use a 28 mm former for petg-16-12 instead of one of 32 mm.".
func (f Former) Words(units route.Units) string {
	return fmt.Sprintf("Use a %s former for %s instead of one of %s.", length(units, f.Radius), f.Tube, length(units, f.Was))
}

// Kind is "former".
func (Former) Kind() string { return "former" }

func (f Former) work() float64 { return formerWork + formerRate*max(f.Was-f.Radius, f.Radius-f.Was) }

// AddStock lists one more length of a tube to buy.
type AddStock struct {
	Tube   string
	Length float64 // mm
}

// Apply gives the plan with the length among its stock, without a price.
func (a AddStock) Apply(plan route.Plan) (route.Plan, error) {
	if _, ok := plan.FindTube(a.Tube); !ok {
		return route.Plan{}, &MissingError{"tube", a.Tube}
	}
	plan = plan.Clone()
	plan.Stock = append(plan.Stock, route.Stock{Tube: a.Tube, Length: a.Length})
	return plan, nil
}

// Words is "List a stock length of petg-16-12 of 1300 mm, if it is sold.".
func (a AddStock) Words(units route.Units) string {
	return fmt.Sprintf("List a stock length of %s of %s, if you can buy it.", a.Tube, length(units, a.Length))
}

// Kind is "add-stock".
func (AddStock) Kind() string { return "add-stock" }

func (AddStock) work() float64 { return stockWork }

// LiftLimit takes more bars of a stock length than the plan allows.
type LiftLimit struct {
	Tube   string
	Length float64 // mm
	Most   int     // bars
	Was    int
}

// Apply gives the plan with the limit raised.
func (l LiftLimit) Apply(plan route.Plan) (route.Plan, error) {
	i := slices.IndexFunc(plan.Stock, func(s route.Stock) bool { return s.Tube == l.Tube && s.Length == l.Length })
	if i < 0 {
		return route.Plan{}, &MissingError{"stock", l.Tube}
	}
	plan = plan.Clone()
	plan.Stock[i].Most = l.Most
	return plan, nil
}

// Words is "Allow 6 bars of petg-16-12 of 1000 mm instead of 4.".
func (l LiftLimit) Words(units route.Units) string {
	return fmt.Sprintf("Allow %d bars of %s of %s instead of %d.", l.Most, l.Tube, length(units, l.Length), l.Was)
}

// Kind is "lift-limit".
func (LiftLimit) Kind() string { return "lift-limit" }

func (l LiftLimit) work() float64 { return limitWork + limitRate*float64(l.Most-l.Was) }

// Clearance asks for less room between things: a compromise, offered only when
// nothing else was found.
type Clearance struct{ Clear, Was float64 } // mm

// Apply gives the plan with the smaller gap.
func (c Clearance) Apply(plan route.Plan) (route.Plan, error) {
	plan = plan.Clone()
	plan.Clear = c.Clear
	return plan, nil
}

// Words says that it is a compromise.
func (c Clearance) Words(units route.Units) string {
	return fmt.Sprintf("As a compromise, ask for %s clear everywhere instead of %s: less room for what is off by hand.",
		length(units, c.Clear), length(units, c.Was))
}

// Kind is "clear".
func (Clearance) Kind() string { return "clear" }

func (Clearance) work() float64 { return clearWork }
