package ui

import (
	"strconv"
	"strings"

	"tubewright/bends"
	"tubewright/route"
	"tubewright/route/find"
)

// count writes a number of things: "1 seal", "2 seals", "no seals".
func count(n int, one string) string {
	switch n {
	case 0:
		return "no " + many(one)
	case 1:
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many(one)
}

func many(one string) string {
	if rest, ok := strings.CutSuffix(one, "y"); ok && !strings.ContainsAny(rest[max(0, len(rest)-1):], "aeiou") {
		return rest + "ies"
	}
	return one + "s"
}

// money writes an amount in the plan's money, which has no name.
func money(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

// dotted joins facts on one line, leaving out empty ones.
func dotted(facts ...string) string {
	var said []string
	for _, f := range facts {
		if f != "" {
			said = append(said, f)
		}
	}
	return strings.Join(said, " · ")
}

// bendsOf says how many bends a tube has, and their turns when there are few.
func bendsOf(f bends.Formed) string {
	if len(f.Bends) == 0 {
		return "straight"
	}
	if len(f.Bends) > 3 {
		return count(len(f.Bends), "bend")
	}
	turns := make([]string, len(f.Bends))
	for i, b := range f.Bends {
		turns[i] = degrees(b.Turn)
	}
	return count(len(f.Bends), "bend") + " " + strings.Join(turns, ", ")
}

// degrees writes an angle without decimals where it has none: "90°", "22.5°".
func degrees(a float64) string { return strings.Replace(route.Degrees(a), ".0°", "°", 1) }

// chainOf names fittings from the port outward.
func chainOf(laid route.Laid) string {
	names := make([]string, len(laid.Bodies))
	for i, b := range laid.Bodies {
		names[i] = b.Fitting.Name
	}
	return strings.Join(names, " + ")
}

// priceOf says what a way's fittings cost; nothing when no price is known.
func priceOf(w find.Way) string {
	if w.Price == 0 {
		return ""
	}
	return money(w.Price)
}

// titleOf is what the window calls a plan: its name, and a star when changed.
func titleOf(name string, dirty bool) string {
	if name == "" {
		name = "Plan without a name"
	}
	if dirty {
		return name + " *"
	}
	return name
}
