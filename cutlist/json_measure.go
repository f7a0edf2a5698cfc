package cutlist

import "tubewright/cutlist/measure"

type jsonThing struct {
	Of      measure.Of   `json:"of"`
	Name    string       `json:"name"`
	Runs    []string     `json:"runs"`
	Before  string       `json:"before,omitempty"`
	Numbers []jsonNumber `json:"numbers"`
}

type jsonNumber struct {
	Key   measure.Key `json:"key"`
	Name  string      `json:"name"`
	Value number      `json:"value"` // as the plan has it: only typical
	Unit  string      `json:"unit"`
	How   string      `json:"how"`
	Runs  []string    `json:"runs"`
}

func thingJSON(t measure.Thing) jsonThing {
	return jsonThing{t.Of, t.Name, full(t.Runs), t.Before, each(t.Numbers, func(n measure.Number) jsonNumber {
		return jsonNumber{n.Key, n.Name, number(n.Value), n.Unit, n.How, full(n.Runs)}
	})}
}
