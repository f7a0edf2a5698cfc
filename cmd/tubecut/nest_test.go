package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tubewright/cutlist/nest"
)

var orders = filepath.Join("testdata", "orders")

// Orders as people write them: what the answer must say, whichever of the
// plans that are equally good it is.
func TestNestOrders(t *testing.T) {
	tests := []struct {
		order string
		code  int
		says  []string // with where to get it again
		args  []string
	}{
		// J. Fieldhouse (1990): 6 bars though the pieces add up to less than 5; from memory
		{"fieldhouse.csv", exitFine, []string{"6 bars to buy, the fewest possible: proven"}, nil},
		// 2 of 310 and one of 225.5 are there; the cost is judged by the solver's own tests
		{"workshop.txt", exitFine, []string{"of the cheapest possible", "of offcuts; lengths in mm; kerf 1", "305.3"}, []string{"--seconds", "0.05"}},
		// 7 pieces of 10.625 need three bars of 36, since a fourth would make 42.9
		{"inches.txt", exitFine, []string{"3 bars to buy, the fewest possible: proven", "lengths in inches; kerf 0.125", "10.625", "2.515625"}, nil},
		// 305.3 goes once into each of the three bars
		{"too-few.txt", exitFinding, []string{"25.00; the stock does not hold 4 more", "The limits leave uncut: 4 x 305.3"}, nil},
		// with long bars beside there is room for all
		{"too-few.txt", exitFine, []string{"the cheapest possible: proven"}, []string{"--stock", "1300:20", "--kerf", "0.5"}},
	}
	for _, test := range tests {
		code, out, problems := tubecut(t, "", append([]string{"nest", filepath.Join(orders, test.order)}, test.args...)...)
		if code != test.code || problems != "" {
			t.Errorf("%s %v: exit %d, want %d; standard error %q", test.order, test.args, code, test.code, problems)
		}
		for _, s := range test.says {
			if !strings.Contains(out, s) {
				t.Errorf("%s does not say %q:\n%s", test.order, s, out)
			}
		}
		for line := range strings.Lines(out) {
			if len(line) > 81 && !strings.Contains(line, "Raise") {
				t.Errorf("%s: %d columns in %q", test.order, len(line)-1, line)
			}
		}
	}
}

// made is a plan by hand for the workshop's order: what is printed hangs on no
// search.
func made(t *testing.T) outcome {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(orders, "workshop.txt"))
	if err != nil {
		t.Fatal(err)
	}
	order, err := nest.ReadOrder("workshop.txt", bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return outcome{
		order: order,
		result: nest.Result{Bars: 24, Bought: 21, Cost: 23300, Bound: 22860, Patterns: []nest.Pattern{
			{Count: 2, Offcut: true, Bar: 0, Pieces: []int{12000, 9550, 1200, 1200, 1200, 1200}, Left: 4250},
			{Count: 1, Offcut: true, Bar: 1, Pieces: []int{9550}, Left: 12900},
			{Count: 12, Bar: 1, Pieces: []int{30530, 30530, 30530}, Left: 8110},
			{Count: 8, Bar: 0, Pieces: []int{27200, 12000, 9550}, Left: 950},
			{Count: 1, Bar: 1, Pieces: []int{12000, 11900, 11800, 11700, 11600, 11500, 11400, 10000, 3000, 2000}, Left: 2100},
		}},
		took: 1234 * time.Millisecond,
	}
}

func TestNestText(t *testing.T) {
	a := made(t)
	golden(t, "workshop.nest.txt", string(a.text(80, nil)))
	golden(t, "workshop-narrow.nest.txt", string(a.text(48, &nest.TooFewError{Uncut: []nest.Piece{{Length: 30530, Count: 2}, {Length: 1200, Count: 1}}, Proven: true})))
	text, err := a.order.Answer(a.result, []nest.Piece{{Length: 30530, Count: 2}}, true, a.took.Seconds()).JSON()
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "workshop.nest.json", string(text))
}

func TestNestJSON(t *testing.T) {
	code, out, _ := tubecut(t, "", "nest", filepath.Join(orders, "too-few.txt"), "--json")
	var answer struct {
		Used   int `json:"bars_used"`
		Proven bool
		Cost   float64
		Uncut  []struct{ Length, Count float64 }
	}
	if err := json.Unmarshal([]byte(out), &answer); err != nil || code != exitFinding {
		t.Fatalf("exit %d, %v from %s", code, err, out)
	}
	if answer.Used != 3 || answer.Proven || answer.Cost != 25 || len(answer.Uncut) != 1 || answer.Uncut[0].Length != 305.3 || answer.Uncut[0].Count != 4 {
		t.Errorf("answer %+v", answer)
	}
	_, out, _ = tubecut(t, "", "nest", filepath.Join(orders, "fieldhouse.csv"), "--json")
	if want := `{"bars_used":6,"bought":6,"bound":6,"proven":true,"cost":6,`; !strings.HasPrefix(out, want) {
		t.Errorf("answer %s, want %s", out, want)
	}
}

func TestNestSmall(t *testing.T) {
	_, out, _ := tubecut(t, "500\n305.30,1\n95.25,2\n", "nest", "-")
	want := `1 bar to buy, the fewest possible: proven

Bars
  1 x  500  stock  left 4.2  305.3, 2 x 95.25

To scale, | is a cut, . is left
  1 x  500  [-----------------305.3------------------|---95.25---|---95.25----|]
`
	if out != want {
		t.Errorf("output\n%s\nwant\n%s(500 - 305.3 - 190.5)", out, want)
	}
}

// All that is wrong is told at once, each with its place and a way out.
func TestNestTellsAllThatIsWrong(t *testing.T) {
	code, out, problems := tubecut(t, "", "nest", filepath.Join(orders, "wrong.txt"), "--stock", "5:x", "--keep", "-1")
	if code != exitInput || out != "" {
		t.Errorf("exit %d, output %q", code, out)
	}
	golden(t, "wrong.nest.txt", problems)
}

func TestNestRefuses(t *testing.T) {
	const fine = "30\n15,3\n"
	tests := []struct {
		name, in, want string
		args           []string
	}{
		{"no number", "a\n1,2\n", "standard input:1:1: bar length", []string{"-"}},
		{"empty", "", "standard input: there is nothing in it", []string{"-"}},
		{"no such file", "", "no-such.csv", []string{"no-such.csv"}},
		{"seconds below nothing", fine, "--seconds is -1; expected 0 or more", []string{"-", "--seconds", "-1"}},
		{"no number of seconds", fine, "--seconds is NaN; expected 0 or more", []string{"-", "--seconds", "NaN"}},
		{"endless", fine, "--seconds is +Inf; expected 0 or more, up to 1000000", []string{"-", "--seconds", "inf"}},
		{"kerf of a flag", fine, "--kerf 30: kerf 30 is no less than the longest bar", []string{"-", "--kerf", "30"}},
		{"unit of a flag", fine, `--units ell: "ell" is no unit`, []string{"-", "--units", "ell"}},
	}
	for _, test := range tests {
		code, out, problems := tubecut(t, test.in, append([]string{"nest"}, test.args...)...)
		if code != exitInput || out != "" || !strings.Contains(problems, test.want) {
			t.Errorf("%s: exit %d, output %q, standard error %q; want 2, nothing, and %q", test.name, code, out, problems, test.want)
		}
	}
}

// Stopped by Ctrl+C it prints the best it has, and says that it was stopped.
func TestNestStoppedByHand(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	for _, args := range [][]string{{"nest", "-"}, {"nest", "-", "--json"}} {
		var out, problems bytes.Buffer
		code := run(ctx, args, strings.NewReader("500\n305.3,20\n120,33\n95,17\n"), &out, &problems)
		if code != exitStopped || problems.String() != "tubecut: stopped; this is the best so far\n" {
			t.Errorf("%v: exit %d, standard error %q", args, code, problems.String())
		}
		if !strings.Contains(out.String(), "305.3") {
			t.Errorf("%v: no plan in %q", args, out.String())
		}
	}
}

// A bar is drawn to scale: 40 columns for 100, a piece of 25 is 10 wide, the cut
// of 5 two, and the rest what is left.
func TestDrawing(t *testing.T) {
	tests := []struct {
		name       string
		kerf, keep int
		bar        int
		pieces     []int
		want       string
	}{
		{"scale", 5, 0, 100, []int{25, 25}, "---0.25---||---0.25---||................"},
		{"half as long", 5, 0, 50, []int{25}, "---0.25---||........"},
		{"ends flush", 5, 0, 100, []int{95}, "-----------------0.95-----------------||"},
		{"not a kerf left", 0, 0, 100, []int{50, 50}, "--------0.5---------|--------0.5--------"},
		{"worth keeping", 0, 30, 100, []int{50}, "--------0.5---------|==================="},
		{"one block", 0, 0, 100, []int{10, 10, 10, 10, 10}, "------5 x 0.1-------|..................."},
		{"no room for words", 0, 0, 100, []int{3, 3}, "-||....................................."},
		{"thin pieces", 1, 0, 100, []int{1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1}, ""},
	}
	for _, tt := range tests {
		job := nest.Job{Kerf: tt.kerf, KeepOver: tt.keep, Stock: []nest.Bar{{Length: tt.bar}}}
		left := tt.bar
		for _, p := range tt.pieces {
			left -= p + tt.kerf
		}
		a := outcome{order: nest.Order{Job: job}}
		got := a.drawing(nest.Pattern{Count: 1, Pieces: tt.pieces, Left: max(0, left)}, 100, 40)
		if tt.want != "" && got != tt.want || len(got) != 40*tt.bar/100 {
			t.Errorf("%s: drawn as\n%s\nwant\n%s", tt.name, got, tt.want)
		}
	}
}

// A line that is too long goes on below, and 3 x 120 stays whole.
func TestWrapped(t *testing.T) {
	tests := []struct {
		line  string
		hang  int
		want  string
		width int
	}{
		{"ab 3 x 120, 95", 3, "ab 3 x 120, 95", 14},
		{"ab 3 x 120, 95", 3, "ab 3 x 120,\n   95", 13},
		{"ab 5, 3 x 120, 95", 3, "ab 5,\n   3 x 120,\n   95", 11},
		{"ab 123456789012", 3, "ab 123456789012", 10},
	}
	for _, tt := range tests {
		if got := wrapped(tt.line, tt.hang, tt.width); got != tt.want {
			t.Errorf("%q in %d columns becomes\n%s\nwant\n%s", tt.line, tt.width, got, tt.want)
		}
	}
}

// The line of progress comes after a while, follows what is found, and is gone
// at the end.
func TestProgress(t *testing.T) {
	p := &progress{priced: true, done: make(chan struct{}), ended: make(chan struct{})}
	var told bytes.Buffer
	p.better(700, 800)
	go p.keep(&told, 47, time.Millisecond, 2*time.Millisecond)
	time.Sleep(400 * time.Millisecond) // many of its steps, also on a machine that is busy
	p.stop()
	if got := told.String(); !strings.Contains(got, clearLine+"8.00, within 1.00 of the cheapest possible; 0 s"+clearLine) || !strings.HasSuffix(got, clearLine) {
		t.Errorf("told %q", got)
	}
	if line := (&progress{}).line(2 * time.Second); line != "looking for a plan; 2 s; Ctrl+C: take it" {
		t.Errorf("before anything is found: %q", line)
	}
	p = tellProgress(&told, false)
	p.better(1, 2)
	p.stop()
	if isTerminal(&told) || isTerminal(os.Stdin) && textWidth(os.Stdin) < leastWidth {
		t.Error("a buffer is no terminal")
	}
}
