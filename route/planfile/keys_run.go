package planfile

import (
	"fmt"

	"github.com/go-gl/mathgl/mgl64"
	"gopkg.in/yaml.v3"

	"tubewright/route"
)

var runKeys = record[route.Run]{
	check: checkRun,
	keys: []key[route.Run]{
		keyOf("from", "the port it starts at, as part.port", func(r *route.Run) *route.PortRef { return &r.From }, portRef()).needed(),
		keyOf("to", "the port it ends at, as part.port", func(r *route.Run) *route.PortRef { return &r.To }, portRef()).needed(),
		keyOf("tube", "its tube; left out: the plan's", func(r *route.Run) *string { return &r.Tube }, reference("tube", tubeNames)),
		keyOf("via", "corners the centreline must pass, in order", func(r *route.Run) *[]mgl64.Vec3 { return &r.Via }, listOf[[]mgl64.Vec3](point, flow)),
		keyOf("start", "fittings from the first port outward; left out: chosen for you", func(r *route.Run) *route.Chain { return &r.Start }, listOf[route.Chain](step(), flow)),
		keyOf("end", "fittings from the last port outward; left out: chosen for you", func(r *route.Run) *route.Chain { return &r.End }, listOf[route.Chain](step(), flow)),
		keyOf("way", "auto, straight, bent, or drawn: via is then the whole path", func(r *route.Run) *route.WayKind { return &r.Way }, wayChoice()),
		keyOf("pick", "name of the way to take when it is among those found", func(r *route.Run) *string { return &r.Pick }, label[string]()),
		keyOf("made", "tries at making its tube, the first one first; the last, if it fits, is a fact: the tube stays as it is", func(r *route.Run) *[]route.Attempt { return &r.Made }, attempts()),
	},
}

func wayChoice() codec[route.WayKind] {
	return choice(route.Auto, route.Straight, route.Bent, route.Drawn)
}

// checkRun asks for a tube, and for corners that differ.
func checkRun(s spot, n *yaml.Node, g given, r *route.Run) {
	run, whole := *r, s
	s.after(func() {
		if run.Tube == "" && s.plan.Tube == "" {
			whole.note(n, "it has no tube, and the plan names none for all runs", "Add tube: to the run or to the plan.")
		}
	})
	if !g.sound("via") {
		return
	}
	for i, p := range run.Via {
		for j, q := range run.Via[:min(i, maxTwins)] {
			if point.same(p, q) {
				s.in("via").bad(g.value["via"].Content[i], fmt.Sprintf("passes one point twice: corners %d and %d are the same", j+1, i+1), "Take one of the two away.")
				break
			}
		}
	}
}

// maxTwins bounds how many corners each corner is held against.
const maxTwins = 1000

// step is one fitting of a chain: its name, or {use: name, roll: degrees}.
func step() codec[route.Step] {
	name := reference("fitting", fittingNames)
	keys := record[route.Step]{keys: []key[route.Step]{
		keyOf("use", "the fitting", func(p *route.Step) *string { return &p.Fitting }, name).needed(),
		keyOf("roll", "where an offset or elbow points, degrees about the way", func(p *route.Step) *float64 { return &p.Roll }, count(bound{least: -360, most: 360})),
	}}
	return codec[route.Step]{
		read: func(s spot, n *yaml.Node, into *route.Step) {
			if n.Kind != yaml.MappingNode {
				name.read(s, n, &into.Fitting)
				return
			}
			keys.read(s, n, into)
			for _, p := range (spot{reader: &reader{}}).pairs(n) {
				into.Rolled = into.Rolled || p.key.Value == "roll"
			}
		},
		write: writeStep,
		same: func(a, b route.Step) bool {
			return a.Fitting == b.Fitting && a.Rolled == b.Rolled && (!a.Rolled || alike(a.Roll, b.Roll))
		},
		shape: shape{kind: "either", either: []shape{name.shape, keys.shape()}},
	}
}

func writeStep(f form, v, _ route.Step) *item {
	use := textItem(v.Fitting)
	if !v.Rolled {
		use.holds = holdsStep(use.holds)
		return use
	}
	return &item{kind: table, layout: flow, rows: []row{{key: "use", value: use}, {key: "roll", value: numberItem(v.Roll, 1)}}}
}

// holdsStep takes {use: name} for the plain name.
func holdsStep(name func(*yaml.Node) bool) func(*yaml.Node) bool {
	return func(n *yaml.Node) bool {
		if n.Kind == yaml.MappingNode && len(n.Content) == 2 && n.Content[0].Value == "use" {
			n = n.Content[1]
		}
		return name(n)
	}
}

func runs() codec[[]route.Run] {
	return register[route.Run]{
		what: "run", name: func(r *route.Run) *string { return &r.Name }, each: runKeys.codec(),
	}.codec()
}
