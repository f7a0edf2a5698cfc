package sheet_test

import (
	"strings"
	"testing"

	"tubewright/assets"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
	"tubewright/route"
	tries "tubewright/route/made"
	"tubewright/route/planfile/demoplan"
	"tubewright/route/survey"
)

// triedPlan is the small machine after two evenings at the bench: one tube made
// at the second try, one that failed.
func triedPlan(t testing.TB) route.Plan {
	t.Helper()
	p := smallPlan()
	p.Name = "Tried"
	fits := drawn(t, p, p.Runs[0]).Attempt()
	fits.Fits, fits.Cut, fits.CutFrom, fits.Date = true, 200.25, 500, "4 May"
	for run, list := range map[string][]route.Attempt{
		"pump-to-plate":    {{Cut: 202.25, Blank: 236, CutFrom: 310, Wrong: "2 mm long", Date: "3 May"}, fits},
		"pump-to-radiator": {{Blank: 400, CutFrom: 1000, Wrong: "kinked in the second bend, which was too hot"}},
	} {
		for _, a := range list {
			var err error
			if p, err = tries.Record(p, run, a); err != nil {
				t.Fatal(err)
			}
		}
	}
	return p
}

func pageSaying(pages []draw.Drawing, words string) bool {
	for _, p := range pages {
		if strings.Contains(run([]draw.Drawing{p}), strings.ReplaceAll(words, " ", "")) {
			return true
		}
	}
	return false
}

func TestHistoryIsOnTheTubesPage(t *testing.T) {
	pages := sheet.Pages(list(t, triedPlan(t)), sheet.Options{})
	for head, words := range map[string]string{
		"Tube A:":  "Made: first try 2 mm long, 3 May; second fits, 4 May.",
		"Tube C:":  "So far: first try kinked in the second bend, which was too hot.",
		"Cut list": "Sawn already",
	} {
		if !pageSaying(pagesOf(pages, head), words) {
			t.Errorf("%s does not say %q", head, words)
		}
	}
	if pageSaying(pagesOf(pages, "Tube B:"), "So far") {
		t.Error("a tube that nobody tried has a history")
	}
	words := said(pagesOf(pages, "Cut list"))
	for _, want := range []string{"310.0", "236.0", "500.0", "1000.0", "400.0", "599.0"} {
		if !words[want] {
			t.Errorf("the cut list does not say %s", want)
		}
	}
}

// What is to measure is there with how, with room to write, and the drawings.
func TestToMeasureSaysHow(t *testing.T) {
	l := list(t, smallPlan())
	pages := pagesOf(sheet.Pages(l, sheet.Options{}), "Measure first")
	if len(l.Measure) == 0 || len(pages) == 0 {
		t.Fatalf("%d things, %d pages", len(l.Measure), len(pages))
	}
	words := said(pages)
	for _, x := range l.Measure {
		for _, n := range x.Numbers {
			if !pageSaying(pages, n.Name) || n.Unit == "mm" && !words[l.Plan.Units.Text(n.Value)] {
				t.Errorf("%s of %s, %g, is not there", n.Name, x.Name, n.Value)
			}
		}
	}
}

// The survey of every demo and of a bare plan names every port with the faces to
// measure from; nothing is clipped or covered, on both papers.
func TestSurveyPages(t *testing.T) {
	plans := []route.Plan{{Name: "Nothing yet"}, smallPlan(), stressPlan(), longPlan()}
	for _, name := range assets.Demos() {
		p := demoplan.Read(t, name)
		p.Runs = nil
		plans = append(plans, p)
	}
	for _, p := range plans {
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			pages := sheet.SurveyPages(p, sheet.Options{Paper: paper, Date: "1 May"})
			for n, page := range pages {
				for _, fault := range cluttered(page, 5) {
					t.Errorf("%s on %s, page %d: %s", p.Name, paper, n+1, fault)
				}
			}
			words := said(pages)
			for _, g := range survey.Groups(p) {
				for _, r := range g.Rows {
					for axis, w := range r.From {
						if !words[string(w)] || !words[p.Units.Text(r.Plan[axis])] {
							t.Errorf("%s: %s has no %s from the %s", p.Name, r.Ref, p.Units.Text(r.Plan[axis]), w)
						}
					}
				}
			}
			if !words["date"] || !pageSaying(pages, "measured by") {
				t.Errorf("%s: no lines for name and date", p.Name)
			}
		}
	}
}

// In a batch a shape has one template; the tubes that share it are named.
func TestABatchHasOneTemplateForEachShape(t *testing.T) {
	p := smallPlan()
	p.Build = 5
	l := list(t, p)
	l.Tubes = append(l.Tubes, l.Tubes[0])
	twin := &l.Tubes[len(l.Tubes)-1]
	twin.Letter, twin.Run = "D", "twin-of-A"
	pages := sheet.Pages(l, sheet.Options{})
	if !pageSaying(pagesOf(pages, "The batch"), "pump-to-plate, twin-of-A") {
		t.Error("the batch does not say that D is A's twin")
	}
	shared := 0
	for _, p := range pages {
		for _, x := range texts(p) {
			if strings.HasPrefix(x.text, "Template") && strings.Contains(x.text, "pump-to-plate, twin-of-A") {
				shared++
			}
			if strings.HasPrefix(x.text, "Template") && strings.HasSuffix(x.text, ": twin-of-A") {
				t.Errorf("the twin has a template of its own: %s", x.text)
			}
		}
	}
	if shared == 0 {
		t.Error("no template says that it is for both")
	}
	l.Plan.Build = 1
	pages = sheet.Pages(l, sheet.Options{})
	if len(pagesOf(pages, "The batch")) > 0 || !pageSaying(pagesOf(pages, "Full-size templates"), "twin-of-A") {
		t.Error("one machine is no batch")
	}
}

func TestMirrorsAreSaid(t *testing.T) {
	p := smallPlan()
	p.Build = 2
	l := list(t, p)
	i := 1 // reservoir-to-plate: three bends, out of one plane
	l.Tubes = append(l.Tubes, mirrored(l.Tubes[i]))
	if !pageSaying(pagesOf(sheet.Pages(l, sheet.Options{}), "The batch"), "mirror of B") {
		t.Error("nobody says that D is the mirror of B")
	}
}

// mirrored is a tube's mirror image.
func mirrored(t cutlist.Tube) cutlist.Tube {
	t.Letter, t.Run = "D", "mirror"
	t.Bench.Bends = append(t.Bench.Bends[:0:0], t.Bench.Bends...)
	for i := range t.Bench.Bends {
		t.Bench.Bends[i].Roll = -t.Bench.Bends[i].Roll
	}
	return t
}

// jigs are the tubes that have templates: all of one machine, one of each shape
// in a batch.
func jigs(l cutlist.List) (tubes []cutlist.Tube) {
	if l.Plan.Build <= 1 {
		return l.Tubes
	}
	for _, m := range l.Batch() {
		tubes = append(tubes, m.Tube)
	}
	return tubes
}
