package nest

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Code names a kind of fault in an order.
type Code string

// The faults of an order.
const (
	Empty        Code = "empty"          // there is nothing in it
	BadLine      Code = "bad-line"       // a line of no known form
	BadNumber    Code = "bad-number"     // no number, or one that cannot be
	UnknownKey   Code = "unknown-key"    // a setting nobody knows
	Twice        Code = "said-twice"     // the same said in two places
	NoBars       Code = "no-bars"        // nothing to cut from
	NoPieces     Code = "no-pieces"      // nothing to cut
	PieceTooLong Code = "piece-too-long" // no bar holds it
	NoPrice      Code = "no-price"       // some stock has a price, this has none
	TooMany      Code = "too-many"       // more than can be nested at once
	TooLarge     Code = "too-large"      // more text than is read
)

// Problem is one thing wrong in an order, told to whoever wrote it.
type Problem struct {
	Code Code
	File string // or the flag that says it: "--stock"
	Line int    // counts from 1; 0: the order as a whole, or a flag
	Col  int    // of the character, counts from 1
	Text string // of the line, or of the flag
	What string // one clause, with the numbers
	Fix  string // one sentence: what to change

	flag bool // File is a flag
}

// Error gives the problem on three lines: place and fault, the line it is
// about, the way out.
func (p Problem) Error() string {
	switch {
	case p.Line > 0:
		return fmt.Sprintf("%s:%d:%d: %s\n\t%5d | %s\n\t%s", p.File, p.Line, p.Col, p.What, p.Line, p.Text, p.Fix)
	case p.Text != "":
		return fmt.Sprintf("%s %s: %s\n\t%s", p.File, p.Text, p.What, p.Fix)
	}
	return fmt.Sprintf("%s: %s\n\t%s", p.File, p.What, p.Fix)
}

// Problems are all that is wrong with an order, in its order of lines. It is
// the error of [ReadOrder].
type Problems []Problem

func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i, q := range p {
		lines[i] = q.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap lets [errors.As] find a single Problem.
func (p Problems) Unwrap() []error {
	all := make([]error, len(p))
	for i, q := range p {
		all[i] = q
	}
	return all
}

// mostProblems are told: with more the file is of another kind.
const mostProblems = 20

// told puts problems in order, flags first and what is about the whole last,
// and cuts a flood short.
func (p Problems) told() Problems {
	slices.SortStableFunc(p, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.rank(), b.rank()), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Col, b.Col))
	})
	if len(p) <= mostProblems {
		return p
	}
	rest := p[mostProblems-1]
	rest.What = fmt.Sprintf("%d more problems from here on", len(p)-mostProblems+1)
	rest.Fix = "Put right the ones above, then read the file again."
	return append(p[:mostProblems-1:mostProblems-1], rest)
}

func (p Problem) rank() int {
	switch {
	case p.Line > 0:
		return 1
	case p.flag:
		return 0
	}
	return 2
}
