package planfile_test

import (
	"testing"

	"tubewright/assets"
	"tubewright/route/planfile"
)

func TestShelfHoldsWhatPlansName(t *testing.T) {
	shelf := planfile.Shelf()
	if len(shelf.Tubes) == 0 || len(shelf.Fittings) == 0 || len(shelf.Parts) == 0 {
		t.Errorf("Shelf() holds %d tubes, %d fittings, %d parts; want some of each", len(shelf.Tubes), len(shelf.Fittings), len(shelf.Parts))
	}
}

func TestDemosRead(t *testing.T) {
	for _, name := range assets.Demos() {
		text, ok := assets.Demo(name)
		if !ok {
			continue // listed ahead of being written; the assets package tests that
		}
		plan, _, err := planfile.Read(name+planfile.Ending, text)
		if err != nil {
			t.Errorf("Read(%s): %v", name, err)
		}
		if len(plan.Runs) == 0 || plan.Catalogue != planfile.Shelf() {
			t.Errorf("Read(%s) gives %d runs; want some, and the shipped catalogue", name, len(plan.Runs))
		}
	}
}

func TestExamplesSurviveWriting(t *testing.T) {
	for _, name := range []string{"testdata/full.plan.yaml", "testdata/by-hand.plan.yaml"} {
		plan, _, err := planfile.Load(name)
		if err != nil {
			t.Fatalf("Load(%s): %v", name, err)
		}
		text, report, err := planfile.Write(plan, nil)
		if err != nil || report.CommentsLost {
			t.Fatalf("Write(%s) = %+v, %v", name, report, err)
		}
		back, _, err := planfile.Read(name, text)
		if err != nil || !planfile.Same(plan, back) {
			t.Errorf("%s written and read again differs (%v):\n%s", name, err, text)
		}
	}
}
