package loop

import (
	"math"
	"strings"

	"tubewright/route"
)

// WetLimit is the largest difference of anodic index, in volts, between metals
// that share a wet or harsh place (anodic index rule, from memory).
const WetLimit = 0.15

// sameVolts is rounding of differences of the table's hundredths.
const sameVolts = 1e-9

// anodicIndex is the anodic index in volts after the table of the MIL-STD-889
// family, from memory, good to 0.05 V. Metals it does not list are not judged.
var anodicIndex = map[string]float64{
	"silver":    0.15,
	"nickel":    0.30, // plate
	"copper":    0.35,
	"brass":     0.40,
	"bronze":    0.40,
	"stainless": 0.50, // 18-8 steel, passive
	"tin":       0.65,
	"steel":     0.85,
	"aluminium": 0.90, // wrought and cast alloys
	"aluminum":  0.90, //nolint:misspell // as it is spelt in some plans
	"zinc":      1.25,
}

// AnodicIndex gives a metal's anodic index in volts.
func AnodicIndex(metal string) (volts float64, known bool) {
	volts, known = anodicIndex[strings.ToLower(metal)]
	return volts, known
}

// Metal is a metal the coolant of a loop touches and where: a part or a run's tube.
type Metal struct {
	Name  string
	Part  string // empty: the tube of Run
	Run   string
	Index float64 // V
}

// Clash is two metals that share a loop and should not.
type Clash struct {
	Noble, Base Metal   // Base is the one eaten
	Volts       float64 // difference of their anodic indices
}

// Worst gives the two metals of a loop farthest apart, when they are farther
// apart than [WetLimit]; of several equal ones the first in the plan's order.
func Worst(plan route.Plan, l Loop) (Clash, bool) {
	metals := metalsOf(plan, l)
	var worst Clash
	for _, a := range metals {
		for _, b := range metals {
			if v := b.Index - a.Index; v > worst.Volts+sameVolts {
				worst = Clash{a, b, v}
			}
		}
	}
	return worst, worst.Volts > WetLimit+sameVolts
}

// metalsOf lists the metals of a loop: its parts', then its tubes'.
func metalsOf(plan route.Plan, l Loop) (list []Metal) {
	for _, name := range l.Parts {
		part, _ := plan.FindPart(name)
		for _, m := range plan.Whole(part).Metals {
			list = appendKnown(list, Metal{Name: m, Part: name})
		}
	}
	for _, name := range l.Runs {
		run, _ := plan.FindRun(name)
		if tube, ok := plan.TubeOf(run); ok {
			list = appendKnown(list, Metal{Name: tube.Material, Run: name})
		}
	}
	return list
}

func appendKnown(list []Metal, m Metal) []Metal {
	index, known := AnodicIndex(m.Name)
	if !known {
		return list
	}
	m.Index = math.Round(index*100) / 100
	return append(list, m)
}
