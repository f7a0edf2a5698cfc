package planfile

import (
	"slices"

	"github.com/go-gl/mathgl/mgl64"
	"gopkg.in/yaml.v3"

	"tubewright/route"
)

var point = vector(length(anyNumber))

// boxKeys and cylinderKeys describe the two solids.
var boxKeys = record[route.Solid]{
	layout: always[route.Solid](flow),
	check:  checkBox,
	keys: []key[route.Solid]{
		keyOf("from", "lower corner [x, y, z] in the part's own frame", func(b *route.Solid) *mgl64.Vec3 { return &b.From }, point).needed(),
		keyOf("to", "upper corner [x, y, z] in the part's own frame", func(b *route.Solid) *mgl64.Vec3 { return &b.To }, point).needed(),
	},
}

var cylinderKeys = record[route.Solid]{
	layout: always[route.Solid](flow),
	check:  checkCylinder,
	keys: []key[route.Solid]{
		keyOf("from", "one end of the axis [x, y, z]", func(b *route.Solid) *mgl64.Vec3 { return &b.From }, point).needed(),
		keyOf("to", "the other end of the axis [x, y, z]", func(b *route.Solid) *mgl64.Vec3 { return &b.To }, point).needed(),
		keyOf("radius", "of the cylinder", func(b *route.Solid) *float64 { return &b.Radius }, length(over)).needed(),
	},
}

func checkBox(s spot, n *yaml.Node, g given, b *route.Solid) {
	if !g.sound("from", "to") {
		return
	}
	for i, axis := range []string{"x", "y", "z"} {
		if b.To[i]-b.From[i] < sameNumber {
			s.bad(g.place(n, "to"), "has no size along "+axis+": it goes from "+figures(b.From[i], s.factor)+" to "+figures(b.To[i], s.factor),
				"Give the lower corner under from and the upper one under to.")
			return
		}
	}
}

func checkCylinder(s spot, n *yaml.Node, g given, c *route.Solid) {
	if g.sound("from", "to") && c.To.Sub(c.From).Len() < sameNumber {
		s.bad(g.place(n, "to"), "has an axis of no length", "Give the middles of its two flat ends under from and to.")
	}
}

// solids is the list of solids of a part: each a mapping with one key.
func solids() codec[[]route.Solid] { return listOf[[]route.Solid](solid(), block) }

func solid() codec[route.Solid] {
	box, cylinder := boxKeys.codec(), cylinderKeys.codec()
	c := codec[route.Solid]{
		read: readSolid(box, cylinder),
		write: func(f form, v, base route.Solid) *item {
			f.based = false
			if v.Box {
				return &item{kind: table, rows: []row{{key: "box", value: box.write(f, v, base)}}}
			}
			return &item{kind: table, rows: []row{{key: "cylinder", value: cylinder.write(f, v, base)}}}
		},
		same: func(a, b route.Solid) bool {
			return a.Box == b.Box && point.same(a.From, b.From) && point.same(a.To, b.To) && alike(a.Radius, b.Radius)
		},
	}
	c.shape = shape{kind: "one of", keys: []shapeKey{{name: "box", doc: "a block", shape: box.shape}, {name: "cylinder", doc: "a round solid with flat ends", shape: cylinder.shape}}}
	return c
}

func readSolid(box, cylinder codec[route.Solid]) func(s spot, n *yaml.Node, into *route.Solid) {
	return func(s spot, n *yaml.Node, into *route.Solid) {
		all := s.pairs(n)
		if len(all) != 1 && mayHold(n) {
			s.bad(n, "must be one box or one cylinder", "Write - box: {from: [x, y, z], to: [x, y, z]} or - cylinder: {from: ..., to: ..., radius: ...}.")
			return
		}
		for _, p := range all {
			switch p.key.Value {
			case "box":
				into.Box = true
				box.read(s.in("box"), p.value, into)
			case "cylinder":
				cylinder.read(s.in("cylinder"), p.value, into)
			default:
				s.unknownKey(p.key, []string{"box", "cylinder"})
			}
		}
	}
}

var portKeys = record[route.Port]{
	layout: always[route.Port](flow),
	keys: []key[route.Port]{
		keyOf("at", "middle of its face [x, y, z] in the part's own frame", func(q *route.Port) *mgl64.Vec3 { return &q.At }, point).needed(),
		keyOf("facing", "out of the part: +x, -x, +y, -y, +z, -z or a vector", func(q *route.Port) *mgl64.Vec3 { return &q.Facing }, facing()).needed(),
		keyOf("thread", "its thread, such as G1/4; left out: takes any", func(q *route.Port) *string { return &q.Thread }, label[string]()),
		keyOf("flow", "which way the coolant goes: in, out or any", func(q *route.Port) *route.Flow { return &q.Flow }, flowChoice()),
		keyOf("known_from", originDoc, func(q *route.Port) *route.KnownFrom { return &q.KnownFrom }, choice(route.Typical, route.Drawing, route.Measured)),
	},
}

func flowChoice() codec[route.Flow] { return choice(route.In, route.Out, route.Any) }

func ports() codec[[]route.Port] {
	return register[route.Port]{
		what: "port", name: func(q *route.Port) *string { return &q.Name }, each: portKeys.codec(), dotless: true,
	}.codec()
}

// placeKeys are the keys of a part in a plan that one in the catalogue lacks.
var placeKeys = []key[route.Part]{
	keyOf("kind", "a part of the catalogue to take solids, ports and the rest from", func(k *route.Part) *string { return &k.Kind }, reference("kind of part", kindNames)),
	keyOf("at", "where the part's own origin goes [x, y, z]; left out: the case's", func(k *route.Part) *mgl64.Vec3 { return &k.At }, point).shown(everywhere),
	keyOf("turn", "degrees about x, then y, then z", func(k *route.Part) *mgl64.Vec3 { return &k.Turn }, vector(count(anyNumber))),
}

var thingKeys = []key[route.Part]{
	keyOf("stack", "a radiator with its fans, in place of solids and ports; what is left out is the kind's", func(k *route.Part) *route.Stack { return &k.Stack }, stackKeys.codec()),
	keyOf("solids", "what it is made of: boxes and cylinders", func(k *route.Part) *[]route.Solid { return &k.Solids }, solids()),
	keyOf("ports", "its ports by name", func(k *route.Part) *[]route.Port { return &k.Ports }, ports()),
	keyOf("passages", "pairs of ports the coolant links inside the part", func(k *route.Part) *[][2]string { return &k.Passages }, listOf[[][2]string](passage(), flow)),
	keyOf("metals", "metals that touch the coolant", func(k *route.Part) *[]string { return &k.Metals }, listOf[[]string](title[string](), flow)),
	keyOf("volume", "litres inside", func(k *route.Part) *float64 { return &k.Volume }, count(noLess)),
	keyOf("known_from", originDoc, func(k *route.Part) *route.KnownFrom { return &k.KnownFrom }, choice(route.Typical, route.Drawing, route.Measured)),
}

func passage() codec[[2]string] {
	return codec[[2]string]{
		read: func(s spot, n *yaml.Node, into *[2]string) {
			if n.Kind != yaml.SequenceNode || len(n.Content) != 2 {
				s.bad(n, "must name two ports [one, other], but "+saysList(n), "Write it as [in, out].")
				return
			}
			for i, c := range n.Content {
				if v, ok := s.text(c); ok {
					into[i] = v
				}
			}
		},
		write: func(_ form, v, _ [2]string) *item {
			return &item{kind: list, layout: flow, list: []*item{textItem(v[0]), textItem(v[1])}}
		},
		same:  func(a, b [2]string) bool { return a == b },
		shape: shape{kind: "list", each: &shape{kind: "name"}, least: 2, most: 2},
	}
}

// checkPart looks at the stack, and at the passages once every port is known.
func checkPart(s spot, _ *yaml.Node, g given, k *route.Part) {
	checkStack(s, g, k)
	part, list := *k, g.value["passages"]
	if list == nil {
		return
	}
	s.after(func() {
		names, sure := portsOf(s.plan, part)
		for i, pair := range list.Content {
			s.in("passages").item(i).passes(pair, names, sure && g.sound("ports"))
		}
	})
}

// passes checks one passage of a part with these ports.
func (s spot) passes(pair *yaml.Node, ports []string, sure bool) {
	if len(pair.Content) != 2 {
		return // told already
	}
	for _, end := range pair.Content {
		if sure && end.Kind == yaml.ScalarNode {
			s.isPort(end, "", end.Value, ports)
		}
	}
	if one, other := pair.Content[0], pair.Content[1]; one.Value == other.Value && one.Kind == yaml.ScalarNode {
		s.bad(pair, "links a port to itself", "Name the two ports the coolant goes between.")
	}
}

func parts() codec[[]route.Part] {
	keys := slices.Concat(placeKeys, thingKeys)
	return register[route.Part]{
		what: "part", name: func(k *route.Part) *string { return &k.Name }, dotless: true,
		each: record[route.Part]{keys: keys, check: checkPart}.codec(),
	}.codec()
}

func kinds() codec[[]route.Part] {
	return register[route.Part]{
		what: "part", name: func(k *route.Part) *string { return &k.Name }, dotless: true,
		each: record[route.Part]{keys: thingKeys, check: checkPart}.codec(),
	}.codec()
}
