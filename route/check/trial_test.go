package check_test

import (
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/bends/trial"
	"tubewright/route/check"
)

// Test bends of 14 mm gain at 90 degrees say 32.62 mm (package trial, Worked by
// hand); a hand that cuts to 0.5 mm and bends to 1.5 degrees knows that to 4.4 mm
// and the springback to 3.1 degrees, 95 times in 100.
func TestTrialDiffers(t *testing.T) {
	for _, tt := range []struct {
		name    string
		radius  float64
		back    bends.Springback
		measure float64 // 0: nothing to tell
		unit    string
		says    []string
	}{
		{"as measured", 32.62, bends.Springback{Degrees: 3}, 0, "", nil},
		{"within the interval", 35, bends.Springback{Percent: 1}, 0, "", nil},
		{"another radius", 42, bends.Springback{Degrees: 3}, 42 - 32.6188, "mm", []string{"radius of 42.0 mm", "32.6 mm", "28.2 mm to 37.0 mm", "one more"}},
		{"another springback", 32.62, bends.Springback{Degrees: 8}, 5, "deg", []string{"opens by 8.0°", "say 3.0°"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := sound()
			tube := &s.plan.Tubes[0]
			tube.Radius, tube.Springback = tt.radius, tt.back
			tube.TestBends = []trial.Bend{{
				Marks: [2]float64{40, 240}, From: trial.Marks, Former: 93, After: 90, Legs: [2]float64{115, 115},
			}}
			var got []check.Finding
			for _, f := range s.findings(t) {
				if f.Code == check.TrialDiffers {
					got = append(got, f)
				}
			}
			if tt.measure == 0 {
				if len(got) != 0 {
					t.Errorf("told: %s", told(got))
				}
				return
			}
			if len(got) != 1 || got[0].Severity != check.Note || got[0].Unit != tt.unit || got[0].Measure < tt.measure-0.001 || got[0].Measure > tt.measure+0.001 || len(got[0].Runs) != 2 {
				t.Fatalf("told: %s; want one note of %g %s for both runs", told(got), tt.measure, tt.unit)
			}
			for _, words := range tt.says {
				if !strings.Contains(got[0].What+" "+got[0].Fix, words) {
					t.Errorf("%q and %q do not say %q", got[0].What, got[0].Fix, words)
				}
			}
		})
	}
}
