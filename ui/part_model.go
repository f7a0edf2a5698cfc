package ui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// partOf is the part called name, to be changed.
func partOf(p *route.Plan, name string) *route.Part {
	i := slices.IndexFunc(p.Parts, func(k route.Part) bool { return k.Name == name })
	if i < 0 {
		return &route.Part{} // it is gone: the page closes with the next snapshot
	}
	return &p.Parts[i]
}

// vector is a field for three lengths: "0; 12.5; 40".
func (e editor) vector(id, label, hint string, at func(*route.Plan) *mgl64.Vec3) fieldModel {
	v := *at(&e.plan)
	text := lengthText(v[0], e.units) + "; " + lengthText(v[1], e.units) + "; " + lengthText(v[2], e.units)
	return fieldModel{
		id: id, label: label, unit: string(e.units), hint: hint, text: text,
		keep: func(text string) error {
			v, err := parseVector(text, e.units)
			if err != nil {
				return err
			}
			return e.put("Set "+lower(label), func(p *route.Plan) { *at(p) = v })
		},
	}
}

// parseVector reads three lengths with semicolons or spaces between.
func parseVector(text string, u route.Units) (v mgl64.Vec3, err error) {
	split := func(r rune) bool { return r == ';' }
	if !strings.Contains(text, ";") {
		split = func(r rune) bool { return r == ' ' }
	}
	words := strings.FieldsFunc(text, split)
	if len(words) != 3 {
		return v, &NumberError{text, "that is not three lengths", "Type x, y and z with a semicolon between: 0; 12.5; 40."}
	}
	for i, word := range words {
		if v[i], err = parseLength(word, u); err != nil {
			return v, err
		}
	}
	return v, nil
}

// known is a field for who vouches for something.
func (e editor) known(id, hint string, at func(*route.Plan) *route.KnownFrom) fieldModel {
	m := pick(e, id, "Known from", hint, []string{"typical", "drawing", "measured"}, []route.KnownFrom{route.Typical, route.Drawing, route.Measured}, at)
	if m.text == "" {
		m.text = string(route.Typical)
	}
	return m
}

// partForms are the fields of a part: what it is made of at the left, its ports
// at the right.
func (e editor) partForms(name string) (left, right []formGroup) {
	k, ok := e.plan.FindPart(name)
	if !ok {
		return nil, nil
	}
	whole := e.plan.Whole(k)
	left = append(left, e.partItself(k))
	if whole.Stack.Given() {
		left = append(left, e.stack(k))
	}
	left = append(left, e.solids(k)...)
	return left, append(e.ports(k, whole), e.coolant(k))
}

func (e editor) partItself(k route.Part) formGroup {
	rename := fieldModel{id: "name", label: "Name", text: k.Name, words: true, keep: func(text string) error {
		return e.put("Rename "+k.Name, func(p *route.Plan) { renamePart(p, k.Name, strings.TrimSpace(text)) })
	}}
	note := "A part of your own."
	if k.Kind != "" {
		note = "Of the catalogue's kind " + k.Kind + "."
	}
	return formGroup{title: "The part", note: note, fields: []fieldModel{
		rename,
		e.known("known", "Vouches for its place, and for ports that say nothing themselves.", func(p *route.Plan) *route.KnownFrom { return &partOf(p, k.Name).KnownFrom }),
	}}
}

// renamePart changes a part's name wherever the plan says it.
func renamePart(p *route.Plan, old, name string) {
	partOf(p, old).Name = name
	for i := range p.Runs {
		for _, ref := range []*route.PortRef{&p.Runs[i].From, &p.Runs[i].To} {
			if ref.Part == old {
				ref.Part = name
			}
		}
	}
}

// stack is the fields of a radiator with its fans; what the part does not say
// is its kind's.
func (e editor) stack(k route.Part) formGroup {
	// The fields show the whole stack and write into the part's own.
	shown := e
	shown.plan = e.plan.Clone()
	partOf(&shown.plan, k.Name).Stack = e.plan.Whole(k).Stack
	at := func(p *route.Plan) *route.Stack { return &partOf(p, k.Name).Stack }
	return formGroup{title: "Radiator and fans", note: "The near side looks toward you before the part is turned.", fields: []fieldModel{
		shown.whole("stack.fans", "Fans beside each other", "", func(p *route.Plan) *int { return &at(p).Fans }),
		shown.length("stack.fan", "Side of one fan", "", func(p *route.Plan) *float64 { return &at(p).Fan }),
		shown.length("stack.thickness", "Thickness of the radiator", "", func(p *route.Plan) *float64 { return &at(p).Thickness }),
		shown.length("stack.fan_thickness", "Thickness of a fan", "", func(p *route.Plan) *float64 { return &at(p).FanThickness }),
		pick(shown, "stack.sides", "Fans on the side", "", []string{"near", "far", "both", "none"}, []route.Sides{route.NearSide, route.FarSide, route.BothSides, route.NoSide}, func(p *route.Plan) *route.Sides { return &at(p).Sides }),
		shown.length("stack.keep_out", "Kept free before the fans", "So that they can breathe.", func(p *route.Plan) *float64 { return &at(p).KeepOut }),
		pick(shown, "stack.ports", "Ports on the face", "", []string{"near", "far", "end"}, []route.Face{route.NearFace, route.FarFace, route.EndFace}, func(p *route.Plan) *route.Face { return &at(p).Ports }),
	}}
}

// solids is the boxes and cylinders of a part's own.
func (e editor) solids(k route.Part) (groups []formGroup) {
	if len(k.Solids) == 0 && k.Kind != "" {
		return []formGroup{{
			title: "What it is made of", note: "Boxes and ports are the catalogue's. Copied into the plan they can be changed one by one.",
			buttons: []button{{text: "Make it my own", act: func() {
				e.press("Make "+k.Name+" my own", func(p *route.Plan) { *partOf(p, k.Name) = ownPart(e.plan, k) })
			}}},
		}}
	}
	for i, s := range k.Solids {
		groups = append(groups, e.solid(k, i, s))
	}
	return append(groups, formGroup{title: "More of it", note: "Lengths count from the part's lower left far corner: x right, y up, z toward you.", buttons: []button{
		{text: "Add a box", act: func() { e.addSolid(k, route.Solid{Box: true, To: mgl64.Vec3{40, 40, 40}}) }},
		{text: "Add a cylinder", act: func() { e.addSolid(k, route.Solid{To: mgl64.Vec3{0, 60, 0}, Radius: 20}) }},
	}})
}

func (e editor) addSolid(k route.Part, s route.Solid) {
	e.press("Add to "+k.Name, func(p *route.Plan) { partOf(p, k.Name).Solids = append(partOf(p, k.Name).Solids, s) })
}

func (e editor) solid(k route.Part, i int, s route.Solid) formGroup {
	at := func(p *route.Plan) *route.Solid {
		if own := partOf(p, k.Name).Solids; i < len(own) {
			return &own[i]
		}
		return &route.Solid{}
	}
	id := fmt.Sprintf("solid.%d.", i)
	from := func(p *route.Plan) *mgl64.Vec3 { return &at(p).From }
	to := func(p *route.Plan) *mgl64.Vec3 { return &at(p).To }
	g := formGroup{title: fmt.Sprintf("Box %d", i+1), fields: []fieldModel{
		e.vector(id+"from", "Lower left far corner", "", from), e.vector(id+"to", "Upper right near corner", "", to),
	}}
	if !s.Box {
		g = formGroup{title: fmt.Sprintf("Cylinder %d", i+1), fields: []fieldModel{
			e.vector(id+"from", "Axis from", "", from), e.vector(id+"to", "Axis to", "", to),
			e.length(id+"radius", "Radius", "", func(p *route.Plan) *float64 { return &at(p).Radius }),
		}}
	}
	g.buttons = []button{{text: "Take it away", act: func() {
		e.press("Take a solid away", func(p *route.Plan) { partOf(p, k.Name).Solids = slices.Delete(partOf(p, k.Name).Solids, i, i+1) })
	}}}
	return g
}

// ownPart is a part with all that its kind gave it as its own.
func ownPart(plan route.Plan, k route.Part) route.Part {
	whole := plan.Whole(k)
	whole.Kind, whole.Stack = "", route.Stack{}
	return whole
}

// coolant is what the coolant meets inside.
func (e editor) coolant(k route.Part) formGroup {
	at := func(p *route.Plan) *route.Part { return partOf(p, k.Name) }
	whole := e.plan.Whole(k)
	return formGroup{title: "Inside", fields: []fieldModel{
		{id: "passages", label: "Passages", hint: "Which ports the coolant links: in-out; fill-in.", words: true, long: true, text: passageText(whole.Passages), keep: func(text string) error {
			pairs, err := parsePassages(text)
			if err != nil {
				return err
			}
			return e.put("Set passages of "+k.Name, func(p *route.Plan) { at(p).Passages = pairs })
		}},
		{id: "metals", label: "Metals", hint: "That touch the coolant: copper; nickel.", text: strings.Join(whole.Metals, "; "), keep: func(text string) error {
			return e.put("Set metals of "+k.Name, func(p *route.Plan) { at(p).Metals = words(text) })
		}},
	}}
}

func words(text string) (list []string) {
	for _, w := range strings.Split(text, ";") {
		if w = strings.TrimSpace(w); w != "" {
			list = append(list, w)
		}
	}
	return list
}

func passageText(pairs [][2]string) string {
	list := make([]string, len(pairs))
	for i, p := range pairs {
		list[i] = p[0] + " - " + p[1]
	}
	return strings.Join(list, "; ")
}

// parsePassages reads pairs of ports. A name may hold a hyphen where the two
// are set apart by " - ".
func parsePassages(text string) (pairs [][2]string, err error) {
	for _, w := range words(text) {
		a, b, ok := strings.Cut(w, " - ")
		if !ok {
			a, b, ok = strings.Cut(w, "-")
		}
		if a, b = strings.TrimSpace(a), strings.TrimSpace(b); !ok || a == "" || b == "" {
			return nil, &NumberError{w, "that is not two ports", "Type them as in - out, with a semicolon between pairs."}
		}
		pairs = append(pairs, [2]string{a, b})
	}
	return pairs, nil
}
