package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"text/tabwriter"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/mend"
)

// table lays rows of cells out in columns, two spaces apart.
func table(out *bytes.Buffer, rows [][]string) {
	var laid bytes.Buffer
	w := tabwriter.NewWriter(&laid, 0, 4, 2, ' ', 0)
	for _, row := range rows {
		_, _ = fmt.Fprintln(w, "  "+strings.Join(row, "\t"))
	}
	_ = w.Flush() // writing to a buffer cannot fail, neither here nor above
	for line := range strings.Lines(laid.String()) {
		fmt.Fprintln(out, strings.TrimRight(line, " \n"))
	}
}

// listText is the cut list for a terminal, in the plan's units.
func listText(list cutlist.List) []byte {
	var out bytes.Buffer
	fmt.Fprintf(&out, "%s (lengths in %s)\n", list.Plan.Name, unitName(list.Plan.Units))
	tubesText(&out, list)
	barsText(&out, list)
	sawnText(&out, list)
	buyText(&out, list)
	putInText(&out, list)
	fmt.Fprintln(&out)
	out.Write(findingsText(list))
	draftText(&out, list)
	return out.Bytes()
}

func unitName(u route.Units) string {
	if u == route.Inches {
		return "inches"
	}
	return "mm"
}

func tubesText(out *bytes.Buffer, list cutlist.List) {
	u := list.Plan.Units
	fmt.Fprintln(out, "\nTubes")
	rows := [][]string{{"", "run", "tube", "way", "cut to", "from", "up to", "blank", "bends"}}
	for _, t := range list.Tubes {
		rows = append(rows, []string{
			t.Letter, t.Run, t.Way.Tube.Name, t.Way.Name, u.Text(t.Cut.Aim), u.Text(t.Cut.Shortest),
			u.Text(t.Cut.Longest), u.Text(t.Cut.Blank), bendsText(t, u),
		})
	}
	if len(rows) == 1 {
		fmt.Fprintln(out, "  none: the plan asks for no run that can be made")
		return
	}
	table(out, rows)
	if bent(list) {
		fmt.Fprintln(out, "  Bends: turn, then where it starts on the squared blank, from the end at the run's from port.")
	}
}

func bent(list cutlist.List) bool {
	return slices.ContainsFunc(list.Tubes, func(t cutlist.Tube) bool { return len(t.Bench.Bends) > 0 })
}

// bendsText lists a tube's bends as they are marked on its blank, which still
// has its trim: "90.0° at 126.5; 45.0° at 225.0 roll 180.0°".
func bendsText(t cutlist.Tube, u route.Units) string {
	var each []string
	for i, b := range t.Bench.Bends {
		text := fmt.Sprintf("%s at %s", route.Degrees(b.Turn), u.Text(b.BlankA.Start))
		if i > 0 {
			text += " roll " + route.Degrees(b.Roll)
		}
		each = append(each, text)
	}
	return strings.Join(each, "; ")
}

func barsText(out *bytes.Buffer, list cutlist.List) {
	u := list.Plan.Units
	fmt.Fprintln(out, "\nBars")
	if len(list.Bars) == 0 {
		why := "there is nothing to saw"
		if len(list.Tubes) > 0 {
			why = "no bar holds a piece; the findings say how long one must be"
		}
		fmt.Fprintln(out, "  none: "+why)
	}
	var rows [][]string
	for _, b := range list.Bars {
		left := "left " + u.Text(b.Left)
		if b.Keep {
			left += " (keep)"
		}
		rows = append(rows, []string{b.Tube, u.Text(b.Length), b.From, piecesText(b, u), left})
	}
	table(out, rows)
	for _, s := range list.Spares {
		fmt.Fprintf(out, "  %s: %s\n", s.Tube, s.Why)
	}
	for _, p := range list.Proof {
		fmt.Fprintf(out, "  %s: %s\n", p.Tube, p.Words())
	}
}

// sawnText lists the bars that tries at tubes were sawn from already.
func sawnText(out *bytes.Buffer, list cutlist.List) {
	if len(list.Sawn) == 0 {
		return
	}
	u := list.Plan.Units
	fmt.Fprintln(out, "\nSawn already")
	var rows [][]string
	for _, s := range list.Sawn {
		result := "did not fit"
		if s.Fits {
			result = "fits"
		}
		rows = append(rows, []string{s.Run, s.Tube, u.Text(s.Length), "blank " + u.Text(s.Blank), "left " + u.Text(s.Left), result})
	}
	table(out, rows)
}

func piecesText(b cutlist.Bar, u route.Units) string {
	var each []string
	for _, p := range b.Pieces {
		name := p.Run
		if p.Machine > 1 {
			name += fmt.Sprintf(" #%d", p.Machine)
		}
		if p.Spare {
			name += " spare"
		}
		each = append(each, name+" "+u.Text(p.Length))
	}
	return strings.Join(each, " | ")
}

func buyText(out *bytes.Buffer, list cutlist.List) {
	fmt.Fprintln(out, "\nBuy")
	if len(list.Buy) == 0 {
		fmt.Fprintln(out, "  nothing")
		return
	}
	rows := [][]string{{"item", "need", "on hand", "buy", "price"}}
	total := 0.0
	for _, i := range list.Buy {
		price := ""
		if i.Each > 0 {
			price = fmt.Sprintf("%.2f", i.Price)
		}
		rows = append(rows, []string{i.Label(list.Plan.Units), fmt.Sprint(i.Need), fmt.Sprint(i.OnHand), fmt.Sprint(i.Buy), price})
		total += i.Price
	}
	rows = append(rows, []string{"total", "", "", "", fmt.Sprintf("%.2f", total)})
	table(out, rows)
	if missing := list.Uncounted(); len(missing) > 0 {
		fmt.Fprintf(out, "  not complete: without a tube yet, and so not counted: %s\n", strings.Join(missing, ", "))
	}
}

// findingsText lists findings, gravest first as they come, each with its way
// out or those that were tried.
func findingsText(list cutlist.List) []byte {
	var out bytes.Buffer
	if len(list.Findings) == 0 {
		fmt.Fprintln(&out, "Findings: none")
		return out.Bytes()
	}
	fmt.Fprintln(&out, "Findings")
	wide := 17 // of the usual codes
	for _, f := range list.Findings {
		wide = max(wide, len(f.Code))
	}
	for i, f := range list.Findings {
		fmt.Fprintf(&out, "  %-7s  %-*s  %s\n", f.Severity, wide, f.Code, f.What)
		for _, line := range waysOut(list, i) {
			fmt.Fprintf(&out, "  %-7s  %-*s  %s\n", "", wide, "", line)
		}
	}
	return out.Bytes()
}

// waysOut are the lines below a finding.
func waysOut(list cutlist.List, at int) (lines []string) {
	if at < len(list.Offers) {
		for i, o := range list.Offers[at] {
			lines = append(lines, offerText(o, i == 0))
		}
	}
	if fix := list.Findings[at].Fix; lines == nil && fix != "" {
		lines = []string{fix}
	}
	return lines
}

// offerText is a way out that was tried, and what comes and goes with it.
func offerText(o mend.Offer, first bool) string {
	text := "Or, tried too: " + o.Words
	if first {
		text = "Tried, and it helps: " + o.Words
	}
	switch n := len(o.Settles); {
	case n == 1:
		text += " It settles another error with it."
	case n > 1:
		text += fmt.Sprintf(" It settles %d other errors with it.", n)
	}
	for _, f := range o.Brings {
		text += fmt.Sprintf(" It brings a warning, %s.", f.Code)
	}
	return text
}

func draftText(out *bytes.Buffer, list cutlist.List) {
	if !list.Draft {
		return
	}
	fmt.Fprintln(out, "\nDraft: do not cut yet. These numbers are only typical:")
	for i, r := range list.Reasons {
		fmt.Fprintf(out, "  %s\n", r.What)
		if i+1 == len(list.Reasons) || list.Reasons[i+1].How != r.How { // once for all that are measured alike
			fmt.Fprintf(out, "    %s\n", r.How)
		}
	}
}
