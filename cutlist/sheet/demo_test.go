package sheet_test

import (
	"context"
	"io"
	"testing"

	"tubewright/assets"
	"tubewright/cutlist"
	"tubewright/cutlist/sheet"
	"tubewright/route/find"
	"tubewright/route/planfile/demoplan"
)

// demo solves a demo plan as the program does.
func demo(t testing.TB, name string) cutlist.List {
	t.Helper()
	plan := demoplan.Read(t, name)
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		t.Fatal(err)
	}
	l, err := cutlist.Build(context.Background(), plan, sol)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestDemosPrintCleanly(t *testing.T) {
	for _, name := range assets.Demos() {
		l := demo(t, name)
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			pages := sheet.Pages(l, sheet.Options{Paper: paper})
			for n, page := range pages {
				for _, fault := range cluttered(page, 5) {
					t.Errorf("%s on %s, page %d: %s", name, paper, n+1, fault)
				}
			}
			for _, tube := range l.Tubes {
				if len(pagesOf(pages, "Tube "+tube.Letter+":")) == 0 {
					t.Errorf("%s on %s: tube %s has no page", name, paper, tube.Letter)
				}
			}
		}
	}
}

func BenchmarkPDFDemo(b *testing.B) {
	l := demo(b, "conservation-scanner")
	for b.Loop() {
		if err := sheet.PDF(io.Discard, l, sheet.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
