package nest_test

import (
	"errors"
	"reflect"
	"strings"
	"testing"
	"testing/iotest"

	"tubewright/cutlist/nest"
)

func TestRead(t *testing.T) {
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

func TestReadProblems(t *testing.T) {
	tests := []struct {
		name, text string
		want       []string // start of each problem
	}{
		{"nothing", "", []string{"f: there is nothing in it"}},
		{"only comments", "# a\n\n", []string{"f: there is nothing in it"}},
		{"no pieces", "500\n", []string{"f: there are no pieces in it"}},
		{"words", "five hundred\n100,1\n", []string{`f:1: bar length "five hundred" is not a number above 0`}},
		{"all at once", "0\n-3,1\n100\n100,1,2\n100,0\n100,1.5\n0.001,2\n", []string{
			"f:1: bar length is 0; it must be above 0",
			`f:2: length "-3" is not a number above 0`,
			"f:3: 1 values; expected 2",
			"f:4: 3 values; expected 2",
			"f:5: count is 0; it must be above 0",
			`f:6: count "1.5" is not a whole number above 0`,
			"f:7: length 0.001 is finer than 0.01",
		}},
		{"both of a line", "500\nx,y\n", []string{`f:2: length "x"`, `f:2: count "y"`}},
		{"too long", "500\n\n500.01,1\n", []string{"f:3: a piece of 500.01 is longer than the bar of 500"}},
		{"too large", "500\n99999999999999999999,1\n1,99999999999999999999\n", []string{"f:2: length 99999999999999999999 is above", "f:3: count 99999999999999999999 is above 16384"}},
		{"a dot", ".\n1,1\n", []string{`f:1: bar length "."`}},
		{"exponent", "1e3\n1,1\n", []string{`f:1: bar length "1e3"`}},
		{"not text", "500\n\xff\xfe,1\n", []string{"f:2: length"}},
		{"huge", strings.Repeat("1,1\n", 300_000), []string{"f:1: bar length", "f: longer than 1048576 bytes"}},
		{"one huge line", strings.Repeat("1", 2<<20), []string{"f: longer than 1048576 bytes"}},
		{"very many", "500\n" + strings.Repeat("x,1\n", 90), nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := nest.Read("f", strings.NewReader(tt.text))
			var problems nest.Problems
			if !errors.As(err, &problems) {
				t.Fatalf("Read: %v; want Problems", err)
			}
			if tt.want == nil {
				if len(problems) != 20 {
					t.Errorf("%d problems; want the first 20", len(problems))
				}
				return
			}
			if len(problems) != len(tt.want) {
				t.Errorf("%d problems; want %d:\n%v", len(problems), len(tt.want), err)
			}
			for i, want := range tt.want {
				if i < len(problems) && (!strings.HasPrefix(problems[i].String(), want) || problems[i].Fix == "") {
					t.Errorf("problem %d is\n%s\nwant %s", i, problems[i], want)
				}
			}
		})
	}
}

func TestReadProblemShowsItsLine(t *testing.T) {
	_, err := nest.Read("pieces.txt", strings.NewReader("500\n12x,3\n"))
	want := "pieces.txt:2: length \"12x\" is not a number above 0\n\t    2 | 12x,3\n" +
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

func FuzzRead(f *testing.F) {
	for _, text := range []string{"", "500\n305.27,2\n", "# c\n500\n1,1 # x\n", "500\n-1,1\n,\n", "9e9\n1,1", "\ufeff1\n1,1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		job, err := nest.Read("f", strings.NewReader(text))
		var problems nest.Problems
		if err != nil && (!errors.As(err, &problems) || len(problems) == 0) {
			t.Fatalf("Read(%q): %v", text, err)
		}
		if err == nil && (len(job.Stock) != 1 || len(job.Pieces) == 0) {
			t.Fatalf("Read(%q): %+v", text, job)
		}
	})
}

func TestAnswerJSON(t *testing.T) {
	tests := []struct {
		name string
		job  nest.Job
		r    nest.Result
		want string
	}{
		{
			"the plan format's example in small",
			nest.Job{Stock: []nest.Bar{{Length: 3000}}},
			nest.Result{Patterns: []nest.Pattern{{Count: 2, Pieces: []int{1500, 1500}}}, Bars: 6, Bought: 6, Cost: 6, Bound: 6, Proven: true},
			`{"bars_used":6,"bound":6,"proven":true,"cost":6,"patterns":[{"count":2,"length":30,"pieces":[15,15],"left":0}],"seconds":0.002}`,
		},
		{
			"money and hundredths",
			nest.Job{Stock: []nest.Bar{{Length: 50050, Price: 740}}},
			nest.Result{Patterns: []nest.Pattern{{Count: 1, Pieces: []int{30527}, Left: 19373}}, Bars: 1, Bought: 1, Cost: 740, Bound: 739},
			`{"bars_used":1,"bound":7.39,"proven":false,"cost":7.4,"patterns":[{"count":1,"length":500.5,"pieces":[305.27],"left":193.73}],"seconds":0.002}`,
		},
		{
			"nothing",
			nest.Job{},
			nest.Result{Proven: true},
			`{"bars_used":0,"bound":0,"proven":true,"cost":0,"patterns":[],"seconds":0.002}`,
		},
	}
	for _, tt := range tests {
		text, err := nest.JSON(tt.job, tt.r, 0.0021)
		if err != nil || string(text) != tt.want+"\n" {
			t.Errorf("%s: got %s, %v\nwant %s", tt.name, text, err, tt.want)
		}
	}
}
