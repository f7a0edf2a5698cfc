package planfile

import (
	"fmt"
	"slices"
	"strings"
)

// A Problem is one thing wrong in a plan file, told to whoever wrote the plan.
type Problem struct {
	File      string
	Line, Col int    // 1-based, as editors count; columns count characters
	What      string // one clause, with the name and the numbers
	Fix       string // one sentence: what to change
	Text      string // the line it is about, fit to print; may be empty
}

// Error gives the problem on three lines: place and fault, the line of the
// file, the way out.
func (p Problem) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s:%d:%d: %s\n", p.File, p.Line, p.Col, p.What)
	if p.Text != "" {
		fmt.Fprintf(&b, "\t%5d | %s\n", p.Line, p.Text)
	}
	b.WriteString("\t" + p.Fix)
	return b.String()
}

// Problems is all that is wrong with a file, in file order. It is the error
// type of [Read].
type Problems []Problem

// Error gives every problem, one under the other.
func (ps Problems) Error() string {
	all := make([]string, len(ps))
	for i, p := range ps {
		all[i] = p.Error()
	}
	return strings.Join(all, "\n")
}

// Unwrap lets [errors.As] find a single Problem.
func (ps Problems) Unwrap() []error {
	all := make([]error, len(ps))
	for i, p := range ps {
		all[i] = p
	}
	return all
}

// maxProblems is how many problems are told at once: more than anyone reads,
// and a bound on what a hostile file can make us print.
const maxProblems = 200

// maxNoted is how many problems are kept before they are put in order.
const maxNoted = 20_000

// ordered sorts by place, keeps what stands first of two at one place with one
// text, and cuts a flood short.
func ordered(ps Problems) Problems {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		return a.Col - b.Col
	})
	ps = slices.Compact(ps)
	if len(ps) <= maxProblems {
		return ps
	}
	rest := ps[maxProblems-1]
	rest.What = fmt.Sprintf("%d more problems from here on", len(ps)-maxProblems+1)
	rest.Fix = "Put right the ones above, then read the file again."
	return append(ps[:maxProblems-1:maxProblems-1], rest)
}
