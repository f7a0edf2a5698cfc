package cutlist

import (
	"slices"

	"tubewright/route"
	"tubewright/route/find"
)

type jsonWay struct {
	jsonTube
	Fittings []string `json:"fittings"`
	Seals    int      `json:"seals"`
	Price    number   `json:"price"`
	Miss     jsonMiss `json:"miss"`
	Reason   string   `json:"reason"`
}

type jsonMiss struct {
	MM      number `json:"mm"`
	Degrees number `json:"degrees"`
}

// WaysJSON writes the ways of a run, best first: the keys of a tube in the
// answer, and fittings (both chains, each from its port outward), seals, price,
// miss and reason. The saw is the plan's: it squares the blanks.
func WaysJSON(run string, ways []find.Way, saw route.Saw) ([]byte, error) {
	return indented(struct {
		Run  string    `json:"run"`
		Ways []jsonWay `json:"ways"`
	}{run, each(ways, func(w find.Way) jsonWay { return wayJSON(w, saw.Square) })})
}

func wayJSON(w find.Way, square float64) jsonWay {
	return jsonWay{
		jsonTube: tubeJSON("", w, w.Formed.Cut(w.Ends, square), w.Formed.Bench(w.Ends)),
		Fittings: full(slices.Concat(names(w.Start), names(w.End))),
		Seals:    w.Seals, Price: number(w.Price),
		Miss:   jsonMiss{number(w.Miss.Sideways), number(w.Miss.Degrees)},
		Reason: w.Reason,
	}
}
