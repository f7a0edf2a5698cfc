package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route/check"
)

// buying is the shopping list.
func (b *book) buying() {
	b.page("Buying list", "Buying list")
	b.heading("Buying list", headSize, 20)
	if missing := b.list.Uncounted(); len(missing) > 0 {
		b.para("Not complete: without a tube yet, and so not counted here: " + strings.Join(missing, ", ") + ".")
	}
	if len(b.list.Buy) == 0 {
		b.para("There is nothing to buy.")
		return
	}
	total, unknown := 0.0, 0
	var rows [][]cell
	for _, it := range b.list.Buy {
		rows = append(rows, b.buyRow(it))
		total += it.Price
		if unpriced(it) {
			unknown++
		}
	}
	b.table(b.buyColumns(), rows)
	b.need(8)
	b.y += 4
	b.write(margin+padding, b.y, "Total: "+money(total), bodySize+0.3, true, draw.Left, b.theme.Ink)
	b.y += 2
	if unknown > 0 {
		b.faint(fmt.Sprintf("Without %s whose price is not known.", count(unknown, "line")))
	}
	b.faint("Prices are the plan's own, in the plan's money. Fittings, seals and tube must suit each other: ask the maker where the plan is only typical.")
}

// unpriced reports whether the price of what is to buy is not known.
func unpriced(it cutlist.Item) bool { return it.Buy > 0 && it.Price == 0 }

func (b *book) buyRow(it cutlist.Item) []cell {
	each, price := money(it.Each), money(it.Price)
	if it.Each == 0 {
		each = "–"
	}
	if unpriced(it) {
		price = "not known"
	}
	row := say("", it.Label(b.units), strconv.Itoa(it.Need), strconv.Itoa(it.OnHand), strconv.Itoa(it.Buy), each, price, it.Note)
	row[0].tick = it.Buy > 0
	return row
}

func (b *book) buyColumns() []column {
	cols := []column{
		{head: ""},
		{head: "item", wraps: true},
		{head: "need", align: draw.Right},
		{head: "on hand", align: draw.Right},
		{head: "buy", align: draw.Right, bold: true},
		{head: "each", align: draw.Right},
		{head: "price", align: draw.Right},
		{head: "note", wraps: true},
	}
	for _, it := range b.list.Buy {
		if it.Note != "" {
			return cols
		}
	}
	cols[len(cols)-1].head = ""
	return cols
}

// severities is the order and the wording of the findings' headings.
var severities = []struct {
	severity check.Severity
	said     string
}{
	{check.Error, "Errors: do not cut until these are settled"},
	{check.Warning, "Warnings: cut only if you know better"},
	{check.Note, "Notes"},
}

// findings lists what is open, by gravity, with the way out; numbered through
// as on the overview.
func (b *book) findings() {
	b.section("Findings")
	b.heading("Findings still open", headSize, 20)
	if len(b.list.Findings) == 0 {
		b.para("None. The checks found nothing to settle.")
	}
	for _, s := range severities {
		var rows [][]cell
		for i, f := range b.list.Findings {
			if f.Severity == s.severity {
				rows = append(rows, say("!"+strconv.Itoa(i+1), f.What, b.measure(f), f.Fix))
			}
		}
		if len(rows) == 0 {
			continue
		}
		b.heading(s.said, bodySize+0.4, 20)
		b.table([]column{{head: "no.", bold: true}, {head: "what", wraps: true}, {head: "measure", align: draw.Right}, {head: "way out", wraps: true}}, rows)
	}
}

// measure writes a finding's measure in its unit.
func (b *book) measure(f check.Finding) string {
	switch f.Unit {
	case "mm":
		return b.units.TextUnit(f.Measure)
	case "deg":
		return strconv.FormatFloat(f.Measure+0, 'f', 1, 64) + "°"
	case "":
		return ""
	}
	return strconv.FormatFloat(f.Measure, 'f', 2, 64) + " " + f.Unit
}

// reasons names the numbers of a draft that are only typical.
func (b *book) reasons() {
	b.page("Measure first", "Measure first")
	b.draft = len(b.pages)
	b.heading("Measure these first", headSize, 20)
	b.para("This is a draft: the numbers below are typical ones and not from your own parts. A tube that rests on them may not fit. " +
		"Measure each, write it into the plan with “known_from: measured”, and print again.")
	var rows [][]cell
	for _, r := range b.list.Reasons {
		row := say("", r.What, r.How, b.lettersOf(r.Runs), "")
		row[0].tick = true
		rows = append(rows, row)
	}
	b.table([]column{
		{head: "done"},
		{head: "only typical", wraps: true, bold: true},
		{head: "how to measure it", wraps: true},
		{head: "tubes", wraps: true},
		{head: "measured", wraps: true},
	}, rows)
}

// lettersOf names runs by their tubes' letters.
func (b *book) lettersOf(runs []string) string {
	said := ""
	for _, r := range runs {
		name := letterOf(b.list, r)
		if name == "" {
			name = r
		}
		if said != "" {
			said += ", "
		}
		said += name
	}
	return said
}
