package main

import (
	"bytes"
	"fmt"
	"strings"

	"tubewright/cutlist/nest"
)

// text is a plan of bars for a terminal of a width.
func (a outcome) text(width int, few *nest.TooFewError) []byte {
	var out bytes.Buffer
	uncut := 0
	for _, p := range a.uncut {
		uncut += p.Count
	}
	fmt.Fprintln(&out, a.order.Job.Verdict(a.result, uncut).Words())
	if terms := a.terms(); terms != "" {
		fmt.Fprintln(&out, terms)
	}
	if len(a.result.Patterns) > 0 {
		fmt.Fprintln(&out, "\nBars")
		a.patterns(&out, width)
		fmt.Fprintln(&out, "\nTo scale, | is a cut, "+restWords(a.order.Job.KeepOver))
		a.drawings(&out, width)
	}
	if few != nil {
		fmt.Fprintf(&out, "\nFindings\n  %-7s  stock-too-few  %s\n", "error", a.uncutText(few))
	}
	return out.Bytes()
}

// restWords explain how a drawing shows what is left.
func restWords(keepOver int) string {
	if keepOver > 0 {
		return ". is waste, = is left and worth keeping"
	}
	return ". is left"
}

// terms are what the plan rests on beside the lengths.
func (a outcome) terms() string {
	var said []string
	switch bought, bars := a.result.Bought, a.result.Bars; {
	case len(a.order.Job.Offcuts) > 0:
		said = append(said, fmt.Sprintf("%d bought, %d of offcuts", bought, bars-bought))
	case a.order.Job.Priced():
		said = append(said, fmt.Sprintf("%d bought", bought))
	}
	switch a.order.Units {
	case nest.Inches:
		said = append(said, "lengths in inches")
	case nest.Millimetres:
		said = append(said, "lengths in mm")
	}
	if a.order.Job.Kerf > 0 {
		said = append(said, "kerf "+a.order.Amount(a.order.Job.Kerf).String())
	}
	return strings.Join(said, "; ")
}

// patterns lists the ways bars are cut, and how many are cut so.
func (a outcome) patterns(out *bytes.Buffer, width int) {
	var rows [][]string
	for _, p := range a.result.Patterns {
		from, left := "stock", "left "+a.order.Amount(p.Left).String()
		if p.Offcut {
			from = "offcut"
		}
		if a.order.Job.Keeps(p) {
			left += " (keep)"
		}
		rows = append(rows, []string{fmt.Sprintf("%d x", p.Count), a.order.Amount(a.order.Job.Length(p)).String(), from, left, a.pieces(p)})
	}
	alignRight(rows, 0, 1)
	var laid bytes.Buffer
	table(&laid, rows)
	for i, line := range strings.Split(strings.TrimSuffix(laid.String(), "\n"), "\n") {
		hang := len([]rune(line)) - len(rows[i][4])
		fmt.Fprintln(out, wrapped(line, hang, width))
	}
}

// alignRight sets columns of numbers flush right.
func alignRight(rows [][]string, columns ...int) {
	for _, c := range columns {
		widest := 0
		for _, r := range rows {
			widest = max(widest, len(r[c]))
		}
		for _, r := range rows {
			r[c] = strings.Repeat(" ", widest-len(r[c])) + r[c]
		}
	}
}

// wrapped breaks a line at blanks so that it keeps a width; what goes on below
// starts at hang.
func wrapped(line string, hang, width int) string {
	if hang > width/2 {
		hang = width / 4
	}
	var lines []string
	for len(line) > width {
		at := strings.LastIndex(line[:width+1], " ")
		for at > 0 && (strings.HasSuffix(line[:at], " x") || strings.HasPrefix(line[at:], " x")) { // 3 x 120 stays whole
			at = strings.LastIndex(line[:at], " ")
		}
		if at <= hang {
			break
		}
		lines, line = append(lines, strings.TrimRight(line[:at], " ")), strings.Repeat(" ", hang)+strings.TrimLeft(line[at:], " ")
	}
	return strings.Join(append(lines, line), "\n")
}

// pieces writes equal lengths once: "3 x 120, 95.5".
func (a outcome) pieces(p nest.Pattern) string { return a.list(alike(p.Pieces)) }

// alike counts neighbours of one length.
func alike(lengths []int) (list []nest.Piece) {
	for _, length := range lengths {
		if n := len(list); n > 0 && list[n-1].Length == length {
			list[n-1].Count++
		} else {
			list = append(list, nest.Piece{Length: length, Count: 1})
		}
	}
	return list
}

func (a outcome) list(pieces []nest.Piece) string {
	var text []string
	for _, p := range pieces {
		text = append(text, a.one(p))
	}
	return strings.Join(text, ", ")
}

func (a outcome) one(p nest.Piece) string {
	length := a.order.Amount(p.Length).String()
	if p.Count > 1 {
		return fmt.Sprintf("%d x %s", p.Count, length)
	}
	return length
}

func (a outcome) uncutText(few *nest.TooFewError) string {
	why := "The limits leave uncut: %s.\n  %-7s  %-13s  Raise a limit, add a stock length or an offcut, or ask for fewer pieces."
	if !few.Proven {
		why = "No way was found to cut all from the limited bars; uncut: %s.\n  %-7s  %-13s  Raise a limit, add a stock length or an offcut, give it more --seconds, or ask for fewer pieces."
	}
	return fmt.Sprintf(why, a.list(few.Uncut), "", "")
}
