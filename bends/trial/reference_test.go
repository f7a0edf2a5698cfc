package trial_test

import (
	"encoding/csv"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"tubewright/bends"
	"tubewright/bends/trial"
)

// The radii plastic tube is usually bent to, as rows with their sources, come back
// from test bends on tubes of four sizes; half the diameter is refused.
func TestUsualRadiiAreTaken(t *testing.T) {
	file, err := os.Open("testdata/materials.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil || len(rows) != 3 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows[1:] {
		times, err := strconv.ParseFloat(row[3], 64)
		if err != nil || row[4] != "x OD" {
			t.Fatalf("%s: %v", row[0], row)
		}
		for _, od := range []float64{12, 14, 16, 19.05} {
			w := workshop{od: od, radius: times * od, back: bends.Springback{Degrees: 1, Percent: 1}}
			list := []trial.Bend{w.bend(rand.New(rand.NewPCG(0, 0)), 92, fromMarks)}
			f, err := trial.Fit(od, list, trial.Options{})
			if err != nil || !f.Radius.Holds(times*od) {
				t.Errorf("%s: %g times %g mm: %+v, %v; %s", row[0], times, od, f.Radius, err, row[6])
			}
			list[0].Legs[0] -= bends.Gain(times*od-0.2*od, list[0].After) // leaves 0.2 diameters
			if _, err := trial.Fit(od, list, trial.Options{}); !is[*trial.RadiusError](err) && !is[*trial.LegError](err) {
				t.Errorf("%s: a fifth of %g mm: %v", row[0], od, err)
			}
		}
	}
}
