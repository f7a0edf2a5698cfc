package nest_test

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"testing/iotest"

	"tubewright/cutlist/nest"
)

func TestReadPlainForm(t *testing.T) {
	const text = "# tubes\n\n500 # the bar\r\n305.27,2\n 120.5 , 3 \n.5,1\n7.,1\n# end\n1.500,4"
	job, err := nest.Read("pieces.txt", strings.NewReader("\ufeff"+text))
	want := nest.Job{
		Stock:  []nest.Bar{{Length: 50000}},
		Pieces: []nest.Piece{{30527, 2}, {12050, 3}, {50, 1}, {700, 1}, {150, 4}},
	}
	if err != nil || !reflect.DeepEqual(job, want) {
		t.Errorf("Read: %+v, %v; want %+v", job, err, want)
	}
}

func TestReadOrder(t *testing.T) {
	tests := []struct {
		name, text string
		said       []nest.Setting
		want       nest.Order
	}{
		{"all settings", "stock: 500 7.40\nStock: 1000  12.9\t4\noffcut: 310 2\noffcut: 225.5\nkerf: 1\nkeep: 120\n120,3\n", nil, nest.Order{Job: nest.Job{
			Stock:   []nest.Bar{{50000, 740, 0}, {100000, 1290, 4}},
			Offcuts: []nest.Bar{{Length: 31000, Most: 2}, {Length: 22550, Most: 1}},
			Kerf:    100, KeepOver: 12000, Pieces: []nest.Piece{{12000, 3}},
		}}},
		{"a limit without a price", "120,3\nstock: 500 - 4\nkerf: 0\n", nil, nest.Order{Job: nest.Job{
			Stock: []nest.Bar{{50000, 0, 4}}, Pieces: []nest.Piece{{12000, 3}},
		}}},
		{"an offcut said twice is two", "offcut: 310\noffcut: 310 2\n120,3\n", nil, nest.Order{Job: nest.Job{
			Offcuts: []nest.Bar{{Length: 31000, Most: 3}}, Pieces: []nest.Piece{{12000, 3}},
		}}},
		{"the cheap ones are few", "stock: 500 6 2\nstock: 500 7\n120,3\n", nil, nest.Order{Job: nest.Job{
			Stock: []nest.Bar{{50000, 600, 2}, {50000, 700, 0}}, Pieces: []nest.Piece{{12000, 3}},
		}}},
		{"inches: 1/64 is a whole number", "0.015625,3\nunits: in\nstock: 24 7\n", nil, nest.Order{Units: nest.Inches, Job: nest.Job{
			Stock: []nest.Bar{{24_000_000, 700, 0}}, Pieces: []nest.Piece{{15625, 3}},
		}}},
		{"flags add stock, and go before kerf and units", "units: in\nkerf: 1\n500\n120,3\n", []nest.Setting{
			{"--stock", "stock", "1000::4"}, {"--stock", "stock", "750"}, {"--offcut", "offcut", "310:2"}, {"--kerf", "kerf", "0"}, {"--units", "units", "mm"}, {"--keep", "keep", "9"},
		}, nest.Order{Units: nest.Millimetres, Job: nest.Job{
			Stock: []nest.Bar{{100000, 0, 4}, {75000, 0, 0}, {50000, 0, 0}}, Offcuts: []nest.Bar{{Length: 31000, Most: 2}},
			KeepOver: 900, Pieces: []nest.Piece{{12000, 3}},
		}}},
		{"all bars from flags", "120,3\n", []nest.Setting{{"--offcut", "offcut", "500"}}, nest.Order{Job: nest.Job{
			Offcuts: []nest.Bar{{Length: 50000, Most: 1}}, Pieces: []nest.Piece{{12000, 3}},
		}}},
	}
	for _, tt := range tests {
		got, err := nest.ReadOrder("f", strings.NewReader(tt.text), tt.said...)
		if err != nil || !reflect.DeepEqual(got, tt.want) {
			t.Errorf("%s: %+v, %v\nwant %+v", tt.name, got, err, tt.want)
		}
	}
}

// every problem of a text by its code and place, then what it says.
func TestReadProblems(t *testing.T) {
	lengths := "9000\n"
	for i := range 2001 {
		lengths += fmt.Sprintf("%d,1\n", i+1)
	}
	stocks := "1,1\n"
	for i := range 2002 {
		stocks += fmt.Sprintf("stock: %d\n", i+1)
	}
	tests := []struct {
		name, text string
		want       []string // start of each problem
	}{
		{"nothing", "", []string{"empty f: there is nothing in it"}},
		{"only comments", "# a\n\n", []string{"empty f: there is nothing in it"}},
		{"no pieces", "500\n", []string{"no-pieces f: there are no pieces in it"}},
		{"no bars", "500,2\nkerf: 1\n", []string{"no-bars f: there is nothing to cut from"}},
		{"words", "five hundred\n100,1\n", []string{`bad-number f:1:1: bar length "five hundred" is not a number`}},
		{"all at once", "0\n-3,1\n100\n100,1,2\n100,0\n100, 1.5\n0.001,2\n", []string{
			"bad-number f:1:1: bar length is 0; it must be above 0",
			"bad-number f:2:1: length is -3; it must be above 0",
			"bad-line f:3:1: 1 value; expected 2: length,count",
			"bad-line f:4:1: 3 values; expected 2",
			"bad-number f:5:5: count is 0; it must be above 0",
			"bad-number f:6:6: count is 1.5; it must be a whole number above 0",
			"bad-number f:7:1: length 0.001 is finer than 0.01",
		}},
		{"both of a line", "500\nx,y\n", []string{`bad-number f:2:1: length "x"`, `bad-number f:2:3: count "y"`}},
		{"not a number, said in full", "500\nNaN,1\nInf,1\n", []string{`bad-number f:2:1: length "NaN" is not`, `bad-number f:3:1: length "Inf" is not`}},
		{"too long", "500\n\n  500.01,1\n", []string{"piece-too-long f:3:3: a piece of 500.01 is longer than the longest bar, 500, by 0.01"}},
		{"too long for stock, not for an offcut", "stock: 500\noffcut: 600\n550,1\n601,1\n", []string{"piece-too-long f:4:1: a piece of 601 is longer than the longest bar, 600, by 1"}},
		{"a bar nobody can read is perhaps long enough", "stock: x\nstock: 5\n550,1\n", []string{`bad-number f:1:8: stock length "x"`}},
		{"too large", "500\n99999999999999999999,1\n1,99999999999999999999\n", []string{"bad-number f:2:1: length 99999999999999999999 is above", "too-many f:3:3: count is 99999999999999999999; at most 16384"}},
		{"a thousand million", "500\n1,1000000000\n", []string{"too-many f:2:3: count is 1000000000; at most 16384 can be nested at once"}},
		{"too many in all", "500\n5,16000\n6,300\n7,300\n8,1\n", []string{"too-many f:4:1: with this line there are 16600 pieces; at most 16384"}},
		{"too many lengths", lengths, []string{"too-many f: there are more than 2000 different lengths"}},
		{"too many bars", stocks, []string{"too-many f: there are more than 2000 bars"}},
		{"a dot", ".\n1,1\n", []string{`bad-number f:1:1: bar length "."`}},
		{"exponent", "1e3\n1,1\n", []string{`bad-number f:1:1: bar length "1e3"`}},
		{"not text", "500\n\xff\xfe,1\n", []string{"bad-number f:2:1: length"}},
		{"huge", strings.Repeat("1,1\n", 300_000), []string{"too-large f: longer than 1048576 bytes"}},
		{"one huge line", strings.Repeat("1", 2<<20), []string{"too-large f: longer than 1048576 bytes"}},
		{"unknown setting", "500\nstok: 5\n1,1\n", []string{`unknown-key f:2:1: there is no setting "stok"`}},
		{"said twice", "500\nkerf: 1\nkerf: 2\nunits: mm\nunits: in\n1,1\n", []string{"said-twice f:3:1: kerf is said twice; first in line 2", "said-twice f:5:1: units is said twice; first in line 4"}},
		{"no unit", "500\nunits:  furlong\n1,1\n", []string{`bad-line f:2:9: "furlong" is no unit`}},
		{"the same bar twice", "500\nstock: 500\nstock: 600 - 2\nstock: 600\n1,1\n", []string{
			"said-twice f:2:8: stock of 500 is listed twice, first in line 1", "said-twice f:4:8: stock of 600 is listed twice, first in line 3",
		}},
		{"some prices", "stock: 500 7\nstock: 600\n1,1\n", []string{"no-price f:2:8: stock of 600 has no price"}},
		{"stock of words", "stock: a -1 0\n1,1\n", []string{
			`bad-number f:1:8: stock length "a"`, "bad-number f:1:10: price is -1; it must be above 0", "bad-number f:1:13: limit is 0",
		}},
		{"too much said", "stock: 1 2 3 4\nstock:\noffcut: 1 2 3\n1,1\n", []string{
			"bad-line f:1:8: 4 values; expected 1 to 3", "bad-line f:2:7: 0 values; expected 1 to 3", "bad-line f:3:9: 3 values; expected 1 or 2",
		}},
		{"offcuts", "offcut: 0 x\n1,1\n", []string{"bad-number f:1:9: offcut length is 0", `bad-number f:1:11: count "x"`}},
		{"kerf", "500\nkerf: -1\n1,1\n", []string{"bad-number f:2:7: kerf is -1; it must be 0 or more"}},
		{"kerf of a bar", "500\nkerf: 500\n1,1\n", []string{"bad-number f:2:1: kerf 500 is no less than the longest bar, 500"}},
		{"very dear", "stock: 500 9999999\n1,1\n", []string{"bad-number f:1:12: price 9999999 is above 2684354.56"}},
		{"columns count characters", "500 \nkerf : \u00e4\n1,1\n", []string{"bad-number f:2:8: kerf \"\u00e4\" is not a number"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := nest.ReadOrder("f", strings.NewReader(tt.text))
			var problems nest.Problems
			if !errors.As(err, &problems) {
				t.Fatalf("ReadOrder: %v; want Problems", err)
			}
			if len(problems) != len(tt.want) {
				t.Errorf("%d problems; want %d:\n%v", len(problems), len(tt.want), err)
			}
			for i, want := range tt.want {
				if i < len(problems) && (!strings.HasPrefix(string(problems[i].Code)+" "+problems[i].Error(), want) || problems[i].Fix == "") {
					t.Errorf("problem %d is\n%s %s\nwant %s", i, problems[i].Code, problems[i], want)
				}
			}
		})
	}
}

func TestReadFlagProblems(t *testing.T) {
	_, err := nest.ReadOrder("f", strings.NewReader("x,1\n500,1\nstock: 500\n"),
		nest.Setting{"--stock", "stock", "5:a:b"}, nest.Setting{"--kerf", "kerf", "NaN"}, nest.Setting{"--offcut", "offcut", ""})
	want := `--stock 5:a:b: price "a" is not a number
--stock 5:a:b: limit "b" is not a whole number
--kerf NaN: kerf "NaN" is not a number
--offcut: offcut length "" is not a number
f:1:1: length "x" is not a number`
	var got []string
	for line := range strings.Lines(fmt.Sprint(err)) {
		if !strings.HasPrefix(line, "\t") {
			got = append(got, strings.TrimSpace(line))
		}
	}
	if strings.Join(got, "\n") != want {
		t.Errorf("problems\n%v\nwant\n%s", err, want)
	}
}

func TestManyProblemsAreCutShort(t *testing.T) {
	_, err := nest.Read("f", strings.NewReader("500\n"+strings.Repeat("x,1\n", 90)))
	var problems nest.Problems
	if !errors.As(err, &problems) || len(problems) != 20 || !strings.Contains(problems[19].What, "71 more problems") {
		t.Errorf("90 bad lines give %d problems, the last %v", len(problems), problems)
	}
	var one nest.Problem
	if !errors.As(err, &one) || one.Line != 2 {
		t.Errorf("errors.As finds %+v", one)
	}
}

func TestReadProblemShowsItsLine(t *testing.T) {
	_, err := nest.Read("pieces.txt", strings.NewReader("500\n12x,3\n"))
	want := "pieces.txt:2:1: length \"12x\" is not a number\n\t    2 | 12x,3\n" +
		"\tWrite the length of a piece, a comma and how many are wanted, such as 120.5,3."
	if err == nil || err.Error() != want {
		t.Errorf("got\n%v\nwant\n%s", err, want)
	}
}

func TestReadFailure(t *testing.T) {
	broken := errors.New("made up")
	if _, err := nest.Read("f", iotest.ErrReader(broken)); !errors.Is(err, broken) {
		t.Errorf("Read: %v", err)
	}
}

// Whatever the text, there is either a whole order that Solve takes on, or
// problems that say where and what to do.
func FuzzRead(f *testing.F) {
	for _, text := range []string{
		"", "500\n305.27,2\n", "# c\n500\n1,1 # x\n", "500\n-1,1\n,\n", "9e9\n1,1", "\ufeff1\n1,1",
		"stock: 500 7.40 2\nstock: 500 8\noffcut: 310 2\nkerf: 1\nkeep: 120\nunits: in\n120.5,3\n", "1000000000\n1,1000000000\n", "kerf:\nstock::\n:\n",
	} {
		f.Add(text, "500:7:2", "1")
	}
	f.Fuzz(func(t *testing.T, text, stock, kerf string) {
		order, err := nest.ReadOrder("f", strings.NewReader(text), nest.Setting{"--stock", "stock", stock}, nest.Setting{"--kerf", "kerf", kerf})
		var problems nest.Problems
		if err != nil && (!errors.As(err, &problems) || len(problems) == 0) {
			t.Fatalf("ReadOrder(%q): %v", text, err)
		}
		for _, p := range problems {
			if p.Code == "" || p.What == "" || p.Fix == "" || p.Line > 0 && p.Col < 1 {
				t.Fatalf("ReadOrder(%q): %+v", text, p)
			}
		}
		if err == nil {
			checkOrder(t, order)
		}
	})
}

// checkOrder says that every number of an order is one that Solve takes on.
func checkOrder(t *testing.T, o nest.Order) {
	t.Helper()
	longest := 0
	for _, b := range append(append([]nest.Bar{}, o.Job.Stock...), o.Job.Offcuts...) {
		longest = max(longest, b.Length)
		if b.Length <= 0 || b.Price < 0 || b.Most < 0 {
			t.Errorf("bar %+v", b)
		}
	}
	if len(o.Job.Pieces) == 0 || o.Job.Kerf < 0 || o.Job.Kerf >= longest || o.Job.KeepOver < 0 {
		t.Errorf("order %+v", o)
	}
	for _, p := range o.Job.Pieces {
		if p.Length <= 0 || p.Length > longest || p.Count <= 0 {
			t.Errorf("piece %+v; longest bar %d", p, longest)
		}
	}
}

func TestAnswerJSON(t *testing.T) {
	tests := []struct {
		name  string
		order nest.Order
		r     nest.Result
		uncut []nest.Piece
		want  string
	}{
		{
			"the plan format's example in small",
			nest.Order{Job: nest.Job{Stock: []nest.Bar{{Length: 3000}}}},
			nest.Result{Patterns: []nest.Pattern{{Count: 2, Pieces: []int{1500, 1500}}}, Bars: 6, Bought: 6, Cost: 6, Bound: 6, Proven: true},
			nil,
			`{"bars_used":6,"bought":6,"bound":6,"proven":true,"cost":6,"kerf":0,"patterns":[{"count":2,"length":30,"from":"stock","pieces":[15,15],"left":0,"keep":false}],"seconds":0.002}`,
		},
		{
			"money and hundredths",
			nest.Order{Job: nest.Job{Stock: []nest.Bar{{Length: 50050, Price: 740}}, Kerf: 150, KeepOver: 10000}},
			nest.Result{Patterns: []nest.Pattern{{Count: 1, Pieces: []int{30527}, Left: 19373}}, Bars: 1, Bought: 1, Cost: 740, Bound: 739},
			[]nest.Piece{{60000, 2}},
			`{"bars_used":1,"bought":1,"bound":7.39,"proven":false,"cost":7.4,"kerf":1.5,"patterns":[{"count":1,"length":500.5,"from":"stock","price":7.4,"pieces":[305.27],"left":193.73,"keep":true}],"uncut":[{"length":600,"count":2}],"seconds":0.002}`,
		},
		{
			"inches from an offcut",
			nest.Order{Units: nest.Inches, Job: nest.Job{Offcuts: []nest.Bar{{Length: 24_015_625}}}},
			nest.Result{Patterns: []nest.Pattern{{Count: 1, Offcut: true, Pieces: []int{24_000_000}, Left: 15625}}, Bars: 1, Proven: true},
			nil,
			`{"bars_used":1,"bought":0,"bound":0,"proven":true,"cost":0,"units":"in","kerf":0,"patterns":[{"count":1,"length":24.015625,"from":"offcut","pieces":[24],"left":0.015625,"keep":false}],"seconds":0.002}`,
		},
		{"nothing", nest.Order{}, nest.Result{Proven: true}, nil, `{"bars_used":0,"bought":0,"bound":0,"proven":true,"cost":0,"kerf":0,"patterns":[],"seconds":0.002}`},
	}
	for _, tt := range tests {
		text, err := tt.order.Answer(tt.r, tt.uncut, false, 0.0021).JSON()
		if err != nil || string(text) != tt.want+"\n" {
			t.Errorf("%s: got %s, %v\nwant %s", tt.name, text, err, tt.want)
		}
	}
}

func TestAmountIsExact(t *testing.T) {
	for want, a := range map[string]nest.Amount{
		"0": {0, 100}, "0.01": {1, 100}, "-0.05": {-5, 100}, "305.27": {30527, 100}, "500": {50000, 100}, "7": {7, 1},
		"0.015625": {15625, 1_000_000}, "92233720368547758.07": {1<<63 - 1, 100}, "-92233720368547758.08": {-1 << 63, 100},
	} {
		if got := a.String(); got != want {
			t.Errorf("%+v is written %s, want %s", a, got, want)
		}
	}
}

func TestVerdictWords(t *testing.T) {
	for want, v := range map[string]nest.Verdict{
		"38.70, the cheapest possible: proven":                            {3870, 3870, true, true, 0},
		"38.70, within 1.25 of the cheapest possible":                     {3870, 3745, true, false, 0},
		"6 bars to buy, the fewest possible: proven":                      {6, 6, false, true, 0},
		"1 bar to buy, the fewest possible: proven":                       {1, 1, false, true, 0},
		"6 bars to buy, within 1 bar of the fewest possible":              {6, 5, false, false, 0},
		"nothing to buy, the fewest possible: proven":                     {0, 0, false, true, 0},
		"20.30; the stock does not hold 3 more: see the findings":         {2030, 2030, true, true, 3},
		"2 bars to buy; the stock does not hold 1 more: see the findings": {2, 1, false, false, 1},
	} {
		if got := v.Words(); got != want {
			t.Errorf("%+v reads %q, want %q", v, got, want)
		}
	}
}
