package ui

import (
	"fmt"
	"math"
	"slices"

	"tubewright/cutlist"
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

// proofLines says how good the bars are: in one line when all is proven.
func proofLines(l cutlist.List) (lines []string) {
	var proven []string
	for _, p := range l.Proof {
		if p.Proven {
			proven = append(proven, p.Tube)
		} else {
			lines = append(lines, proofLine(p, l.Plan.Stock))
		}
	}
	if len(proven) > 0 {
		lines = append([]string{"Cheapest possible, proven: " + list(proven) + "."}, lines...)
	}
	return lines
}

func barName(b cutlist.Bar, u route.Units) string {
	from := ""
	if b.From == "offcut" {
		from = " offcut"
	}
	return u.Text(b.Length) + from
}

// proofLine says how far the bars of one tube may be from the best.
func proofLine(p cutlist.Proof, stock []route.Stock) string {
	short := p.Cost - p.Bound
	if priced(p.Tube, stock) {
		return fmt.Sprintf("%s: within %s of the cheapest possible.", p.Tube, money(short))
	}
	return fmt.Sprintf("%s: within %s of the fewest possible.", p.Tube, count(int(math.Ceil(short)), "bar"))
}

// priced reports whether the proof of a tube counts money and not bars.
func priced(tube string, stock []route.Stock) bool {
	return slices.ContainsFunc(stock, func(s route.Stock) bool { return s.Tube == tube && s.Price > 0 })
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
