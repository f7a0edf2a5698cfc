package nest_test

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"tubewright/cutlist/nest"
)

const (
	// rivalTime is what the general solver gets for a problem, ourTime what we get,
	// rivalProblems how many problems there are.
	rivalTime     = 60 * time.Second
	ourTime       = 10 * time.Second
	rivalProblems = 30
)

// rivals are general integer-programming solvers, the first that is there is
// taken: how each is called on a model, and the line of its answer that has the
// objective last. Both run on one thread.
var rivals = []struct {
	program string
	args    func(model, answer string) []string
	line    string
}{
	{"cbc", func(model, answer string) []string {
		return []string{model, "threads", "0", "solve", "solution", answer}
	}, "Optimal - objective value"},
	{"glpsol", func(model, answer string) []string { return []string{"--lp", model, "-w", answer} }, "s mip"},
}

var errTimedOut = errors.New("timed out")

// askRival solves a model in a folder and gives the objective.
func askRival(ctx context.Context, which int, model, answer string) (int, error) {
	ctx, cancel := context.WithTimeout(ctx, rivalTime)
	defer cancel()
	rival := rivals[which]
	out, err := exec.CommandContext(ctx, rival.program, rival.args(model, answer)...).CombinedOutput()
	if ctx.Err() != nil {
		return 0, errTimedOut
	}
	if err != nil {
		return 0, fmt.Errorf("%s: %w\n%s", rival.program, err, out)
	}
	text, err := os.ReadFile(answer)
	if err != nil {
		return 0, err
	}
	for line := range strings.Lines(string(text)) {
		if words := strings.Fields(line); strings.HasPrefix(line, rival.line) {
			best, err := strconv.ParseFloat(words[len(words)-1], 64)
			return int(best + 0.5), err
		}
	}
	return 0, fmt.Errorf("%s gives no optimum:\n%s", rival.program, text)
}

// rivalSet is the problems: of every class the two with the fewest pieces, then
// the thirty of these with the fewest; where the published sets are absent the
// shipped ones.
func rivalSet(b *testing.B) []problem {
	folder := os.Getenv(benchmarkFolder)
	if folder == "" {
		folder = "../../testdata/stock"
	}
	all := readProblems(b, folder)
	slices.SortStableFunc(all, func(p, q problem) int {
		return cmp.Or(cmp.Compare(countPieces(p.job.Pieces), countPieces(q.job.Pieces)), cmp.Compare(p.name, q.name))
	})
	perClass := map[string]int{}
	most := 2
	if os.Getenv(benchmarkFolder) == "" {
		most = rivalProblems
	}
	var list []problem
	for _, p := range all {
		if perClass[p.class]++; perClass[p.class] <= most && len(list) < rivalProblems {
			list = append(list, p)
		}
	}
	return list
}

// BenchmarkRival holds Solve against a general integer-programming solver on the
// same problems in the same run, on one thread each. The solver is no part of
// this program: install coinor-cbc or glpk-utils to run it.
func BenchmarkRival(b *testing.B) {
	which := slices.IndexFunc(rivals, func(r struct {
		program string
		args    func(model, answer string) []string
		line    string
	},
	) bool {
		_, err := exec.LookPath(r.program)
		return err == nil
	})
	if which < 0 {
		fmt.Fprintln(os.Stderr, "cutlist/nest: THE RIVAL IS ABSENT: neither cbc (coinor-cbc) nor glpsol (glpk-utils) is installed; nothing is compared")
		b.ReportMetric(0, "rivals")
		return
	}
	for b.Loop() {
		compareAll(b, which)
	}
}

func compareAll(b *testing.B, which int) {
	var times []float64
	timedOut := 0
	fmt.Printf("%-24s %-10s %6s %10s %12s %10s\n", "problem", "model", "bars", "ours, s", rivals[which].program+", s", "times")
	for _, p := range rivalSet(b) {
		c := compare(b, which, p)
		note := ""
		if c.timedOut {
			timedOut++
			note = "  timed out"
		}
		if !c.proven {
			note += "  ours not proven"
		}
		times = append(times, c.rival/c.ours)
		fmt.Printf("%-24s %-10s %6d %10.4f %12.2f %10.0f%s\n", p.name, c.model, p.optimum, c.ours, c.rival, c.rival/c.ours, note)
	}
	slices.Sort(times)
	b.ReportMetric(times[len(times)/2], "times-faster-at-median")
	b.ReportMetric(times[0], "times-faster-at-least")
	b.ReportMetric(float64(timedOut), "rival-timed-out")
	b.ReportMetric(float64(len(times)), "problems")
}

// compared is one problem solved by both; a time-out counts as the time it had.
type compared struct {
	model            string
	ours, rival      float64 // seconds
	proven, timedOut bool
}

func compare(b *testing.B, which int, p problem) compared {
	start := time.Now()
	r, err := nest.Solve(context.Background(), p.job, nest.Options{Seconds: ourTime.Seconds()})
	if err != nil {
		b.Fatal(err)
	}
	c := compared{ours: time.Since(start).Seconds(), proven: r.Proven}
	if r.Proven && r.Cost != p.optimum {
		b.Errorf("%s: ours %d bars, the optimum is %d", p.name, r.Cost, p.optimum)
	}
	m := modelOf(p.job)
	c.model = m.name()
	dir := b.TempDir()
	file, err := os.Create(filepath.Join(dir, "model.lp"))
	if err == nil {
		err = errors.Join(m.write(file), file.Close())
	}
	if err != nil {
		b.Fatal(err)
	}
	start = time.Now()
	bars, err := askRival(context.Background(), which, file.Name(), filepath.Join(dir, "answer"))
	c.rival, c.timedOut = time.Since(start).Seconds(), errors.Is(err, errTimedOut)
	if err != nil && !c.timedOut || err == nil && bars != p.optimum {
		b.Errorf("%s: %s finds %d bars, %v; the optimum is %d", p.name, rivals[which].program, bars, err, p.optimum)
	}
	return c
}
