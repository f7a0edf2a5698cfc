package ui

import (
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// The six ways a port usually faces, as plan files write them.
var (
	facingWords = []string{"+x", "-x", "+y", "-y", "+z", "-z"}
	facingAxes  = []mgl64.Vec3{{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}}
)

// portOf is a port of a part as its own, to be changed: one that comes from the
// kind is copied first.
func portOf(p *route.Plan, part, port string) *route.Port {
	k := partOf(p, part)
	if i := slices.IndexFunc(k.Ports, func(q route.Port) bool { return q.Name == port }); i >= 0 {
		return &k.Ports[i]
	}
	for _, q := range p.Whole(*k).Ports {
		if q.Name == port {
			k.Ports = append(k.Ports, q)
			return &k.Ports[len(k.Ports)-1]
		}
	}
	return &route.Port{}
}

// ports is a group for each port, and the button for one more.
func (e editor) ports(k, whole route.Part) (groups []formGroup) {
	for i, q := range whole.Ports {
		groups = append(groups, e.port(k, i, q))
	}
	return append(groups, formGroup{title: "More ports", buttons: []button{
		{text: "Add a port", act: func() {
			e.press("Add a port to "+k.Name, func(p *route.Plan) { addPort(p, k.Name, newPort(whole)) })
		}},
		{text: "Add one by clicking", act: func() { e.click(k.Name) }},
	}})
}

// newPort is a port in the middle of the near face of a part.
func newPort(whole route.Part) route.Port {
	lo, hi := boundsOf(whole.Solids)
	at := lo.Add(hi).Mul(0.5)
	at[2] = hi[2]
	return route.Port{
		Name: freePort(whole, "port"), At: at, Facing: mgl64.Vec3{0, 0, 1}, Thread: "G1/4", Flow: route.Any,
	}
}

func freePort(whole route.Part, base string) string {
	name := base
	for n := 2; slices.ContainsFunc(whole.Ports, func(q route.Port) bool { return q.Name == name }); n++ {
		name = base + "-" + plainInt(n)
	}
	return name
}

func addPort(p *route.Plan, part string, q route.Port) {
	partOf(p, part).Ports = append(partOf(p, part).Ports, q)
}

// boundsOf is the box around solids in the part's own frame.
func boundsOf(solids []route.Solid) (lo, hi mgl64.Vec3) {
	for i, s := range solids {
		for axis := range 3 {
			a, b := min(s.From[axis], s.To[axis])-s.Radius, max(s.From[axis], s.To[axis])+s.Radius
			if i == 0 {
				lo[axis], hi[axis] = a, b
			}
			lo[axis], hi[axis] = min(lo[axis], a), max(hi[axis], b)
		}
	}
	return lo, hi
}

// port is the fields of the port at a place in the list: by that they are known,
// so that a new name leaves the others as they are.
func (e editor) port(k route.Part, i int, q route.Port) formGroup {
	// The fields show the port as it counts and write into the part's own.
	shown := e
	shown.plan = e.plan.Clone()
	own := slices.ContainsFunc(k.Ports, func(x route.Port) bool { return x.Name == q.Name })
	at := func(p *route.Plan) *route.Port { return portOf(p, k.Name, q.Name) }
	id := "port." + plainInt(i) + "."
	g := formGroup{title: "Port " + q.Name, fields: []fieldModel{
		shown.vector(id+"at", "Middle of its face", "", func(p *route.Plan) *mgl64.Vec3 { return &at(p).At }),
		facingField(shown, id, q, at),
		shown.word(id+"thread", "Thread", "", func(p *route.Plan) *string { return &at(p).Thread }),
		flowField(shown, id, at),
		shown.known(id+"known", "", func(p *route.Plan) *route.KnownFrom { return &at(p).KnownFrom }),
	}}
	if !own || e.kindHas(k, q.Name) {
		return g
	}
	rename := fieldModel{id: id + "name", label: "Name", text: q.Name, words: true, keep: func(text string) error {
		return e.put("Rename port "+q.Name, func(p *route.Plan) { renamePort(p, k.Name, q.Name, strings.TrimSpace(text)) })
	}}
	g.fields = append([]fieldModel{rename}, g.fields...)
	g.buttons = []button{{text: "Take this port away", act: func() {
		e.press("Take port "+q.Name+" away", func(p *route.Plan) { dropPort(p, k.Name, q.Name) })
	}}}
	return g
}

// kindHas reports whether a port is the catalogue's, of which the place can be
// changed but not the name.
func (e editor) kindHas(k route.Part, port string) bool {
	if k.Kind == "" {
		return false
	}
	bare := e.plan.Whole(route.Part{Name: k.Name, Kind: k.Kind, Stack: k.Stack})
	return slices.ContainsFunc(bare.Ports, func(q route.Port) bool { return q.Name == port })
}

func facingField(e editor, id string, q route.Port, at func(*route.Plan) *route.Port) fieldModel {
	wordsOf, axes := facingWords, facingAxes
	if !slices.Contains(axes, q.Facing) { // one aslant stays to be chosen
		wordsOf, axes = append(slices.Clone(wordsOf), facing(q.Facing)), append(slices.Clone(axes), q.Facing)
	}
	return pick(e, id+"facing", "Facing", "", wordsOf, axes, func(p *route.Plan) *mgl64.Vec3 { return &at(p).Facing })
}

func flowField(e editor, id string, at func(*route.Plan) *route.Port) fieldModel {
	m := pick(e, id+"flow", "Coolant", "", []string{"either way", "in", "out"}, []route.Flow{route.Any, route.In, route.Out}, func(p *route.Plan) *route.Flow { return &at(p).Flow })
	if m.text == "" {
		m.text = "either way"
	}
	return m
}

// renamePort changes a port's name wherever the plan says it.
func renamePort(p *route.Plan, part, old, name string) {
	portOf(p, part, old).Name = name
	k := partOf(p, part)
	for i := range k.Passages {
		for end := range k.Passages[i] {
			if k.Passages[i][end] == old {
				k.Passages[i][end] = name
			}
		}
	}
	for i := range p.Runs {
		for _, ref := range []*route.PortRef{&p.Runs[i].From, &p.Runs[i].To} {
			if *ref == (route.PortRef{Part: part, Port: old}) {
				ref.Port = name
			}
		}
	}
}

// dropPort takes a port away, with the passages and the runs that end there.
func dropPort(p *route.Plan, part, port string) {
	k := partOf(p, part)
	k.Ports = slices.DeleteFunc(k.Ports, func(q route.Port) bool { return q.Name == port })
	k.Passages = slices.DeleteFunc(k.Passages, func(pair [2]string) bool { return pair[0] == port || pair[1] == port })
	ref := route.PortRef{Part: part, Port: port}
	p.Runs = slices.DeleteFunc(p.Runs, func(r route.Run) bool { return r.From == ref || r.To == ref })
}

// clickedPort is a port where a look was clicked at: in the part's own frame,
// on the face of the part that it looks out of when that face looks at the
// viewer, else in the part's middle.
func clickedPort(plan route.Plan, part string, clicked, facing mgl64.Vec3, depthAxis int) (route.Port, bool) {
	k, ok := plan.FindPart(part)
	if !ok {
		return route.Port{}, false
	}
	whole := plan.Whole(k)
	turn := route.Turned(k.Turn)
	lo, hi := placedBounds(whole)
	switch {
	case facing[depthAxis] > 0.5:
		clicked[depthAxis] = hi[depthAxis]
	case facing[depthAxis] < -0.5:
		clicked[depthAxis] = lo[depthAxis]
	default:
		clicked[depthAxis] = (lo[depthAxis] + hi[depthAxis]) / 2
	}
	local := turn.Transpose().Mul3x1(clicked.Sub(k.At))
	q := newPort(whole)
	q.At = mgl64.Vec3{round3(local[0]), round3(local[1]), round3(local[2])}
	q.Facing = nearestAxis(turn.Transpose().Mul3x1(facing))
	return q, true
}

// nearestAxis is the axis nearest to a direction where it is as good as along
// it, else the direction.
func nearestAxis(d mgl64.Vec3) mgl64.Vec3 {
	for _, a := range facingAxes {
		if d.Sub(a).Len() < 1e-9 {
			return a
		}
	}
	return d
}

// placedBounds is the box in the case around a part's solids.
func placedBounds(whole route.Part) (lo, hi mgl64.Vec3) {
	a, b := boundsOf(whole.Solids)
	turn := route.Turned(whole.Turn)
	for i := range 8 {
		corner := a
		for axis := range 3 {
			if i>>axis&1 == 1 {
				corner[axis] = b[axis]
			}
		}
		p := turn.Mul3x1(corner).Add(whole.At)
		for axis := range 3 {
			if i == 0 {
				lo[axis], hi[axis] = p[axis], p[axis]
			}
			lo[axis], hi[axis] = min(lo[axis], p[axis]), max(hi[axis], p[axis])
		}
	}
	return lo, hi
}
