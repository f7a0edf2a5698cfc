package nest_test

import (
	"context"
	"errors"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
	"time"

	"tubewright/cutlist/nest"
)

func TestSolveRefuses(t *testing.T) {
	bar := []nest.Bar{{Length: 50000}}
	one := []nest.Piece{{Length: 100, Count: 1}}
	tests := []struct {
		name string
		job  nest.Job
		want []string // in the text
	}{
		{"no bar", nest.Job{Pieces: one}, []string{"no bar to cut from"}},
		{"too long", nest.Job{Pieces: []nest.Piece{{60000, 2}, {50001, 1}, {100, 1}}, Stock: bar}, []string{"pieces are longer", "500", "2 of 600, 500.01"}},
		{"zero length", nest.Job{Pieces: []nest.Piece{{0, 1}}, Stock: bar}, []string{"piece 1: length is 0; it must be above 0"}},
		{"negative count", nest.Job{Pieces: []nest.Piece{{5, -1}}, Stock: bar}, []string{"piece 1: count is -1"}},
		{"all at once", nest.Job{
			Pieces: []nest.Piece{{1 << 50, 1}}, Stock: []nest.Bar{{Length: -1, Price: -2, Most: -3}},
			Offcuts: []nest.Bar{{}}, Kerf: -1, KeepOver: -1,
		}, []string{"piece 1: length is 1125899906842624", "stock 1: length", "stock 1: price", "stock 1: limit", "offcut 1: length", "kerf", "remnant"}},
		{"some prices", nest.Job{Pieces: one, Stock: []nest.Bar{{Length: 500}, {Length: 600, Price: 1}}}, []string{"stock 1: price is 0", "other stock has a price"}},
		{"absurd demand", nest.Job{Pieces: []nest.Piece{{5, 1 << 60}}, Stock: bar}, []string{"1152921504606846976 pieces", "at most 16384"}},
		{"absurd sum", nest.Job{Pieces: []nest.Piece{{5, 1 << 13}, {6, 1 << 13}, {7, 1}}, Stock: bar}, []string{"16385 pieces"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := nest.Solve(context.Background(), tt.job, nest.Options{})
			if err == nil {
				t.Fatal("no error")
			}
			for _, word := range tt.want {
				if !strings.Contains(err.Error(), word) {
					t.Errorf("error %q lacks %q", err, word)
				}
			}
		})
	}
}

func TestSolveTypedErrors(t *testing.T) {
	var number *nest.NumberError
	_, err := nest.Solve(context.Background(), nest.Job{Pieces: []nest.Piece{{-5, 1}}}, nest.Options{})
	if !errors.As(err, &number) || number.Have != -5 {
		t.Errorf("negative length: %v", err)
	}
	var long *nest.TooLongError
	_, err = nest.Solve(context.Background(), nest.Job{Pieces: []nest.Piece{{9, 1}}, Stock: []nest.Bar{{Length: 8}}}, nest.Options{})
	if !errors.As(err, &long) || long.Longest != 8 || !reflect.DeepEqual(long.Pieces, []nest.Piece{{9, 1}}) || !strings.Contains(err.Error(), "one piece is") {
		t.Errorf("too long: %v", err)
	}
	kinds := nest.Job{Stock: []nest.Bar{{Length: 90000}}}
	for i := range 2001 {
		kinds.Pieces = append(kinds.Pieces, nest.Piece{Length: 1 + i, Count: 1})
	}
	var many *nest.TooManyError
	if _, err = nest.Solve(context.Background(), kinds, nest.Options{}); !errors.As(err, &many) || many.Limit != 2000 {
		t.Errorf("2001 lengths: %v", err)
	}
	if _, err = nest.Solve(context.Background(), nest.Job{Pieces: kinds.Pieces[:1], Offcuts: make([]nest.Bar, 2001)}, nest.Options{}); !errors.As(err, &many) {
		t.Errorf("2001 offcuts: %v", err)
	}
}

func TestSolveNothing(t *testing.T) {
	r, err := nest.Solve(context.Background(), nest.Job{Stock: []nest.Bar{{Length: 5}}}, nest.Options{})
	if err != nil || !reflect.DeepEqual(r, nest.Result{Proven: true}) {
		t.Errorf("no pieces: %+v, %v", r, err)
	}
}

func TestTooFew(t *testing.T) {
	job := nest.Job{
		Pieces: []nest.Piece{{300, 2}, {200, 2}, {100, 1}}, Stock: []nest.Bar{{Length: 500, Price: 7, Most: 1}},
		Offcuts: []nest.Bar{{Length: 150}},
	}
	r, err := nest.Solve(context.Background(), job, nest.Options{})
	var few *nest.TooFewError
	if !errors.As(err, &few) || !few.Proven || !reflect.DeepEqual(few.Uncut, []nest.Piece{{300, 2}}) {
		t.Fatalf("Solve: %v; want the two of 300 uncut: 2·200 and 100 fit", err)
	}
	if !strings.Contains(err.Error(), "2 of 3") || r.Proven {
		t.Errorf("%v, proven %v", err, r.Proven)
	}
	checkPlan(t, job, r, few.Uncut)
	if text := (&nest.TooFewError{Uncut: few.Uncut}).Error(); !strings.Contains(text, "no plan was found") {
		t.Errorf("unproven: %q", text)
	}
}

// randomBig is a job of a busy workshop: lengths to the hundredth of a mm, three
// stock lengths, six offcuts, a kerf.
func randomBig(seed uint64, pieces int) nest.Job {
	rnd := rand.New(rand.NewPCG(seed, 7))
	job := nest.Job{Kerf: 100, KeepOver: 12000, Stock: []nest.Bar{{50000, 740, 0}, {100000, 1290, 0}, {75000, 1050, 3}}}
	for range pieces {
		job.Pieces = append(job.Pieces, nest.Piece{Length: 6000 + rnd.IntN(45000), Count: 1})
	}
	for range 6 {
		job.Offcuts = append(job.Offcuts, nest.Bar{Length: 12000 + rnd.IntN(30000)})
	}
	return job
}

// Most jobs of up to thirty pieces, three stock lengths and six offcuts are
// proven; the others say how far off they may be.
func TestThirtyPieces(t *testing.T) {
	proven := 0
	for seed := range uint64(12) {
		job := randomBig(seed, 8+2*int(seed))
		r, err := nest.Solve(context.Background(), job, nest.Options{Budget: 100_000_000})
		if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, job, r, nil)
		if r.Proven {
			proven++
		}
		if gap := float64(r.Cost-r.Bound) / float64(r.Cost); gap > 0.05 {
			t.Errorf("seed %d: cost %d, bound %d", seed, r.Cost, r.Bound)
		}
	}
	t.Logf("%d of 12 proven", proven)
	if proven < 9 {
		t.Errorf("only %d of 12 proven", proven)
	}
}

func TestProgressAndDeterminism(t *testing.T) {
	job := randomBig(3, 24)
	solve := func() (nest.Result, [][2]int) {
		var told [][2]int
		r, err := nest.Solve(context.Background(), job, nest.Options{Budget: 20_000_000, Progress: func(bound, incumbent int) {
			told = append(told, [2]int{bound, incumbent})
		}})
		if err != nil {
			t.Fatal(err)
		}
		return r, told
	}
	first, told := solve()
	if len(told) < 2 {
		t.Fatalf("told %v", told)
	}
	for i, s := range told {
		if s[0] > s[1] || i > 0 && (s[0] < told[i-1][0] || s[1] > told[i-1][1]) {
			t.Errorf("step %d: %v after %v", i, s, told[max(0, i-1)])
		}
	}
	if last := told[len(told)-1]; last[1] != first.Cost || last[0] != first.Bound {
		t.Errorf("last told %v; result %d, bound %d", last, first.Cost, first.Bound)
	}
	for range 3 {
		if again, stepsAgain := solve(); !reflect.DeepEqual(again, first) || !reflect.DeepEqual(stepsAgain, told) {
			t.Fatalf("another run gives %+v", again)
		}
	}
}

func TestCancelledSolveGivesAPlan(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	job := randomBig(5, 30)
	r, err := nest.Solve(ctx, job, nest.Options{})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("error %v", err)
	}
	checkPlan(t, job, r, nil)
}

// A limit of time is kept: the search looks at the clock every few milliseconds.
func TestSeconds(t *testing.T) {
	start := time.Now()
	job := randomBig(5, 30)
	r, err := nest.Solve(context.Background(), job, nest.Options{Seconds: 0.05})
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, job, r, nil)
	if took := time.Since(start); took > 10*time.Second { // a hundred times what is asked, for busy machines
		t.Errorf("0.05 s became %v", took)
	}
}

// The largest numbers a job may hold overflow nothing.
func TestLargestNumbers(t *testing.T) {
	const length, price = 1 << 40, 1 << 28
	job := nest.Job{
		Stock:  []nest.Bar{{length, price, 0}, {length - 1, price - 1, 3000}},
		Pieces: []nest.Piece{{length / 2, 1001}, {length/3 + 5, 2000}, {length/7 + 1, 4999}, {3, 8000}},
		Kerf:   1, KeepOver: length / 4,
	}
	r, err := nest.Solve(context.Background(), job, nest.Options{Budget: 50_000_000})
	if err != nil {
		t.Fatal(err)
	}
	checkPlan(t, job, r, nil)
	if r.Bound <= 0 || r.Bound > r.Cost {
		t.Errorf("bound %d, cost %d", r.Bound, r.Cost)
	}
}
