package check

import (
	"fmt"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/clear"
)

// standPart is a part where it stands.
type standPart struct {
	name   string
	ports  []route.PlacedPort
	shapes []clear.Shape
	boxes  []bounds // of each shape
	box    bounds   // of all
}

// bounds is an axis-parallel box.
type bounds struct{ lo, hi mgl64.Vec3 }

func boundsOf(s clear.Shape) bounds {
	lo, hi := s.Bounds()
	return bounds{lo, hi}
}

func (b bounds) with(c bounds) bounds {
	for i := range b.lo {
		b.lo[i], b.hi[i] = min(b.lo[i], c.lo[i]), max(b.hi[i], c.hi[i])
	}
	return b
}

// within reports whether two boxes are nearer along every axis than a gap.
func (b *bounds) within(c *bounds, gap float64) bool {
	for i := range b.lo {
		if b.lo[i]-c.hi[i] >= gap || c.lo[i]-b.hi[i] >= gap {
			return false
		}
	}
	return true
}

func standing(plan route.Plan) []standPart {
	var list []standPart
	for _, placed := range plan.PlaceAll() {
		list = append(list, stand(placed))
	}
	return list
}

func stand(placed route.Placed) standPart {
	p := standPart{name: placed.Part.Name, ports: placed.Ports, shapes: placed.Solids}
	for i, s := range p.shapes {
		b := boundsOf(s)
		p.boxes = append(p.boxes, b)
		if i == 0 {
			p.box = b
		}
		p.box = p.box.with(b)
	}
	return p
}

// checkParts tells of parts that stand in each other.
func (r *referee) checkParts() {
	for i := range r.parts {
		for j := i + 1; j < len(r.parts); j++ {
			if worst, met := deepest(&r.parts[i], &r.parts[j]); met {
				r.tellParts(i, j, worst)
			}
		}
	}
}

// deepest is the deepest overlap of two parts, if one is deeper than the slack.
func deepest(a, b *standPart) (worst clear.Gap, met bool) {
	if len(a.shapes) == 0 || len(b.shapes) == 0 || !a.box.within(&b.box, -PartSlack) {
		return worst, false
	}
	for i, s := range a.shapes {
		for j, t := range b.shapes {
			if !a.boxes[i].within(&b.boxes[j], -PartSlack) {
				continue
			}
			if g := clear.Between(s, t); g.Distance < min(-PartSlack, worst.Distance) {
				worst, met = g, true
			}
		}
	}
	return worst, met
}

func (r *referee) tellParts(i, j int, worst clear.Gap) {
	a, b, way := &r.parts[i], &r.parts[j], r.wayApart(i, j)
	f := Finding{
		Code: PartHitsPart, Parts: []string{a.name, b.name}, Measure: worst.Distance, Unit: "mm",
		What: fmt.Sprintf("Parts %s and %s overlap by %s.", a.name, b.name, r.length(-worst.Distance)),
		Fix:  way.sentence(r), Move: way.told(), Least: r.leastApart(i, j, way),
	}
	r.tell(f.at(worst.A.Add(worst.B).Mul(0.5)))
}
