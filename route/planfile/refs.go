package planfile

import (
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"tubewright/route"
)

// reference is the name of something described elsewhere. It is looked up when
// the whole file has been read.
func reference(what string, names func(p *route.Plan) []string) codec[string] {
	c := title[string]()
	named := c.read
	c.read = func(s spot, n *yaml.Node, into *string) {
		before := len(s.problems)
		if named(s, n, into); len(s.problems) == before {
			s.refersTo(n, what, n.Value, names)
		}
	}
	return c
}

// refersTo checks, at the end, that a name is known.
func (s spot) refersTo(n *yaml.Node, what, name string, names func(p *route.Plan) []string) {
	s.after(func() {
		if known := s.known(what, names); !known.has(name) {
			s.bad(n, "names no "+what+": there is no "+strconv.Quote(short(name)), offer(what, name, known.list))
		}
	})
}

// names is all that may be named of one sort.
type names struct {
	list []string
	at   map[string]int // where in the list
}

// has reports whether there is such a name.
func (all names) has(name string) bool {
	_, ok := all.at[name]
	return ok
}

// known gives the names of a sort, listed once for the whole file.
func (r *reader) known(what string, list func(p *route.Plan) []string) names {
	if all, ok := r.names[what]; ok {
		return all
	}
	all := names{list: list(r.plan), at: map[string]int{}}
	for i, name := range all.list {
		all.at[name] = i
	}
	if r.names == nil {
		r.names = map[string]names{}
	}
	r.names[what] = all
	return all
}

func shelfOf(p *route.Plan) route.Catalogue {
	if p.Catalogue == nil {
		return route.Catalogue{}
	}
	return *p.Catalogue
}

// namesOf lists names, the plan's own first.
func namesOf[T any](name func(T) string, lists ...[]T) []string {
	var out []string
	for _, l := range lists {
		for _, x := range l {
			out = append(out, name(x))
		}
	}
	return out
}

func tubeNames(p *route.Plan) []string {
	return namesOf(func(t route.Tube) string { return t.Name }, p.Tubes, shelfOf(p).Tubes)
}

func fittingNames(p *route.Plan) []string {
	return namesOf(func(f route.Fitting) string { return f.Name }, p.Fittings, shelfOf(p).Fittings)
}

func kindNames(p *route.Plan) []string {
	return namesOf(func(k route.Part) string { return k.Name }, shelfOf(p).Parts)
}

func partNames(p *route.Plan) []string {
	return namesOf(func(k route.Part) string { return k.Name }, p.Parts)
}

// noDot refuses a dot in the name of a part or a port.
func (s spot) noDot(n *yaml.Node) {
	if strings.Contains(n.Value, ".") {
		s.note(n, "the name holds a dot", "Take the dot out: runs name a port as part.port.")
	}
}

// portRef is a port as runs name it: part.port.
func portRef() codec[route.PortRef] {
	return codec[route.PortRef]{
		read: func(s spot, n *yaml.Node, into *route.PortRef) {
			v, ok := s.text(n)
			part, port, dotted := strings.Cut(v, ".")
			switch {
			case ok && (!dotted || part == "" || port == ""):
				s.bad(n, "must name a port as part.port, but "+says(n), "Write the part, a dot and its port, such as pump.out.")
			case ok:
				*into = route.PortRef{Part: part, Port: port}
				s.after(func() { s.findPort(n, part, port) })
			}
		},
		write: func(_ form, v, _ route.PortRef) *item { return textItem(v.String()) },
		same:  func(a, b route.PortRef) bool { return a == b },
		shape: shape{kind: "reference"},
	}
}

// findPort notes a port nobody has. A part of an unknown kind is told once,
// where it is described, and its ports are taken on trust.
func (s spot) findPort(n *yaml.Node, partName, port string) {
	known := s.known("part", partNames)
	if !known.has(partName) {
		s.bad(n, "names no part: there is no "+strconv.Quote(short(partName)), offer("part", partName, known.list))
		return
	}
	part := s.plan.Parts[known.at[partName]]
	if ports, sure := portsOf(s.plan, part); sure {
		s.isPort(n, " on "+partName, port, ports)
	}
}

func (s spot) isPort(n *yaml.Node, where, port string, ports []string) {
	for _, p := range ports {
		if p == port {
			return
		}
	}
	s.bad(n, "names no port: there is no "+strconv.Quote(short(port))+where, offer("port", port, ports))
}

// portsOf lists the ports of a part with those of its kind. It is not sure of
// a part whose kind is unknown.
func portsOf(p *route.Plan, part route.Part) (names []string, sure bool) {
	kind, ok := p.FindKind(part.Kind)
	if part.Kind != "" && !ok {
		return nil, false
	}
	of := func(q route.Port) string { return q.Name }
	if part.Stack.Given() || kind.Stack.Given() {
		return namesOf(of, p.Whole(part).Ports), true
	}
	return namesOf(of, part.Ports, kind.Ports), true
}
