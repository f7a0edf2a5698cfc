package sheet_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
	"tubewright/route"
)

// said is all words of some pages.
func said(pages []draw.Drawing) map[string]bool {
	words := map[string]bool{}
	for _, p := range pages {
		for _, t := range texts(p) {
			for _, w := range strings.Fields(t.text) {
				words[strings.Trim(w, ".,;:()")] = true
			}
		}
	}
	return words
}

// pagesOf is the pages whose header or outline names a section.
func pagesOf(pages []draw.Drawing, head string) (found []draw.Drawing) {
	for _, p := range pages {
		for _, t := range texts(p) {
			if strings.HasPrefix(t.text, head) && t.lo.Y < 14 {
				found = append(found, p)
				break
			}
		}
	}
	return found
}

func TestEveryNumberOfATubeIsOnItsPages(t *testing.T) {
	for name, l := range everyList(t) {
		u, pages := l.Plan.Units, sheet.Pages(l, sheet.Options{})
		for _, tube := range l.Tubes {
			own := said(pagesOf(pages, "Tube "+tube.Letter+":"))
			for what, want := range numbersOf(tube, u) {
				if !own[want] {
					t.Errorf("%s: the pages of tube %s do not say %s = %s", name, tube.Letter, what, want)
				}
			}
		}
	}
}

// numbersOf is what the bench asks of a tube, as written in the plan's units.
func numbersOf(t cutlist.Tube, u route.Units) map[string]string {
	all := map[string]string{
		"aim": u.Text(t.Cut.Aim), "shortest": u.Text(t.Cut.Shortest), "longest": u.Text(t.Cut.Longest), "blank": u.Text(t.Cut.Blank),
	}
	for i, laid := range []route.Laid{t.Way.Start, t.Way.End} {
		all[fmt.Sprint("insertion ", i)] = u.Text(laid.Socket.Insertion.Full)
		all[fmt.Sprint("least insertion ", i)] = u.Text(laid.Socket.Insertion.Least)
	}
	for i, s := range t.Bench.Straights {
		if len(t.Bench.Bends) > 0 {
			all[fmt.Sprint("straight ", i)] = u.Text(s)
		}
	}
	for i, b := range t.Bench.Bends {
		at := func(what string) string { return fmt.Sprintf("%s of bend %d", what, i+1) }
		all[at("turn")], all[at("form to")] = route.Degrees(b.Turn), route.Degrees(b.FormTo)
		all[at("wrap")], all[at("heat")], all[at("radius")] = u.Text(b.Wrap), u.Text(b.Heat), u.Text(b.Radius)
		all[at("back before")], all[at("back after")] = u.Text(b.Back.Before), u.Text(b.Back.After)
		for k, m := range []bends.Marks{b.FromA, b.FromB, b.BlankA, b.BlankB} {
			all[at(fmt.Sprint("start ", k))], all[at(fmt.Sprint("middle ", k))], all[at(fmt.Sprint("end ", k))] = u.Text(m.Start), u.Text(m.Middle), u.Text(m.End)
		}
	}
	return all
}

func TestEveryNumberOfTheBarsIsOnTheCutList(t *testing.T) {
	for name, l := range everyList(t) {
		u := l.Plan.Units
		words := said(pagesOf(sheet.Pages(l, sheet.Options{}), "Cut list"))
		for i, b := range l.Bars {
			at := 0.0
			for _, p := range b.Pieces {
				at += p.Length
				if !words[u.Text(p.Length)] || !words[u.Text(at)] {
					t.Errorf("%s: bar %d: the piece of %s cut at %s is not listed", name, i+1, u.Text(p.Length), u.Text(at))
				}
				at += l.Plan.Saw.Kerf
			}
			if !words[u.Text(b.Left)] || !words[u.Text(b.Length)] {
				t.Errorf("%s: bar %d: its length or what is left, %s, is not listed", name, i+1, u.Text(b.Left))
			}
		}
	}
}

func TestBuyingListSaysEveryLine(t *testing.T) {
	l := stressList(t)
	words := said(pagesOf(sheet.Pages(l, sheet.Options{}), "Buying list"))
	total := 0.0
	for _, it := range l.Buy {
		total += it.Price
		for _, want := range []string{fmt.Sprint(it.Need), fmt.Sprint(it.OnHand), fmt.Sprint(it.Buy), fmt.Sprintf("%.2f", it.Price)} {
			if !words[want] {
				t.Errorf("%s: %s is not on the buying list", it.Item, want)
			}
		}
	}
	if want := fmt.Sprintf("%.2f", total); !words[want] {
		t.Errorf("the total, %s, is not on the buying list", want)
	}
}

// run is all of a page's writing in one line, so that wrapped texts can be found.
func run(pages []draw.Drawing) string {
	var all strings.Builder
	for _, p := range pages {
		for _, t := range texts(p) {
			all.WriteString(t.text)
		}
	}
	return strings.ReplaceAll(all.String(), " ", "")
}

func TestFindingsAreAllThereWithTheirWayOut(t *testing.T) {
	l := stressList(t)
	all := run(sheet.Pages(l, sheet.Options{}))
	for _, f := range l.Findings {
		for _, want := range []string{f.What, f.Fix} {
			if !strings.Contains(all, strings.ReplaceAll(want, " ", "")) {
				t.Errorf("the sheets do not say %q", want)
			}
		}
	}
	for _, head := range []string{"Errors:donotcut", "Warnings:", "Notes"} {
		if !strings.Contains(all, head) {
			t.Errorf("no heading %q", head)
		}
	}
}

func TestDraftIsSaidOnEveryPageAndOnlyThere(t *testing.T) {
	draft, firm := list(t, smallPlan()), everyList(t)["firm"]
	for n, p := range sheet.Pages(draft, sheet.Options{}) {
		if !said([]draw.Drawing{p})["DRAFT"] {
			t.Errorf("page %d of a draft does not say so", n+1)
		}
	}
	pages := sheet.Pages(draft, sheet.Options{})
	all := run(pagesOf(pages, "Measure first"))
	for _, r := range draft.Reasons {
		for _, want := range []string{r.What, r.How} {
			if !strings.Contains(all, strings.ReplaceAll(want, " ", "")) {
				t.Errorf("the page of typical numbers does not say %q", want)
			}
		}
	}
	if said(sheet.Pages(firm, sheet.Options{}))["DRAFT"] {
		t.Error("a firm list is called a draft")
	}
}

func TestPagesAreNumberedAndNamed(t *testing.T) {
	pages := sheet.Pages(list(t, smallPlan()), sheet.Options{Date: "1 May 2031", Revision: "rev B"})
	for n, p := range pages {
		all := run([]draw.Drawing{p})
		for _, want := range []string{fmt.Sprintf("page%dof%d", n+1, len(pages)), "Conservationscanner(test)", "lengthsinmm", "1May2031", "revB"} {
			if !strings.Contains(all, want) {
				t.Errorf("page %d does not say %q", n+1, want)
			}
		}
	}
}

// The bar that checks the printer is a line of exactly 100 mm.
func TestScaleBarIs100mm(t *testing.T) {
	for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
		pages := pagesOf(sheet.Pages(list(t, smallPlan()), sheet.Options{Paper: paper}), "Cut list")
		found := 0
		for _, it := range pages[0].Items {
			l, ok := it.(draw.Line)
			if ok && len(l.Points) == 2 && l.Points[0].Y == l.Points[1].Y && l.Points[1].X-l.Points[0].X > 99.999 && l.Points[1].X-l.Points[0].X < 100.001 {
				found++
			}
		}
		if found != 1 {
			t.Errorf("%s: %d lines of 100 mm on the cut list, want 1", paper, found)
		}
		if all := run(pages); !strings.Contains(all, "Measureme:100mm") {
			t.Errorf("%s: the bar does not say what it is", paper)
		}
	}
}

func TestSameListSameBytes(t *testing.T) {
	l := list(t, smallPlan())
	var first, second bytes.Buffer
	for _, out := range []*bytes.Buffer{&first, &second} {
		if err := sheet.PDF(out, l, sheet.Options{Paper: sheet.Letter}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("the same list gave two different documents")
	}
}

func TestPaper(t *testing.T) {
	for name, want := range map[string]sheet.Paper{"a4": sheet.A4, " A4": sheet.A4, "Letter": sheet.Letter, "us letter": sheet.Letter} {
		if got, err := sheet.ParsePaper(name); err != nil || got != want {
			t.Errorf("ParsePaper(%q) = %v, %v; want %v", name, got, err, want)
		}
	}
	if _, err := sheet.ParsePaper("a3"); err == nil || !strings.Contains(err.Error(), `"a3"`) {
		t.Errorf("ParsePaper(a3): %v, want an error that names it", err)
	}
	for _, p := range []sheet.Paper{sheet.A4, sheet.Letter} {
		if got, err := sheet.ParsePaper(p.String()); err != nil || got != p {
			t.Errorf("ParsePaper(%q) = %v, %v", p.String(), got, err)
		}
	}
}
