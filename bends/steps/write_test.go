package steps_test

import (
	"encoding/csv"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/bends/steps"
)

// text joins what the steps say.
func text(w steps.Work) string {
	var lines []string
	for _, s := range w.Steps {
		lines = append(lines, s.Text)
	}
	return strings.Join(lines, "\n")
}

// kinds lists what the steps are about.
func kinds(w steps.Work) (list []steps.Kind) {
	for _, s := range w.Steps {
		list = append(list, s.Kind)
	}
	return list
}

func TestStepsOfABentTubeInFull(t *testing.T) {
	// straights 28, 30, 60 and two quarters of radius 20: 31.416 each; trim 15, square 2
	w := steps.Plan(job(t, []float64{28, 30, 60}, 15, 20, usual))
	want := []string{
		"Saw the blank, 212.8 mm, square to its axis. Square and deburr both ends; write A on one.", // 118 + 2·31.416 + 30 + 2
		"Draw a line along the tube: rolls count from it. Mark bends and rolls, measured from end A, which goes into the bender first.",
		"Put the bending cord in, through every bend and with an end left to pull: it keeps the bore round.",
		"At every bend heat only what is told: the arc and one diameter on each side. Keep the heat moving and the tube turning; " +
			"hold it still on the former until it is cool. Then check turn, roll and back measures, before the next bend.",
		"Put on collar A before bend 1, facing its end (its leg is 28.0 mm, collar and insertion take 32.0 mm): a collar cannot pass a bend. Keep it at the end, out of the heat.",
		"Bend 1: heat 27.0 to 90.4, start mark at 43.0 from A; form to 92.3°, for 90.0°.",                                                                 // 43 − 16, 74.416 + 16; 90·1.015 + 1 = 92.35
		"Bend 2: turn the tube +180.0° from bend 1, 25.1 mm round its outside; heat 88.4 to 151.8, start mark at 104.4 from A; form to 92.3°, for 90.0°.", // 16π/2
		"When all is cool, pull the cord out.",
		"Trim: finished end A is 28.0 mm before the start of bend 1; cut there, then cut B 180.8 mm from A along the centreline.",
		"Check the length along the centreline: between 180.8 and 180.8 is safe, 180.8 mm is the aim.",
		"Deburr both ends inside, chamfer them outside, rinse and dry.",
		"Put collar B on over end B; the other is on already.",
		"Mark the insertion on both ends: A 12.0 mm, B 12.0 mm. At the joint wet the seals, push home, see both marks at the collars.",
	}
	got := text(w)
	got = strings.ReplaceAll(got, "92.4°", "92.3°") // 92.35 is half-way: either rounding will do
	if got != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", got, strings.Join(want, "\n"))
	}
	for i, s := range w.Steps {
		if s.Source == "" {
			t.Errorf("step %d has no source: %s", i+1, s.Text)
		}
	}
	if s := w.Steps[4]; s.Kind != steps.Slide || s.End != "A" || s.Bend != 1 {
		t.Errorf("step 5 is %+v", s)
	}
}

func TestMaterialsDiffer(t *testing.T) {
	j := job(t, []float64{60, 60}, 15, 20, usual)
	for _, tc := range []struct{ material, has, hasNot string }{
		{"copper", "Bend cold on the former unless the tube's maker says otherwise.", "heat"},
		{"copper", "form to", "cord"},
		{"acrylic", "1 to 3 minutes for thin acrylic", "Bend cold"},
		{"petg", "bending cord", "minutes"},
		{"glass", "Keep the heat moving", "cord"},
	} {
		j.Material = tc.material
		said := text(steps.Plan(j))
		if !strings.Contains(said, tc.has) || strings.Contains(said, tc.hasNot) {
			t.Errorf("%s: want %q and not %q in\n%s", tc.material, tc.has, tc.hasNot, said)
		}
	}
}

func TestStraightTubesAndFaults(t *testing.T) {
	w := steps.Plan(job(t, []float64{120}, 15, 20, usual))
	if want := []steps.Kind{steps.Saw, steps.Check, steps.Clean, steps.Slide, steps.Join}; !slices.Equal(kinds(w), want) {
		t.Errorf("a straight tube's steps are %v, want %v", kinds(w), want)
	}
	if said := text(w); !strings.Contains(said, "Put both collars on") || !strings.Contains(said, "until the tube is 120.0 mm long") {
		t.Errorf("a straight tube's steps say\n%s", said)
	}
	w = steps.Plan(job(t, []float64{60, 19, 60}, 15, 20, usual))
	if w.Steps[0].Kind != steps.Warn || !strings.Contains(w.Steps[0].Text, "Do not start: no order of the bends leaves the former room: of bends 1 and 2") ||
		!strings.Contains(w.Steps[0].Text, "1.0 mm short") {
		t.Errorf("a tube without an order starts with %+v", w.Steps[0])
	}
	w = steps.Plan(job(t, []float64{60, 60}, 4, 0, steps.Collar{}))
	if said := text(w); !strings.Contains(said, "Only 4.0 mm are left on each end, where 10.0 mm or more are usual") || strings.Contains(said, "collar A") {
		t.Errorf("a short trim without collars says\n%s", said)
	}
}

func TestMarksAreFromTheEndBentFirst(t *testing.T) {
	j := job(t, []float64{60, 15, 12}, 0, 20, steps.Collar{})
	j.Tool, j.Material = steps.Tool{Held: 30, Drawn: 10}, "copper"
	j.Tube.Bends[1].Roll = 90
	j.Bench = j.Tube.Bench(bends.Ends{})
	w := steps.Plan(j)
	said := text(w)
	for _, want := range []string{
		"from end B, which goes into the bender first",
		"Bend 2: start mark at 12.0 from B;",
		"Bend 1: turn the tube +90.0° from bend 2, 12.6 mm round its outside; start mark at 58.4 from B;", // 12 + 31.416 + 15
		"This tube does not lie flat",
	} {
		if w.First != "B" || !strings.Contains(said, want) {
			t.Errorf("first %s, want %q in\n%s", w.First, want, said)
		}
	}
	both := job(t, []float64{26, 25, 26}, 15, 20, usual)
	if said := text(steps.Plan(both)); !strings.Contains(said, "Both collars are on already") {
		t.Errorf("with both collars early the list says\n%s", said)
	}
}

// used says how each row of trade practice shows in the list: a number, or words
// that only stand there because of it.
var used = map[string]func(t *testing.T, value string) bool{
	"TP-002": says("petg", "Saw the blank, 183.4 mm, square to its axis", "copper tube handbook, push-connect joints"),
	"TP-003": says("petg", "Deburr both ends inside, chamfer them outside", "copper tube handbook, push-connect joints"),
	"TP-005": says("petg", "Mark the insertion on both ends", "copper tube handbook, push-connect joints"),
	"TP-013": says("petg", "Trim: finished end A", "common practice"),
	"TP-014": is(steps.TrimLeast),
	"TP-016": says("petg", "from end A, which goes into the bender first", "plumbing course slides"),
	"TP-055": says("petg", "the arc and one diameter on each side", "common practice"),
	"TP-056": says("petg", "Keep the heat moving and the tube turning", "common practice"),
	"TP-057": says("petg", "bending cord", "hardware site tutorial"),
	"TP-059": is(steps.HoldLeast),
	"TP-060": is(steps.HoldMost),
}

// says reports whether one step of a tube of one bend has those words and that source.
func says(material, words, source string) func(*testing.T, string) bool {
	return func(t *testing.T, _ string) bool {
		j := job(t, []float64{60, 60}, 15, 20, usual)
		j.Material = material
		return slices.ContainsFunc(steps.Plan(j).Steps, func(s steps.Step) bool {
			return strings.Contains(s.Text, words) && s.Source == source
		})
	}
}

func is(number int) func(*testing.T, string) bool {
	return func(_ *testing.T, v string) bool { return v == strconv.Itoa(number) }
}

func TestTradePracticeIsTheTables(t *testing.T) {
	file, err := os.Open("testdata/trade_practice.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close() //nolint:errcheck // only read from
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		if check := used[row[0]]; check == nil || !check(t, row[3]) {
			t.Errorf("row %s (%s: %s, %s) does not show in the list", row[0], row[1], row[3], row[6])
		}
	}
	if len(rows)-1 != len(used) {
		t.Errorf("%d rows, %d used", len(rows)-1, len(used))
	}
}
