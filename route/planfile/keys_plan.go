package planfile

import (
	"github.com/go-gl/mathgl/mgl64"
	"gopkg.in/yaml.v3"

	"tubewright/route"
)

// Format is the number of the plan format this package reads and writes.
const Format = 1

// formatKey stands first in every file and has no field of its own.
func formatKey[T any](must bool) key[T] {
	return key[T]{
		name: "format", doc: "the number of the file format, 1", must: must,
		always: everywhere[T], shape: shape{kind: "format"},
		read: func(s spot, n *yaml.Node, _ *T) {
			if v, ok := number(n); !ok || v != Format {
				s.in("format").bad(n, "must be 1, but "+says(n), "Write format: 1; a file of a newer format needs a newer program.")
			}
		},
		write: func(form, *T, *T) (*item, bool) { return numberItem(Format, 1), true },
	}
}

func unitsChoice() codec[route.Units] { return choice(route.Millimetres, route.Inches) }

var caseKeys = record[mgl64.Vec3]{
	keys: []key[mgl64.Vec3]{
		keyOf("size", "the free space [x, y, z]", func(v *mgl64.Vec3) *mgl64.Vec3 { return v }, vector(length(over))).needed(),
	},
}

var planKeys = record[route.Plan]{
	keys: []key[route.Plan]{
		formatKey[route.Plan](true),
		keyOf("name", "what the machine is called; left out: the file's name", func(p *route.Plan) *string { return &p.Name }, title[string]()),
		keyOf("units", "mm or in: of every length in this file", func(p *route.Plan) *route.Units { return &p.Units }, unitsChoice()).shown(everywhere),
		keyOf("case", "the free space inside the case", func(p *route.Plan) *mgl64.Vec3 { return &p.Case }, caseKeys.codec()).needed(),
		keyOf("tube", "the tube of all runs that name none", func(p *route.Plan) *string { return &p.Tube }, reference("tube", tubeNames)),
		keyOf("clear", "least gap between a tube or collar and anything it does not join", func(p *route.Plan) *float64 { return &p.Clear }, length(noLess)).shown(everywhere),
		keyOf("tubes", "tubes of your own, or changed entries of the catalogue", func(p *route.Plan) *[]route.Tube { return &p.Tubes }, tubes(true)),
		keyOf("fittings", "fittings of your own, or changed entries of the catalogue", func(p *route.Plan) *[]route.Fitting { return &p.Fittings }, fittings(true)),
		keyOf("parts", "what stands in the case", func(p *route.Plan) *[]route.Part { return &p.Parts }, parts()),
		keyOf("runs", "the tubes asked for, from port to port", func(p *route.Plan) *[]route.Run { return &p.Runs }, runs()),
		keyOf("weigh", "what a good run is to you, in mm of tube", func(p *route.Plan) *route.Weigh { return &p.Weigh }, weighKeys.codec()),
		keyOf("errors", "your own hand: one standard deviation of each", func(p *route.Plan) *route.Errors { return &p.Errors }, errorKeys.codec()),
		keyOf("stock", "lengths one can buy", func(p *route.Plan) *[]route.Stock { return &p.Stock }, stock()),
		keyOf("offcuts", "lengths of a tube already on the shelf", func(p *route.Plan) *[]route.Offcuts { return &p.Offcuts }, offcuts()),
		keyOf("saw", "what cutting costs in length", func(p *route.Plan) *route.Saw { return &p.Saw }, sawKeys.codec()),
		keyOf("keep_over", "an offcut shorter than this is waste", func(p *route.Plan) *float64 { return &p.KeepOver }, length(noLess)),
		keyOf("spares", "extra blanks to cut", func(p *route.Plan) *route.Spares { return &p.Spares }, spareKeys.codec()),
		keyOf("build", "how many of this machine", func(p *route.Plan) *int { return &p.Build }, whole(1, 10_000)),
		keyOf("on_hand", "fittings already on the shelf", func(p *route.Plan) *[]route.OnHand { return &p.OnHand }, onHand()),
		keyOf("pictures", "photos or drawings that lie under a look in the window; they count for nothing that is cut", func(p *route.Plan) *[]route.Picture { return &p.Pictures }, pictures()),
	},
}

var catalogueKeys = record[route.Catalogue]{
	keys: []key[route.Catalogue]{
		formatKey[route.Catalogue](false),
		{
			name: "units", doc: "mm or in", shape: unitsChoice().shape,
			read:  func(spot, *yaml.Node, *route.Catalogue) {}, // taken beforehand
			write: func(form, *route.Catalogue, *route.Catalogue) (*item, bool) { return nil, true },
		},
		keyOf("tubes", "tubes by name", func(c *route.Catalogue) *[]route.Tube { return &c.Tubes }, tubes(false)),
		keyOf("fittings", "fittings by name", func(c *route.Catalogue) *[]route.Fitting { return &c.Fittings }, fittings(false)),
		keyOf("parts", "parts by name of their kind", func(c *route.Catalogue) *[]route.Part { return &c.Parts }, kinds()),
	},
}
