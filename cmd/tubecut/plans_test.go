package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Plans as people write them, each with what its list must and must not say.
// The golden files hold the whole lists.
func TestPlansByHand(t *testing.T) {
	tests := []struct {
		plan string
		code int
		says []string
		not  []string
	}{
		{
			"outside-inches", exitFinding,
			[]string{"lengths in inches", "it passes a wall of the case by 0.473 in", "away from the wall by at least 0.473 in", "1 bar to buy, the fewest possible: proven"},
			[]string{" mm", "in in the way", "(1.00)"},
		},
		// the blank's hundredth of a millimetre is rounded once: 406.26 mm is 15.994 in everywhere
		{"odd-inches", exitFine, []string{"40.000  stock  back 22.619 | go 15.994", "14.773  15.994"}, []string{"15.995"}},
		// 1000 + 340 + 400 in offcuts and 1500 in stock hold 9 of 12 pieces
		{"stock-too-few", exitFinding, []string{"20.30; the stock does not hold 3 more: see the findings", "leave 3 pieces uncut"}, []string{"not proven"}},
		{"port-twice", exitFinding, []string{"Give one of the two another port", "port-twice", "mixed-threads", "mixed-sizes"}, []string{"Lead run r2"}},
		// 4395 + 4400 + 4050 mm less what its two bends save: a tube to see, and stock to add
		{"too-long", exitFinding, []string{"stock-too-short", "Add a stock length of copper-15"}, []string{"no-way", "the stock is"}},
		// the cheapest: bars by hand in the plan's own notes, 3 x 12.90
		{"batch", exitFine, []string{"38.70, the cheapest possible: proven", "socket-16           18    4        14   86.80", "bent spare 388.8", "Say under passages of a and b"}, nil},
	}
	for _, test := range tests {
		code, out, problems := tubecut(t, "", "list", filepath.Join("testdata", "plans", test.plan+".plan.yaml"))
		if code != test.code || problems != "" {
			t.Errorf("%s: exit %d, want %d; standard error %q", test.plan, code, test.code, problems)
		}
		for _, s := range test.says {
			if !strings.Contains(out, s) {
				t.Errorf("%s does not say %q", test.plan, s)
			}
		}
		for _, s := range test.not {
			if strings.Contains(out, s) {
				t.Errorf("%s says %q", test.plan, s)
			}
		}
		golden(t, test.plan+".list.txt", out)
	}
}

// In inches the ways and the reason why there is none are told in inches.
func TestWaysInInches(t *testing.T) {
	plans := filepath.Join("testdata", "plans")
	code, out, _ := tubecut(t, "", "ways", filepath.Join(plans, "odd-inches.plan.yaml"), "go")
	if code != exitFine || !strings.Contains(out, "length, inches") || !strings.Contains(out, " in of tube") || strings.Contains(out, " mm") {
		t.Errorf("exit %d, ways in inches are told as\n%s", code, out)
	}
	code, _, problems := tubecut(t, "", "ways", filepath.Join(plans, "outside-inches.plan.yaml"), "s")
	if code != exitFinding || !strings.Contains(problems, "0.473 in") || strings.Contains(problems, " mm") {
		t.Errorf("exit %d, no way in inches is told as %q", code, problems)
	}
}

// The marks of the list are those of the blank: its trim before the mark of the
// tube as cut, 111.5 in the worked example.
func TestMarksAreOnTheBlank(t *testing.T) {
	plan, err := os.ReadFile(filepath.Join("testdata", "plans", "worked.plan.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{string(plan), strings.Replace(string(plan), "from: a.p, to: b.p", "from: b.p, to: a.p", 1)} {
		_, out, _ := tubecut(t, text, "list", "-")
		if !strings.Contains(out, "273.3   268.3  274.3  305.3  90.0° at 126.5\n") {
			t.Errorf("the worked example is told as\n%s", out)
		}
		_, out, _ = tubecut(t, text, "list", "-", "--json")
		var answer struct {
			Tubes []struct {
				Cut   struct{ Aim, Shortest, Longest float64 }
				Blank float64
				Bends []struct{ Start, Middle, End float64 }
			}
		}
		if err := json.Unmarshal([]byte(out), &answer); err != nil || len(answer.Tubes) != 1 {
			t.Fatalf("%v from %s", err, out)
		}
		tube := answer.Tubes[0]
		if tube.Cut.Aim != 273.27 || tube.Blank != 305.27 || tube.Bends[0].Start != 111.5 || tube.Bends[0].Middle != 136.63 || tube.Bends[0].End != 161.77 {
			t.Errorf("the worked example gives %+v", tube)
		}
	}
}
