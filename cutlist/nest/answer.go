package nest

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Answer is a result as JSON tells it, lengths in the job's own unit.
type Answer struct {
	BarsUsed int             `json:"bars_used"`
	Bound    Decimal         `json:"bound"` // of the cost; without prices the number of bought bars
	Proven   bool            `json:"proven"`
	Cost     Decimal         `json:"cost"`
	Patterns []AnswerPattern `json:"patterns"`
	Seconds  float64         `json:"seconds"`
}

// AnswerPattern is Count bars cut alike.
type AnswerPattern struct {
	Count  int       `json:"count"`
	Length Decimal   `json:"length"`
	Pieces []Decimal `json:"pieces"`
	Left   Decimal   `json:"left"`
}

// Decimal counts hundredths and is written as a plain number: 30527 as 305.27.
type Decimal int

// String writes the number without needless zeros: 30527 is "305.27", 50000 "500".
func (d Decimal) String() string {
	s := fmt.Sprintf("%d.%02d", int(d)/100, int(d)%100)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// MarshalJSON writes the number.
func (d Decimal) MarshalJSON() ([]byte, error) {
	return strconv.AppendFloat(nil, float64(d)/100, 'f', -1, 64), nil
}

// Answer makes the answer of a result to the job; seconds is how long it took.
func (r Result) Answer(job Job, seconds float64) Answer {
	a := Answer{
		BarsUsed: r.Bars, Bound: Decimal(r.Bound), Proven: r.Proven, Cost: Decimal(r.Cost),
		Patterns: []AnswerPattern{}, Seconds: math.Round(seconds*1000) / 1000,
	}
	if !job.Priced() {
		a.Bound, a.Cost = 100*a.Bound, 100*a.Cost
	}
	for _, p := range r.Patterns {
		q := AnswerPattern{Count: p.Count, Length: Decimal(job.Length(p)), Left: Decimal(p.Left)}
		for _, l := range p.Pieces {
			q.Pieces = append(q.Pieces, Decimal(l))
		}
		a.Patterns = append(a.Patterns, q)
	}
	return a
}

// JSON writes the answer of a result on one line.
func JSON(job Job, r Result, seconds float64) ([]byte, error) {
	text, err := json.Marshal(r.Answer(job, seconds))
	return append(text, '\n'), err
}
