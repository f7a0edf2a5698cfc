package nest_test

import (
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"tubewright/cutlist/nest"
)

// problem is a row of a benchmark set: index.csv beside files that nest.Read reads.
type problem struct {
	name, class string
	job         nest.Job
	optimum     int
}

func readProblems(t testing.TB, folder string) []problem {
	t.Helper()
	f, err := os.Open(filepath.Join(folder, "index.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close() //nolint:errcheck // only read from
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at := func(name string) int { return slices.Index(rows[0], name) }
	var list []problem
	for _, r := range rows[1:] {
		optimum, err := strconv.Atoi(r[at("optimum")])
		if err != nil {
			t.Fatalf("%s: %v", r[0], err)
		}
		list = append(list, problem{r[at("name")], r[at("class")], readJob(t, filepath.Join(folder, r[at("file")])), optimum})
	}
	return list
}

func readJob(t testing.TB, path string) nest.Job {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close() //nolint:errcheck // only read from
	job, err := nest.Read(filepath.Base(path), f)
	if err != nil {
		t.Fatal(err)
	}
	return job
}

const (
	// benchmarkFolder is where the published sets are, if anywhere.
	benchmarkFolder = "TUBEWRIGHT_STOCK"
	// benchmarkSeconds gives each problem so long, for the whole table; else a
	// budget of steps does.
	benchmarkSeconds = "TUBEWRIGHT_STOCK_SECONDS"
	// budget of steps for each problem, a second or two at most.
	budget = 1_500_000_000
)

// tally sums up a class.
type tally struct {
	class              string
	n, reached, proven int
	seconds            []float64
}

func (c *tally) String() string {
	slices.Sort(c.seconds)
	return fmt.Sprintf("| %-9s | %3d | %3d | %3d | %6.3f | %6.2f |", c.class, c.n, c.reached, c.proven, c.seconds[c.n/2], c.seconds[c.n-1])
}

// leastProven of each class within the budget, with some to spare.
var leastProven = map[string]int{
	"ai": 3, "ani": 3, "classic": 6, "cutgen": 12, "falk_t": 9, "falk_u": 9, "gi": 4, "hard28": 6, "nirup53": 5, "random": 9,
	"scholl1": 7, "scholl2": 8, "scholl3": 5, "schwerin1": 3, "schwerin2": 3, "smalljob": 6, "waescher": 8,
}

func stockOptions(t *testing.T) nest.Options {
	t.Helper()
	text := os.Getenv(benchmarkSeconds)
	if text == "" {
		return nest.Options{Budget: budget}
	}
	seconds, err := strconv.ParseFloat(text, 64)
	if err != nil || seconds <= 0 {
		t.Fatalf("%s is %q; it must be a number of seconds", benchmarkSeconds, text)
	}
	return nest.Options{Seconds: seconds}
}

// Every plan is sound, its certificate is accepted, nothing is called proven that
// is not the published optimum, and no plan takes more than one bar above it.
func TestStockProblems(t *testing.T) {
	folder := os.Getenv(benchmarkFolder)
	shipped := folder == ""
	if shipped {
		folder = "../../testdata/stock"
		text := "the published benchmark sets are absent (" + benchmarkFolder + " is not set): only the few shipped problems run"
		t.Log(text)
		fmt.Fprintln(os.Stderr, "cutlist/nest: "+text)
	}
	opt := stockOptions(t)
	all := &tally{class: "all"}
	classes := []*tally{}
	for _, p := range readProblems(t, folder) {
		i := slices.IndexFunc(classes, func(c *tally) bool { return c.class == p.class })
		if i < 0 {
			i, classes = len(classes), append(classes, &tally{class: p.class})
		}
		runProblem(t, p, opt, classes[i], all)
	}
	if all.n == 0 {
		t.Fatal("the set is empty")
	}
	t.Log("class, problems, optimal, proven, median and worst seconds")
	for _, c := range append(classes, all) {
		t.Log(c)
		if !shipped && c.proven < min(c.n, leastProven[c.class]) {
			t.Errorf("%s: only %d proven", c.class, c.proven)
		}
	}
}

func runProblem(t *testing.T, p problem, opt nest.Options, tallies ...*tally) {
	t.Helper()
	start := time.Now()
	r, err := nest.Solve(context.Background(), p.job, opt)
	took := time.Since(start).Seconds()
	if err != nil {
		t.Errorf("%s: %v", p.name, err)
		return
	}
	checkPlan(t, p.job, r, nil)
	switch err := checkCertificate(p.job, r.Bound, r.Certificate); {
	case errors.Is(err, errTooLarge):
		t.Logf("%s: bound %d: its certificate is too large to be checked in full", p.name, r.Bound)
	case err != nil:
		t.Errorf("%s: bound %d (cost %d): %v", p.name, r.Bound, r.Cost, err)
	}
	switch {
	case r.Cost < p.optimum || r.Bound > p.optimum || r.Proven && r.Cost != p.optimum:
		t.Errorf("%s: cost %d, bound %d, proven %v; published optimum %d", p.name, r.Cost, r.Bound, r.Proven, p.optimum)
	case r.Cost > p.optimum+1:
		t.Errorf("%s: %d bars, published optimum %d", p.name, r.Cost, p.optimum)
	case !r.Proven || r.Cost > p.optimum:
		t.Logf("%s: cost %d, bound %d, published optimum %d, %.2f s", p.name, r.Cost, r.Bound, p.optimum, took)
	}
	for _, c := range tallies {
		c.n++
		c.seconds = append(c.seconds, took)
		if r.Cost == p.optimum {
			c.reached++
		}
		if r.Proven {
			c.proven++
		}
	}
}

// Neither the order of the lines nor the unit changes the result, and a kerf
// taken off pieces and bar alike is the same problem.
func TestSameProblemWrittenOtherwise(t *testing.T) {
	for _, p := range readProblems(t, "../../testdata/stock") {
		if p.class != "smalljob" {
			continue
		}
		want, err := nest.Solve(context.Background(), p.job, nest.Options{Budget: budget})
		if err != nil {
			t.Fatal(err)
		}
		backwards, finer, sawn := p.job, p.job, p.job
		backwards.Pieces = slices.Clone(p.job.Pieces)
		slices.Reverse(backwards.Pieces)
		finer.Stock, finer.Pieces = scaled(p.job, 7, 0)
		sawn.Stock, sawn.Pieces = scaled(p.job, 1, 3)
		sawn.Kerf = 3
		for name, job := range map[string]nest.Job{"backwards": backwards, "in another unit": finer, "with a kerf": sawn} {
			got, err := nest.Solve(context.Background(), job, nest.Options{Budget: budget})
			if err != nil || got.Cost != want.Cost || got.Bound != want.Bound || len(got.Patterns) != len(want.Patterns) {
				t.Errorf("%s %s: cost %d, bound %d, %d patterns, %v; want %d, %d, %d",
					p.name, name, got.Cost, got.Bound, len(got.Patterns), err, want.Cost, want.Bound, len(want.Patterns))
			}
			checkPlan(t, job, got, nil)
		}
	}
}

func scaled(job nest.Job, times, less int) (stock []nest.Bar, pieces []nest.Piece) {
	stock = []nest.Bar{{Length: job.Stock[0].Length*times - less}}
	for _, p := range job.Pieces {
		pieces = append(pieces, nest.Piece{Length: p.Length*times - less, Count: p.Count})
	}
	return stock, pieces
}

// BenchmarkSolve is the time of a whole job of the size of one machine.
func BenchmarkSolve(b *testing.B) {
	for _, p := range readProblems(b, "../../testdata/stock") {
		if !strings.HasPrefix(p.class, "small") {
			continue
		}
		b.Run(p.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := nest.Solve(context.Background(), p.job, nest.Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
