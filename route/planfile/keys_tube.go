package planfile

import (
	"gopkg.in/yaml.v3"

	"tubewright/bends"
	"tubewright/bends/trial"
	"tubewright/route"
)

func origin() codec[route.KnownFrom] {
	c := choice(route.Typical, route.Drawing, route.Measured)
	c.same = sameOrigin(route.Typical)
	c.write = func(f form, v, base route.KnownFrom) *item {
		if v == "" && base != "" {
			v = route.Typical // silence would keep the base's word
		}
		return writeText(f, v, base)
	}
	return c
}

const originDoc = "who vouches for the numbers: typical, drawing or measured"

var springbackKeys = record[bends.Springback]{
	layout: always[bends.Springback](flow),
	keys: []key[bends.Springback]{
		keyOf("degrees", "how far any bend opens, degrees", func(b *bends.Springback) *float64 { return &b.Degrees }, count(bound{least: 0, most: 90})),
		keyOf("percent", "how far a bend opens, percent of its turn", func(b *bends.Springback) *float64 { return &b.Percent }, count(bound{least: 0, most: 100})),
	},
}

var tubeKeys = record[route.Tube]{
	check: checkTube,
	keys: []key[route.Tube]{
		keyOf("material", "what it is made of: petg, acrylic, copper, brass, glass or another", func(t *route.Tube) *string { return &t.Material }, label[string]()),
		keyOf("od", "outside diameter", func(t *route.Tube) *float64 { return &t.OD }, length(over)),
		keyOf("id", "inside diameter", func(t *route.Tube) *float64 { return &t.ID }, length(over)),
		keyOf("radius", "centreline radius of the former in use; left out or 0: cannot be bent", func(t *route.Tube) *float64 { return &t.Radius }, length(noLess)),
		keyOf("least_radius", "refuse a bend tighter than this", func(t *route.Tube) *float64 { return &t.LeastRadius }, length(noLess)),
		keyOf("straight_between", "least straight between two bends: a property of the former and the grip", func(t *route.Tube) *float64 { return &t.StraightBetween }, length(noLess)),
		keyOf("straight_end", "least straight at an end: insertion, collar and grip", func(t *route.Tube) *float64 { return &t.StraightEnd }, length(noLess)),
		keyOf("springback", "how far a bend opens when it comes off the former", func(t *route.Tube) *bends.Springback { return &t.Springback }, springbackKeys.codec()),
		keyOf("trim", "left on each end of a bent tube and cut off after forming", func(t *route.Tube) *float64 { return &t.Trim }, length(noLess)),
		keyOf("test_bends", "test bends as measured, that radius and springback were worked out from", func(t *route.Tube) *[]trial.Bend { return &t.TestBends }, listOf[[]trial.Bend](testBendKeys.codec(), block)),
		keyOf("known_from", originDoc, func(t *route.Tube) *route.KnownFrom { return &t.KnownFrom }, origin()),
	},
}

// checkTube asks for what a tube cannot do without.
func checkTube(s spot, n *yaml.Node, g given, t *route.Tube) {
	s.missing(n, "a tube", g, []need{{key: "material", lacking: t.Material == ""}, {key: "od", lacking: t.OD == 0}, {key: "id", lacking: t.ID == 0}})
	if g.sound("od", "id") && t.ID >= t.OD && t.OD > 0 && t.ID > 0 {
		s.in("id").bad(g.place(n, "id"), "must be less than od, which is "+figures(t.OD, s.factor)+", but is "+figures(t.ID, s.factor), "Give the inside diameter here and the outside one under od.")
	}
	checkTestBends(s, g, t)
}

// checkTestBends asks that test bends say something a tube can have. How well the
// person measures stands elsewhere in the file.
func checkTestBends(s spot, g given, t *route.Tube) {
	list := g.value["test_bends"]
	if list == nil || len(t.TestBends) == 0 || !g.sound("test_bends", "od") || t.OD == 0 {
		return
	}
	tube, here := *t, s.in("test_bends")
	s.after(func() {
		if _, err := tube.Tried(s.plan.Errors); err != nil {
			at := list
			if i := trial.Which(err); i >= 0 {
				at = list.Content[i]
			}
			here.note(at, err.Error(), "Correct the reading or take that test bend out; what is used is the radius and the springback the tube states.")
		}
	})
}

// need is a key something cannot do without.
type need struct {
	key     string
	lacking bool
	form    string // how its value looks, where that helps
}

// missing notes all keys an entry lacks, in one problem.
func (s spot) missing(n *yaml.Node, what string, g given, needs []need) {
	var lacks []string
	for _, d := range needs {
		if d.lacking && g.sound(d.key) {
			lacks = append(lacks, d.key+d.form)
		}
	}
	if len(lacks) > 0 {
		s.note(n, what+" needs "+and(lacks), "Add "+and(lacks)+", or use the name of a catalogue entry to start from.")
	}
}

// and words a list: "a, b and c".
func and(words []string) string {
	out := ""
	for i, w := range words {
		switch {
		case i == 0:
			out = w
		case i == len(words)-1:
			out += " and " + w
		default:
			out += ", " + w
		}
	}
	return out
}

func always[T any](l layout) func(T) layout { return func(T) layout { return l } }

func tubes(base bool) codec[[]route.Tube] {
	reg := register[route.Tube]{
		what: "tube", name: func(t *route.Tube) *string { return &t.Name }, each: tubeKeys.codec(),
	}
	if base {
		reg.base = func(shelf *route.Catalogue, name string) (route.Tube, bool) {
			return route.Plan{Catalogue: shelf}.FindTube(name)
		}
	}
	return reg.codec()
}
