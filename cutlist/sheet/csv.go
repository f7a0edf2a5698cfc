package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"tubewright/cutlist"
)

// CutsCSV writes the tubes: RFC 4180 with CRLF, UTF-8, a row of heads first;
// lengths in mm and angles in degrees whatever the plan's units, to 0.01. A text
// that a spreadsheet would run as a formula gets an apostrophe in front.
func CutsCSV(w io.Writer, l cutlist.List) error {
	rows := [][]string{{"letter", "run", "tube", "way", "bends", "aim_mm", "shortest_mm", "longest_mm", "blank_mm", "start", "end"}}
	for _, t := range l.Tubes {
		rows = append(rows, []string{
			t.Letter, t.Run, t.Way.Tube.Name, t.Way.Name, strconv.Itoa(len(t.Bench.Bends)),
			hundredth(t.Cut.Aim), hundredth(t.Cut.Shortest), hundredth(t.Cut.Longest), hundredth(t.Cut.Blank),
			chainText(t.Way.Start), chainText(t.Way.End),
		})
	}
	return writeCSV(w, "cuts", rows)
}

// BarsCSV writes one row per piece in sawing order, and one with no run for
// what is left of each bar; in the form of [CutsCSV].
func BarsCSV(w io.Writer, l cutlist.List) error {
	rows := [][]string{{"bar", "tube", "from", "bar_mm", "piece", "letter", "run", "machine", "spare", "length_mm", "saw_at_mm", "keep"}}
	for i, b := range l.Bars {
		head := []string{strconv.Itoa(i + 1), b.Tube, b.From, hundredth(b.Length)}
		at := 0.0
		for n, p := range b.Pieces {
			at += p.Length
			rows = append(rows, append(head[:4:4], strconv.Itoa(n+1), letterOf(l, p.Run), p.Run, strconv.Itoa(p.Machine),
				yes(p.Spare), hundredth(p.Length), hundredth(at), ""))
			at += l.Plan.Saw.Kerf
		}
		rows = append(rows, append(head[:4:4], "left", "", "", "", "", hundredth(b.Left), "", yes(b.Keep)))
	}
	return writeCSV(w, "bars", rows)
}

// BuyCSV writes the buying list, in the form of [CutsCSV].
func BuyCSV(w io.Writer, l cutlist.List) error {
	rows := [][]string{{"item", "need", "on_hand", "buy", "each", "price", "note"}}
	for _, it := range l.Buy {
		rows = append(rows, []string{
			it.Item, strconv.Itoa(it.Need), strconv.Itoa(it.OnHand), strconv.Itoa(it.Buy),
			hundredth(it.Each), hundredth(it.Price), it.Note,
		})
	}
	return writeCSV(w, "buying list", rows)
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// hundredth writes a number to 0.01 and never "-0".
func hundredth(v float64) string {
	text := strconv.FormatFloat(v, 'f', 2, 64)
	if text == "-0.00" {
		return "0.00"
	}
	return text
}

func writeCSV(w io.Writer, what string, rows [][]string) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	for _, row := range rows {
		safe := make([]string, len(row))
		for i, text := range row {
			safe[i] = harmless(text)
		}
		if err := out.Write(safe); err != nil {
			return fmt.Errorf("writing the %s: %w", what, err)
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("writing the %s: %w", what, err)
	}
	return nil
}

// harmless gives a text that no spreadsheet runs: one that begins, after
// spaces, with a sign of a formula gets an apostrophe in front, unless it is a
// number; line breaks and bytes that are no text are taken out.
func harmless(text string) string {
	text = strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case r < ' ' || r == 0x7f:
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "\ufffd"))
	if _, err := strconv.ParseFloat(text, 64); err == nil && !strings.HasPrefix(text, "+") {
		return text
	}
	start := strings.TrimLeft(text, " \u00a0\u2003\u3000")
	if start != "" && strings.ContainsRune("=+-@＝＋－＠", []rune(start)[0]) {
		return "'" + text
	}
	return text
}
