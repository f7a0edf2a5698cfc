package ui

import (
	"fmt"
	"slices"
	"strings"

	"tubewright/cutlist/measure"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/survey"
	"tubewright/ui/session"
)

// thingRow is one thing to measure in the list.
type thingRow struct {
	key   string
	name  string
	facts string
	firm  bool
}

// thingsOf lists what the tubes of a plan rest on, in the order of measuring, and
// what else may be measured. The place of a part is left out: its ports say it.
func thingsOf(s session.Snapshot) (used, rest []measure.Thing) {
	var ways []find.Way
	for _, t := range s.List.Tubes {
		ways = append(ways, t.Way)
	}
	all := measure.Things(s.Plan, ways)
	return slices.DeleteFunc(slices.Clone(all), func(t measure.Thing) bool { return t.Of == measure.Place }), measure.Rest(s.Plan, all)
}

// thingKey tells things apart: a fitting and a tube may have one name.
func thingKey(t measure.Thing) string { return string(t.Of) + " " + t.Name }

func thingRows(all []measure.Thing) []thingRow {
	rows := make([]thingRow, len(all))
	for i, t := range all {
		rows[i] = thingRow{thingKey(t), t.Name, dotted(knownWord(t.Known), string(t.Of), underRuns(t.Runs)), t.Firm()}
	}
	return rows
}

// underRuns says how many runs rest on a thing; nothing where none does.
func underRuns(runs []string) string {
	if len(runs) == 0 {
		return ""
	}
	return "under " + count(len(runs), "run")
}

func knownWord(k route.KnownFrom) string {
	if k == "" {
		return string(route.Typical)
	}
	return string(k)
}

// typicals counts what is still only typical.
func typicals(all []measure.Thing) int { return len(measure.ToMeasure(all)) }

// caliperForm is the fields of a thing: its numbers, each with how to get it,
// and who vouches for them.
func (e editor) caliperForm(t measure.Thing) []formGroup {
	// The fields show what counts and write into the plan's own entries.
	shown := e
	shown.plan = e.plan.Clone()
	numbers := formGroup{title: t.Name, note: t.Before}
	for _, n := range t.Numbers {
		if t.Of == measure.Port {
			numbers.fields = append(numbers.fields, e.wallField(t, n))
			continue
		}
		numbers.fields = append(numbers.fields, e.caliperField(t, n))
	}
	vouch := formGroup{title: "Who vouches for these numbers", fields: []fieldModel{
		shown.known("known", "Measured once every number above is yours: then no tube is a draft because of it.", func(p *route.Plan) *route.KnownFrom { return knownAt(p, t) }),
	}}
	if t.Of == measure.Fitting {
		vouch.fields = append(vouch.fields, shown.number("price", "Price", "", "Of one, in your money.", func(p *route.Plan) *float64 { return &ownFitting(p, t.Name).Price }))
	}
	return []formGroup{numbers, vouch}
}

// caliperField is one number of a fitting or a tube.
func (e editor) caliperField(t measure.Thing, n measure.Number) fieldModel {
	m := fieldModel{id: string(n.Key), label: capital(n.Name), unit: n.Unit, hint: n.How, text: angleText(n.Value)}
	units := scale{"": 1, "°": 1, "deg": 1, "%": 1}
	help := "Type it without a unit."
	if n.Unit == "mm" {
		m.unit, m.text = string(e.units), lengthText(n.Value, e.units)
		units, help = lengthUnits(e.units), "Use mm, cm, m or in."
	}
	if n.Unit == "deg" {
		m.unit = "°"
	}
	m.keep = func(text string) error {
		v, err := parseSum(text, units, help)
		if err != nil {
			return err
		}
		return e.enter(t, n, v)
	}
	return m
}

// enter takes a measured number into the plan, and says when it is far from
// what the plan had.
func (e editor) enter(t measure.Thing, n measure.Number, v float64) error {
	next, doubts, _, err := measure.Enter(e.plan, t, map[measure.Key]float64{n.Key: v})
	if err != nil {
		return err
	}
	if err := e.put("Measure "+n.Name+" of "+t.Name, func(p *route.Plan) { *p = next }); err != nil {
		return err
	}
	for _, d := range doubts {
		e.note(fmt.Sprintf("Taken. But the %s of %s was %s and is now %s: look at the caliper once more.", n.Name, t.Name, angleText(d.Had), angleText(d.Has)))
	}
	return nil
}

// wallField is a distance of a port from a wall of the case. A port stands where
// its part puts it, so that another number here moves the part.
func (e editor) wallField(t measure.Thing, n measure.Number) fieldModel {
	return fieldModel{
		id: string(n.Key), label: capital(n.Name), unit: string(e.units), hint: n.How, text: lengthText(n.Value, e.units),
		keep: func(text string) error {
			v, err := parseLength(text, e.units)
			if err != nil {
				return err
			}
			return e.put("Measure "+t.Name, func(p *route.Plan) { shiftPart(p, t, n, v-n.Value) })
		},
	}
}

// shiftPart moves the part of a port by how far the measured distance from a
// wall differs from the plan's.
func shiftPart(p *route.Plan, t measure.Thing, n measure.Number, by float64) {
	axis := map[measure.Key]int{measure.X: 0, measure.Y: 1, measure.Z: 2}[n.Key]
	if farWall(n.Name) {
		by = -by
	}
	k := partOf(p, t.Ref.Part)
	k.At[axis] = round3(k.At[axis] + by)
}

// farWall reports whether a distance counts from the wall where a coordinate is
// largest: the right one, the ceiling, the open side.
func farWall(name string) bool {
	for _, far := range []survey.Wall{survey.Right, survey.Top, survey.Front} {
		if strings.Contains(name, far.String()) {
			return true
		}
	}
	return false
}

// knownAt is who vouches for a thing.
func knownAt(p *route.Plan, t measure.Thing) *route.KnownFrom {
	switch t.Of {
	case measure.Fitting:
		return &ownFitting(p, t.Name).KnownFrom
	case measure.Tube:
		return &ownTube(p, t.Name).KnownFrom
	case measure.Port, measure.Place:
	}
	return &portOf(p, t.Ref.Part, t.Ref.Port).KnownFrom
}

// ownFitting is a fitting as the plan's own; one that is gone has no numbers.
func ownFitting(p *route.Plan, name string) *route.Fitting {
	if f := p.OwnFitting(name); f != nil {
		return f
	}
	return &route.Fitting{}
}

// ownTube is the same of a tube.
func ownTube(p *route.Plan, name string) *route.Tube {
	if t := p.OwnTube(name); t != nil {
		return t
	}
	return &route.Tube{}
}

// capital begins a label with a capital.
func capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
