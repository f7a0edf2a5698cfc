package ui

import (
	"strings"

	"tubewright/cutlist"
	"tubewright/cutlist/sheet"
	"tubewright/route"
)

// rackModel is what the stock rack shows.
type rackModel struct {
	bars  []cutlist.Bar
	names []string // beside each bar: what it is
	proof []string // one line for each kind of tube
}

func rackOf(l cutlist.List, u route.Units) rackModel {
	m := rackModel{bars: l.Bars}
	for _, b := range l.Bars {
		m.names = append(m.names, barName(b, u))
	}
	m.proof = proofLines(l)
	return m
}

// proofLines says how good the bars are, one line for each kind of tube.
func proofLines(l cutlist.List) (lines []string) {
	for _, p := range l.Proof {
		lines = append(lines, p.Tube+": "+p.Words()+".")
	}
	return lines
}

func barName(b cutlist.Bar, u route.Units) string { return u.Text(b.Length) + fromWord(b) }

// fromWord says when a bar is an offcut.
func fromWord(b cutlist.Bar) string {
	if b.From == "offcut" {
		return " offcut"
	}
	return ""
}

// barWords tells what is sawn from a bar, and what is left of it.
func barWords(l cutlist.List, b cutlist.Bar) string {
	u := l.Plan.Units
	words := make([]string, 0, len(b.Pieces)+1)
	for _, p := range b.Pieces {
		words = append(words, sheet.PieceName(p)+" "+u.Text(p.Length))
	}
	if b.Left > 0 {
		words = append(words, "left "+u.Text(b.Left))
	}
	return u.TextUnit(b.Length) + fromWord(b) + ": " + strings.Join(words, ", ")
}

// buyRow is one line of the buying list.
type buyRow struct {
	item      string // as the plan calls it
	label     string // as it is written
	bar       bool   // a bar of tube; a plan keeps those on hand as offcuts, not as a count
	need, buy string
	onHand    int
	price     string
	note      string
}

// buyingOf gives the buying list and what it comes to.
func buyingOf(l cutlist.List) (rows []buyRow, total string) {
	sum, unknown := 0.0, 0
	for _, it := range l.Buy {
		row := buyRow{
			it.Item, it.Label(l.Plan.Units), it.Tube != "",
			plainInt(it.Need), plainInt(it.Buy), it.OnHand, money(it.Price), it.Note,
		}
		if it.Each == 0 && it.Price == 0 && it.Buy > 0 {
			row.price = "?"
			unknown++
		}
		sum += it.Price
		rows = append(rows, row)
	}
	if len(rows) > 0 {
		total = "together " + money(sum)
	}
	if unknown > 0 {
		total += " and " + count(unknown, "unknown price")
	}
	return rows, total
}
