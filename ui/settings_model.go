package ui

import (
	"fmt"
	"slices"
	"strings"

	"tubewright/route"
)

// planForms are the fields of the plan's own values: what the machine is and
// what a good run is at the left, the workshop at the right.
func (e editor) planForms() (left, right []formGroup) {
	return []formGroup{e.machine(), e.weights(), e.hand()}, append([]formGroup{e.saw()}, e.shelf()...)
}

func (e editor) machine() formGroup {
	tubes := tubeNames(e.plan)
	return formGroup{title: "The machine", fields: []fieldModel{
		spacious(e.word("name", "Name", "", func(p *route.Plan) *string { return &p.Name })),
		e.length("case.x", "Case, right", "The free space inside.", func(p *route.Plan) *float64 { return &p.Case[0] }),
		e.length("case.y", "Case, up", "", func(p *route.Plan) *float64 { return &p.Case[1] }),
		e.length("case.z", "Case, toward you", "", func(p *route.Plan) *float64 { return &p.Case[2] }),
		pick(e, "tube", "Tube", "Of every run that names no other.", tubes, tubes, func(p *route.Plan) *string { return &p.Tube }),
		e.length("clear", "Clearance", "The least gap between a tube or collar and anything it does not join.", func(p *route.Plan) *float64 { return &p.Clear }),
		e.whole("build", "Machines to build", "", func(p *route.Plan) *int { return &p.Build }),
		pick(e, "units", "The file counts in", "", []string{"millimetres", "inches"}, []route.Units{route.Millimetres, route.Inches}, func(p *route.Plan) *route.Units { return &p.Units }),
	}}
}

// tubeNames lists every tube a plan may be made of, its own first.
func tubeNames(p route.Plan) (names []string) {
	for _, list := range [][]route.Tube{p.Tubes, shelfOf(p).Tubes} {
		for _, t := range list {
			if !slices.Contains(names, t.Name) {
				names = append(names, t.Name)
			}
		}
	}
	return names
}

func shelfOf(p route.Plan) route.Catalogue {
	if p.Catalogue == nil {
		return route.Catalogue{}
	}
	return *p.Catalogue
}

func (e editor) weights() formGroup {
	at := func(id, label, hint string, of func(*route.Weigh) *float64) fieldModel {
		return e.number("weigh."+id, label, "mm", hint, func(p *route.Plan) *float64 { return of(&p.Weigh) })
	}
	return formGroup{title: "What a good run is", note: "Each in millimetres of tube: how much longer a tube may be to save one.", fields: []fieldModel{
		at("bend", "A bend", "", func(w *route.Weigh) *float64 { return &w.Bend }),
		at("odd_bend", "More for an odd bend", "One that is neither 45° nor 90°.", func(w *route.Weigh) *float64 { return &w.OddBend }),
		at("fitting", "A fitting", "Beside the two sockets: one more place to leak.", func(w *route.Weigh) *float64 { return &w.Fitting }),
		at("tidy", "An untidy thing", "A leg aslant, a bend in an odd plane, a tube almost in line with its neighbour.", func(w *route.Weigh) *float64 { return &w.Tidy }),
		at("price", "One of your money", "", func(w *route.Weigh) *float64 { return &w.Price }),
		at("millimetre", "A millimetre of tube", "", func(w *route.Weigh) *float64 { return &w.Millimetre }),
	}}
}

func (e editor) hand() formGroup {
	return formGroup{title: "Your hand", note: "One standard deviation: two of three come out closer than this.", fields: []fieldModel{
		e.length("errors.port", "Placing and measuring a port", "", func(p *route.Plan) *float64 { return &p.Errors.Port }),
		e.length("errors.cut", "Cutting to length", "", func(p *route.Plan) *float64 { return &p.Errors.Cut }),
		e.number("errors.turn", "Bending to an angle", "°", "", func(p *route.Plan) *float64 { return &p.Errors.Turn }),
		e.number("errors.roll", "Turning the tube between bends", "°", "", func(p *route.Plan) *float64 { return &p.Errors.Roll }),
	}}
}

func (e editor) saw() formGroup {
	return formGroup{title: "Saw and spares", fields: []fieldModel{
		e.length("saw.kerf", "Kerf", "Lost per cut.", func(p *route.Plan) *float64 { return &p.Saw.Kerf }),
		e.length("saw.square", "Squaring", "Added once per piece to square its ends.", func(p *route.Plan) *float64 { return &p.Saw.Square }),
		e.length("keep_over", "Keep offcuts from", "Shorter ones are waste.", func(p *route.Plan) *float64 { return &p.KeepOver }),
		e.whole("spares.bent", "Spare bent blanks", "Of the longest bent tube of each kind.", func(p *route.Plan) *int { return &p.Spares.Bent }),
		e.whole("spares.straight", "Spare straight blanks", "", func(p *route.Plan) *int { return &p.Spares.Straight }),
	}}
}

// shelf is the bars one can buy and the offcuts one has.
func (e editor) shelf() []formGroup {
	names := tubeNames(e.plan)
	var groups []formGroup
	for i := range e.plan.Stock {
		at := func(p *route.Plan) *route.Stock { return &p.Stock[i] }
		id := fmt.Sprintf("stock.%d.", i)
		most := e.whole(id+"most", "How many there are", "", func(p *route.Plan) *int { return &at(p).Most })
		if most.text == "0" {
			most.text = ""
		}
		most.hint = "Left empty: as many as you like."
		groups = append(groups, formGroup{title: fmt.Sprintf("Bar to buy %d", i+1), fields: []fieldModel{
			pick(e, id+"tube", "Bar of", "", names, names, func(p *route.Plan) *string { return &at(p).Tube }),
			e.length(id+"length", "Length of the bar", "", func(p *route.Plan) *float64 { return &at(p).Length }),
			e.number(id+"price", "Price of the bar", "", "", func(p *route.Plan) *float64 { return &at(p).Price }),
			most,
		}, buttons: []button{{text: "Take this bar away", act: func() {
			e.press("Take a bar away", func(p *route.Plan) { p.Stock = slices.Delete(p.Stock, i, i+1) })
		}}}})
	}
	groups = append(groups, formGroup{buttons: []button{{text: "Add a bar to buy", act: func() {
		e.press("Add a bar to buy", func(p *route.Plan) {
			p.Stock = append(p.Stock, route.Stock{Tube: p.Tube, Length: firstBar})
		})
	}}}})
	return append(groups, e.offcuts())
}

// firstBar is the length a new bar begins with, mm: a usual one (common practice).
const firstBar = 500

// offcuts is one field for each kind of tube that is used or lies on the shelf.
func (e editor) offcuts() formGroup {
	g := formGroup{title: "Offcuts on the shelf", note: "Their lengths, with a semicolon or a space between: 600; 225.5; 170."}
	for _, name := range e.usedTubes() {
		g.fields = append(g.fields, fieldModel{
			id: "offcuts." + name, label: name, unit: string(e.units), text: e.offcutText(name),
			keep: func(text string) error {
				lengths, err := parseLengths(text, e.units)
				if err != nil {
					return err
				}
				return e.put("Set offcuts of "+name, func(p *route.Plan) { setOffcuts(p, name, lengths) })
			},
		})
	}
	return g
}

// usedTubes are the tubes of the plan's runs, its stock and its offcuts.
func (e editor) usedTubes() (names []string) {
	add := func(name string) {
		if name != "" && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	add(e.plan.Tube)
	for _, r := range e.plan.Runs {
		add(r.Tube)
	}
	for _, k := range e.plan.Stock {
		add(k.Tube)
	}
	for _, o := range e.plan.Offcuts {
		add(o.Tube)
	}
	return names
}

func (e editor) offcutText(tube string) string {
	var words []string
	for _, o := range e.plan.Offcuts {
		if o.Tube == tube {
			for _, l := range o.Lengths {
				words = append(words, lengthText(l, e.units))
			}
		}
	}
	return strings.Join(words, "; ")
}

// parseLengths reads lengths with semicolons or spaces between.
func parseLengths(text string, u route.Units) (lengths []float64, err error) {
	split := func(r rune) bool { return r == ';' }
	if !strings.Contains(text, ";") {
		split = func(r rune) bool { return r == ' ' }
	}
	for _, word := range strings.FieldsFunc(text, split) {
		if strings.TrimSpace(word) == "" {
			continue
		}
		l, err := parseLength(word, u)
		if err == nil && l <= 0 {
			err = &NumberError{word, "that is no length", "Type lengths above 0."}
		}
		if err != nil {
			return nil, err
		}
		lengths = append(lengths, l)
	}
	return lengths, nil
}

// setOffcuts changes the lengths of one kind of tube.
func setOffcuts(p *route.Plan, tube string, lengths []float64) {
	i := slices.IndexFunc(p.Offcuts, func(o route.Offcuts) bool { return o.Tube == tube })
	switch {
	case i < 0 && len(lengths) > 0:
		p.Offcuts = append(p.Offcuts, route.Offcuts{Tube: tube, Lengths: lengths})
	case i >= 0 && len(lengths) == 0:
		p.Offcuts = slices.Delete(p.Offcuts, i, i+1)
	case i >= 0:
		p.Offcuts[i].Lengths = lengths
	}
}
