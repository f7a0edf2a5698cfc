package planfile

import (
	"tubewright/route"
)

// maxFans is the most fans beside each other on one radiator.
const maxFans = 9

var stackKeys = record[route.Stack]{
	layout: always[route.Stack](flow),
	keys: []key[route.Stack]{
		keyOf("fan", "side of one fan, and height of the radiator", func(k *route.Stack) *float64 { return &k.Fan }, length(noLess)),
		keyOf("fans", "how many fans beside each other; the radiator is as long as they and its tanks", func(k *route.Stack) *int { return &k.Fans }, whole(1, maxFans)),
		keyOf("thickness", "of the radiator", func(k *route.Stack) *float64 { return &k.Thickness }, length(noLess)),
		keyOf("fan_thickness", "of one fan", func(k *route.Stack) *float64 { return &k.FanThickness }, length(noLess)),
		keyOf("sides", "where the fans are: near, far, both or none; the near side looks along +z before the part is turned", func(k *route.Stack) *route.Sides { return &k.Sides }, choice(route.NearSide, route.FarSide, route.BothSides, route.NoSide)),
		keyOf("keep_out", "kept free in front of the fans, so that they can breathe", func(k *route.Stack) *float64 { return &k.KeepOut }, length(noLess)),
		keyOf("ports", "the face its ports are on: near, far or end", func(k *route.Stack) *route.Face { return &k.Ports }, choice(route.NearFace, route.FarFace, route.EndFace)),
	},
}

// checkStack asks for what a stack cannot do without, once its kind is known.
func checkStack(s spot, g given, k *route.Part) {
	node, part := g.value["stack"], *k
	if node == nil || !g.sound("stack") {
		return
	}
	here := s.in("stack")
	if len(part.Solids) > 0 && g.has("solids") {
		here.bad(node, "stands beside solids", "Give one of the two: a stack makes its own solids.")
	}
	s.after(func() {
		kind, ok := s.plan.FindKind(part.Kind)
		if part.Kind != "" && !ok {
			return // told where the kind is named
		}
		if part.Kind != "" && !kind.Stack.Given() {
			here.bad(node, "does not go with the kind "+part.Kind+", which is no stack", "Take kind: radiator-stack, or leave the stack out.")
			return
		}
		whole := s.plan.Whole(part).Stack
		var lacks []string
		for _, need := range []struct {
			key  string
			lack bool
		}{
			{"fan", whole.Fan == 0},
			{"fans", whole.Fans == 0},
			{"thickness", whole.Thickness == 0},
			{"fan_thickness", whole.FanThickness == 0 && whole.Sides != route.NoSide},
		} {
			if need.lack {
				lacks = append(lacks, need.key)
			}
		}
		if len(lacks) > 0 {
			here.bad(node, "needs "+and(lacks), "Add "+and(lacks)+", or take kind: radiator-stack, which has them.")
		}
	})
}
