package measure_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"tubewright/cutlist/measure"
	"tubewright/route"
	"tubewright/route/find"
)

// practice reads a row of the trade's habits: what, how much and how far off.
func practice(t *testing.T, id string) (value, off float64) {
	t.Helper()
	f, err := os.Open("../../testdata/reference/11_bench_practice.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || f.Close() != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		if row[0] == id {
			value, err = strconv.ParseFloat(row[3], 64)
			if err != nil {
				t.Fatal(err)
			}
			off, _ = strconv.ParseFloat(row[5], 64)
			return value, off
		}
	}
	t.Fatalf("there is no row %s", id)
	return 0, 0
}

// What the catalogue calls typical is what the trade does: insertion 8 to 15 mm
// (TP-009, TP-010), trim 10 mm and more (TP-014), formers of 1.5 to 2 diameters
// for heat-bent plastic (MT-080, MT-081). All are common practice, within the
// rows' own tolerances.
func TestTypicalNumbersAreThoseOfTheTrade(t *testing.T) {
	plan, _ := museum(t)
	shallow, a := practice(t, "TP-009")
	deep, b := practice(t, "TP-010")
	for _, f := range plan.AllFittings() {
		if full := f.Insertion.Full; f.Kind == route.Socket && (full < shallow-a || full > deep+b) {
			t.Errorf("%s takes %.1f mm, the trade %.0f to %.0f", f.Name, full, shallow, deep)
		}
	}
	trim, c := practice(t, "TP-014")
	least, d := practice(t, "MT-080")
	usual, e := practice(t, "MT-081")
	for _, tube := range plan.Catalogue.Tubes {
		if tube.Radius == 0 {
			continue
		}
		if tube.Trim < trim-c {
			t.Errorf("%s is trimmed by %.1f mm, the trade leaves %.0f", tube.Name, tube.Trim, trim)
		}
		if tube.Material != "petg" && tube.Material != "acrylic" {
			continue
		}
		if tube.LeastRadius/tube.OD < least-d || math.Abs(tube.Radius/tube.OD-usual) > e {
			t.Errorf("%s: radius %.2f and at least %.2f diameters, the trade %.1f and %.1f", tube.Name, tube.Radius/tube.OD, tube.LeastRadius/tube.OD, usual, least)
		}
	}
}

// What one is told to do is what the trade does: the end of the scrap square
// (TP-002), deburred and chamfered (TP-003), the insertion marked on the tube
// (TP-005), bent tube trimmed after bending (TP-013).
func TestTheInstructionsAreThoseOfTheTrade(t *testing.T) {
	plan, _ := museum(t)
	socket, _ := plan.FindFitting("socket-16")
	petg, _ := plan.FindTube("petg-16-12")
	var all strings.Builder
	for _, x := range measure.Things(plan, []find.Way{{Run: "r", Tube: petg, Start: route.Laid{Bodies: []route.Body{{Fitting: socket}}}}}) {
		all.WriteString(x.Before + "\n")
		for _, n := range x.Numbers {
			all.WriteString(string(n.Key) + ": " + n.How + "\n")
		}
	}
	for _, want := range []string{"one end square", "deburred and chamfered", "mark it where it enters the collar", "cut off after bending"} {
		if !strings.Contains(all.String(), want) {
			t.Errorf("nobody says %q:\n%s", want, all.String())
		}
	}
}
