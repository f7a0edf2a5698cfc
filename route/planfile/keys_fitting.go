package planfile

import (
	"slices"

	"gopkg.in/yaml.v3"

	"tubewright/route"
)

var insertionKeys = record[route.Insertion]{
	layout: always[route.Insertion](flow),
	keys: []key[route.Insertion]{
		keyOf("full", "how deep the tube goes when fully home", func(i *route.Insertion) *float64 { return &i.Full }, length(over)),
		keyOf("least", "the least depth that is safe", func(i *route.Insertion) *float64 { return &i.Least }, length(over)),
	},
}

var collarKeys = record[route.Collar]{
	layout: always[route.Collar](flow),
	keys: []key[route.Collar]{
		keyOf("od", "outside diameter", func(c *route.Collar) *float64 { return &c.OD }, length(over)),
		keyOf("length", "from the port's face outward", func(c *route.Collar) *float64 { return &c.Length }, length(over)),
	},
}

var giveKeys = record[route.Give]{
	layout: always[route.Give](flow),
	keys: []key[route.Give]{
		keyOf("sideways", "how far a tube may stand aside in the socket", func(g *route.Give) *float64 { return &g.Sideways }, length(noLess)),
		keyOf("degrees", "how far a tube may stand askew in the socket, degrees", func(g *route.Give) *float64 { return &g.Degrees }, count(bound{least: 0, most: 90})),
	},
}

var bodyKeys = record[float64]{
	layout: always[float64](flow),
	keys: []key[float64]{
		keyOf("od", "outside diameter of the body", func(b *float64) *float64 { return b }, length(over)),
	},
}

// kindOf picks fittings of some kinds.
func kindOf(kinds ...route.FittingKind) func(*route.Fitting) bool {
	return func(f *route.Fitting) bool { return slices.Contains(kinds, f.Kind) }
}

var fittingKeys = record[route.Fitting]{
	check: checkFitting,
	layout: func(f route.Fitting) layout {
		if f.Kind == route.Socket {
			return block
		}
		return fit
	},
	keys: slices.Concat(fittingSorts, fittingSizes, fittingRest),
}

var fittingSorts = []key[route.Fitting]{
	keyOf("kind", "socket, extender, offset, elbow, tee, valve, coupler or plug", func(f *route.Fitting) *route.FittingKind { return &f.Kind },
		choice(route.Socket, route.Extender, route.Offset, route.Elbow, route.Tee, route.Valve, route.Coupler, route.Plug)),
	keyOf("od", "outside diameter of the tube a socket or coupler takes", func(f *route.Fitting) *float64 { return &f.OD }, length(over)),
	keyOf("thread", "its thread, such as G1/4; left out: fits any", func(f *route.Fitting) *string { return &f.Thread }, label[string]()),
}

var fittingSizes = []key[route.Fitting]{
	keyOf("stop", "socket: from the port's face to where the tube's end rests when fully home", func(f *route.Fitting) *float64 { return &f.Stop }, length(noLess)).spelled(kindOf(route.Socket)),
	keyOf("insertion", "socket: how deep it takes its tube", func(f *route.Fitting) *route.Insertion { return &f.Insertion }, insertionKeys.codec()),
	keyOf("seat_gap", "socket: left between the tube's end and the stop when cut to the aim", func(f *route.Fitting) *float64 { return &f.SeatGap }, length(noLess)),
	keyOf("collar", "socket, coupler: what stands around the tube", func(f *route.Fitting) *route.Collar { return &f.Collar }, collarKeys.codec()),
	keyOf("length", "along the way", func(f *route.Fitting) *float64 { return &f.Length }, length(over)),
	keyOf("sideways", "offset: how far the way moves aside", func(f *route.Fitting) *float64 { return &f.Sideways }, length(over)),
	keyOf("turn", "elbow: how far the way turns, degrees", func(f *route.Fitting) *float64 { return &f.Turn }, count(bound{least: 0, most: 179, above: true})),
	keyOf("legs", "elbow: [in, out], each from the face to the corner", func(f *route.Fitting) *[2]float64 { return &f.Legs }, legs(length(over))),
	keyOf("rotary", "offset, elbow: turns freely while fitted", func(f *route.Fitting) *bool { return &f.Rotary }, truth()),
	keyOf("rolls", "offset or elbow that does not turn: the rolls it can end up in, degrees", func(f *route.Fitting) *[]float64 { return &f.Rolls }, listOf[[]float64](count(bound{least: -360, most: 360}), flow)),
	keyOf("side", "tee: from the way to the face of its side port", func(f *route.Fitting) *float64 { return &f.Side }, length(over)),
}

var fittingRest = []key[route.Fitting]{
	keyOf("body", "its body's outside diameter", func(f *route.Fitting) *float64 { return &f.Body }, bodyKeys.codec()),
	keyOf("bore", "the narrowest bore inside", func(f *route.Fitting) *float64 { return &f.Bore }, length(over)),
	keyOf("give", "socket: how far a tube may stand aside or askew", func(f *route.Fitting) *route.Give { return &f.Give }, giveKeys.codec()),
	keyOf("price", "of one, in your money", func(f *route.Fitting) *float64 { return &f.Price }, count(noLess)),
	keyOf("known_from", originDoc, func(f *route.Fitting) *route.KnownFrom { return &f.KnownFrom }, origin()),
}

// checkFitting asks for what its kind cannot do without.
func checkFitting(s spot, n *yaml.Node, g given, f *route.Fitting) {
	if f.Kind == "" {
		s.missing(n, "a fitting", g, []need{{key: "kind", lacking: true}})
		return
	}
	s.missing(n, article(f.Kind), g, needsOf(f, g))
	if in := f.Insertion; g.sound("insertion") && in.Least > in.Full && in.Full > 0 {
		s.in("insertion").bad(g.place(n, "insertion"), "has least "+figures(in.Least, s.factor)+" above full "+figures(in.Full, s.factor),
			"Least is the shallowest safe depth, full the deepest: swap them.")
	}
	if f.Rotary && len(f.Rolls) > 0 {
		s.in("rolls").bad(g.place(n, "rolls"), "is a list of fixed rolls, but the fitting is rotary", "Take rolls away, or write rotary: false.")
	}
}

func article(k route.FittingKind) string {
	if k == route.Extender || k == route.Offset || k == route.Elbow {
		return "an " + string(k)
	}
	return "a " + string(k)
}

// needsOf lists what a kind of fitting needs. A stop of 0 is a stop, so it
// counts as given when the file or the catalogue says so.
func needsOf(f *route.Fitting, g given) []need {
	long, body := need{"length", f.Length == 0, ""}, need{"body", f.Body == 0, ": {od}"}
	switch f.Kind {
	case route.Socket:
		return []need{
			{"od", f.OD == 0, ""},
			{"stop", f.Stop == 0 && !g.has("stop"), ""},
			{"insertion", f.Insertion.Full == 0 || f.Insertion.Least == 0, ": {full, least}"},
			{"collar", f.Collar.OD == 0 || f.Collar.Length == 0, ": {od, length}"},
		}
	case route.Offset:
		return []need{long, {"sideways", f.Sideways == 0, ""}, body}
	case route.Elbow:
		return []need{{"turn", f.Turn == 0, ""}, {"legs", f.Legs == [2]float64{}, ""}, body}
	case route.Tee:
		return []need{long, {"side", f.Side == 0, ""}, body}
	case route.Coupler:
		return []need{{"od", f.OD == 0, ""}, long}
	case route.Extender, route.Valve:
		return []need{long, body}
	case route.Plug: // it may be flush
	}
	return nil
}

func fittings(base bool) codec[[]route.Fitting] {
	reg := register[route.Fitting]{
		what: "fitting", name: func(f *route.Fitting) *string { return &f.Name }, each: fittingKeys.codec(),
	}
	if base {
		reg.base = func(shelf *route.Catalogue, name string) (route.Fitting, bool) {
			f, ok := route.Plan{Catalogue: shelf}.FindFitting(name)
			f.Rolls = slices.Clone(f.Rolls)
			return f, ok
		}
	}
	return reg.codec()
}
