package nest

import (
	"encoding/json"
	"math"
)

// Answer is a result as JSON tells it, lengths in the order's own unit.
type Answer struct {
	BarsUsed int             `json:"bars_used"`
	Bought   int             `json:"bought"`
	Bound    Decimal         `json:"bound"` // of the cost; without prices the number of bought bars
	Proven   bool            `json:"proven"`
	Cost     Decimal         `json:"cost"`
	Units    Units           `json:"units,omitempty"` // where the order says so
	Kerf     Amount          `json:"kerf"`
	Patterns []AnswerPattern `json:"patterns"`
	Uncut    []AnswerPiece   `json:"uncut,omitempty"`   // what the limits leave over; bound and cost are of the others
	Stopped  bool            `json:"stopped,omitempty"` // by hand: the best until then
	Seconds  float64         `json:"seconds"`
}

// AnswerPattern is Count bars cut alike.
type AnswerPattern struct {
	Count  int      `json:"count"`
	Length Amount   `json:"length"`
	From   string   `json:"from"` // "stock" or "offcut"
	Price  *Decimal `json:"price,omitempty"`
	Pieces []Amount `json:"pieces"`
	Left   Amount   `json:"left"`
	Keep   bool     `json:"keep"` // left is worth keeping
}

// AnswerPiece is a length and how many of it.
type AnswerPiece struct {
	Length Amount `json:"length"`
	Count  int    `json:"count"`
}

// Answer makes the answer of a result; seconds is how long it took.
func (o Order) Answer(r Result, uncut []Piece, stopped bool, seconds float64) Answer {
	a := Answer{
		BarsUsed: r.Bars, Bought: r.Bought, Bound: Decimal(r.Bound), Proven: r.Proven, Cost: Decimal(r.Cost),
		Units: o.Units, Kerf: o.Amount(o.Job.Kerf), Patterns: []AnswerPattern{}, Stopped: stopped,
		Seconds: math.Round(seconds*1000) / 1000,
	}
	if !o.Job.Priced() {
		a.Bound, a.Cost = 100*a.Bound, 100*a.Cost
	}
	for _, p := range r.Patterns {
		a.Patterns = append(a.Patterns, o.answerPattern(p))
	}
	for _, p := range uncut {
		a.Uncut = append(a.Uncut, AnswerPiece{o.Amount(p.Length), p.Count})
	}
	return a
}

func (o Order) answerPattern(p Pattern) AnswerPattern {
	a := AnswerPattern{
		Count: p.Count, Length: o.Amount(o.Job.Length(p)), From: "offcut", Left: o.Amount(p.Left), Keep: o.Job.Keeps(p),
	}
	if !p.Offcut {
		a.From = "stock"
	}
	if !p.Offcut && o.Job.Priced() {
		price := Decimal(o.Job.Stock[p.Bar].Price)
		a.Price = &price
	}
	for _, l := range p.Pieces {
		a.Pieces = append(a.Pieces, o.Amount(l))
	}
	return a
}

// JSON writes the answer on one line.
func (a Answer) JSON() ([]byte, error) {
	text, err := json.Marshal(a)
	return append(text, '\n'), err
}
