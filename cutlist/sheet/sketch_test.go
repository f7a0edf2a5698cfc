package sheet_test

import (
	"testing"

	"tubewright/cutlist/draw"
	"tubewright/cutlist/measure"
	"tubewright/cutlist/sheet"
)

// Every way of measuring has its drawing, in every theme, with nothing outside
// it and no word on another.
func TestEverySketchIsDrawn(t *testing.T) {
	for _, s := range measure.Sketches() {
		for _, th := range []sheet.Theme{sheet.PaperTheme(), sheet.DarkTheme()} {
			d := sheet.MeasureSketch(s, "", th)
			if d.W != sheet.SketchWidth || d.H != sheet.SketchHeight || len(d.Items) < 6 {
				t.Errorf("%s: %g × %g mm, %d things drawn", s, d.W, d.H, len(d.Items))
			}
			for _, fault := range cluttered(d, 0) {
				t.Errorf("%s: %s", s, fault)
			}
		}
	}
	if d := sheet.MeasureSketch("of the moon", "", sheet.PaperTheme()); len(d.Items) != 0 {
		t.Error("a drawing of what there is none")
	}
}

// The number one is at stands out: its drawing differs from that of another and
// from the one where none does.
func TestTheNumberAtHandStandsOut(t *testing.T) {
	th := sheet.PaperTheme()
	for sketch, key := range map[measure.Sketch]measure.Key{
		measure.SketchStop: measure.Stop, measure.SketchInsertion: measure.Least, measure.SketchCollar: measure.CollarOD,
		measure.SketchLength: measure.Length, measure.SketchOffset: measure.Sideways, measure.SketchElbow: measure.LegOut,
		measure.SketchTee: measure.SideLeg, measure.SketchTube: measure.ID, measure.SketchFormer: measure.Radius,
		measure.SketchStraights: measure.AtEnd, measure.SketchTrim: measure.Trim, measure.SketchPort: measure.Y,
	} {
		if n := alarms(sheet.MeasureSketch(sketch, key, th), th); n == 0 {
			t.Errorf("%s: %s does not stand out", sketch, key)
		}
		if n := alarms(sheet.MeasureSketch(sketch, "another", th), th); n != 0 {
			t.Errorf("%s: %d things stand out for a number it does not show", sketch, n)
		}
	}
}

func alarms(d draw.Drawing, th sheet.Theme) (n int) {
	for _, it := range d.Items {
		switch it := it.(type) {
		case draw.Line:
			if it.Stroke.Colour == th.Alarm {
				n++
			}
		case draw.Text:
			if it.Colour == th.Alarm {
				n++
			}
		case draw.Arc, draw.Fill:
		}
	}
	return n
}
