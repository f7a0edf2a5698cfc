package ui

import (
	"math"
	"strconv"
	"strings"

	"tubewright/route"
	"tubewright/ui/session"
)

// putter makes a change of values that were typed, called by name in the undo
// line.
type putter func(name string, change func(*route.Plan)) error

// editor makes fields of a form out of places in a plan.
type editor struct {
	plan  route.Plan
	units route.Units // lengths are shown in these
	put   putter
	tell  func(error)       // told what went wrong when a button was pressed
	click func(part string) // asks for a port by clicking
	note  func(string)      // says something about what was typed
}

func newEditor(s session.Snapshot, put putter, tell func(error)) editor {
	return editor{plan: s.Plan, units: s.Units, put: put, tell: tell, click: func(string) {}, note: func(string) {}}
}

// press makes a change that a button asks for.
func (e editor) press(name string, change func(*route.Plan)) { e.tell(e.put(name, change)) }

// length is a field for a length; at finds its place in a plan.
func (e editor) length(id, label, hint string, at func(*route.Plan) *float64) fieldModel {
	return fieldModel{
		id: id, label: label, unit: string(e.units), hint: hint, text: lengthText(*at(&e.plan), e.units),
		keep: func(text string) error { return e.keep(label, text, lengthUnits(e.units), "Use mm, cm, m or in.", at) },
	}
}

// number is a field for a plain number, or one with a unit of its own.
func (e editor) number(id, label, unit, hint string, at func(*route.Plan) *float64) fieldModel {
	return fieldModel{
		id: id, label: label, unit: unit, hint: hint, text: angleText(*at(&e.plan)),
		keep: func(text string) error {
			return e.keep(label, text, scale{"": 1, unit: 1, "deg": 1}, "Type it without a unit.", at)
		},
	}
}

// keep reads a sum and puts it where it belongs.
func (e editor) keep(label, text string, units scale, help string, at func(*route.Plan) *float64) error {
	v, err := parseSum(text, units, help)
	if err != nil {
		return err
	}
	return e.put("Set "+lower(label), func(p *route.Plan) { *at(p) = v })
}

// whole is a field for a count.
func (e editor) whole(id, label, hint string, at func(*route.Plan) *int) fieldModel {
	return fieldModel{
		id: id, label: label, hint: hint, text: plainInt(*at(&e.plan)),
		keep: func(text string) error {
			n, err := parseWhole(text)
			if err != nil {
				return err
			}
			return e.put("Set "+lower(label), func(p *route.Plan) { *at(p) = n })
		},
	}
}

// parseWhole reads a whole number; nothing is 0.
func parseWhole(text string) (int, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return 0, nil
	}
	n, err := strconv.Atoi(text)
	if err != nil || math.Abs(float64(n)) > 1e6 {
		return 0, &NumberError{text, "that is not a whole number", "Type one, such as 4."}
	}
	return n, nil
}

// word is a field for a text.
func (e editor) word(id, label, hint string, at func(*route.Plan) *string) fieldModel {
	return fieldModel{
		id: id, label: label, hint: hint, text: *at(&e.plan), words: true,
		keep: func(text string) error {
			return e.put("Set "+lower(label), func(p *route.Plan) { *at(p) = strings.TrimSpace(text) })
		},
	}
}

// spacious gives a field for a long text a row of its own.
func spacious(m fieldModel) fieldModel {
	m.long = true
	return m
}

// pick is a field for one of some words; each stands for a value.
func pick[T comparable](e editor, id, label, hint string, words []string, values []T, at func(*route.Plan) *T) fieldModel {
	m := fieldModel{id: id, label: label, hint: hint, choices: words}
	for i, v := range values {
		if v == *at(&e.plan) {
			m.text = words[i]
		}
	}
	m.keep = func(text string) error {
		for i, w := range words {
			if w == text {
				return e.put("Set "+lower(label), func(p *route.Plan) { *at(p) = values[i] })
			}
		}
		return nil
	}
	return m
}

// lower writes a label inside a sentence.
func lower(label string) string {
	if label == "" {
		return ""
	}
	return strings.ToLower(label[:1]) + label[1:]
}
