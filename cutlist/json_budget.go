package cutlist

import "tubewright/bends/budget"

// jsonBudget is how a tube will come out: standard deviations at its far socket
// as bent, what easing leaves in the worse socket, and the chance to seat.
type jsonBudget struct {
	Sideways number     `json:"sideways"` // mm
	Degrees  number     `json:"degrees"`
	Length   number     `json:"length"` // mm
	Eased    jsonEased  `json:"eased"`
	Chance   number     `json:"chance"` // 0 to 1
	Largest  []jsonPart `json:"largest"`
}

type jsonEased struct {
	Sideways number `json:"sideways"` // mm
	Degrees  number `json:"degrees"`
}

type jsonPart struct {
	What   string `json:"what"`
	Share  number `json:"share"`            // 0 to 1
	Halved number `json:"chance_if_halved"` // 0 to 1
}

func budgetJSON(b budget.Budget) *jsonBudget {
	return &jsonBudget{
		Sideways: number(b.AsBent.Aside()), Degrees: number(b.AsBent.Askew()), Length: number(b.AsBent.Length),
		Eased:  jsonEased{number(b.Worst().Aside()), number(b.Worst().Askew())},
		Chance: number(b.Chance),
		Largest: each(b.Largest, func(p budget.Part) jsonPart {
			return jsonPart{p.What, number(p.Share), number(p.ChanceIfHalved)}
		}),
	}
}

// jsonSpare is the spares of one kind of tube that a chance asks for.
type jsonSpare struct {
	Tube     string `json:"tube"`
	Bent     int    `json:"bent"`
	Straight int    `json:"straight"`
	Chance   number `json:"chance"` // 0 to 1
	Why      string `json:"why"`
}

func spareJSON(s Spare) jsonSpare {
	return jsonSpare{s.Tube, s.Bent, s.Straight, number(s.Chance), s.Why}
}
