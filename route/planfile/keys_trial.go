package planfile

import (
	"tubewright/bends"
	"tubewright/bends/trial"
)

// points is where two marks are.
func points(each codec[float64]) codec[[2]float64] {
	return two(each, "[first, second]", "Write it as [first, second], both from the same end.")
}

// both is two measured legs.
func both(each codec[float64]) codec[[2]float64] {
	return two(each, "[first, second]", "Write it as [first, second].")
}

// turnBound is what a turn may be, degrees.
var turnBound = bound{least: 0, most: 180, above: true}

var testBendKeys = record[trial.Bend]{
	layout: always[trial.Bend](flow),
	keys: []key[trial.Bend]{
		keyOf("blank", "length of the piece before bending", func(b *trial.Bend) *float64 { return &b.Blank }, length(noLess)),
		keyOf("marks", "where two marks were before bending, from one end", func(b *trial.Bend) *[2]float64 { return &b.Marks }, points(length(noLess))),
		keyOf("former", "turn on the former, degrees", func(b *trial.Bend) *float64 { return &b.Former }, count(turnBound)).needed(),
		keyOf("after", "turn the bend keeps, degrees", func(b *trial.Bend) *float64 { return &b.After }, count(bound{least: 0, most: bends.MostTurn, above: true})).needed(),
		keyOf("legs", "both legs as measured", func(b *trial.Bend) *[2]float64 { return &b.Legs }, both(length(over))).needed(),
		keyOf("from", "what the legs were measured from: the ends or the marks", func(b *trial.Bend) *trial.From { return &b.From }, choice(trial.Ends, trial.Marks)),
		keyOf("to", "what they were measured to: the back of the bend (where the outsides of the legs meet) or the centre lines", func(b *trial.Bend) *trial.To { return &b.To }, choice(trial.Back, trial.Centre)),
	},
}
