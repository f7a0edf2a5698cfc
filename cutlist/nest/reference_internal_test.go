package nest

import (
	"context"
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"
)

// notUsed lists the rows of the reference table that say nothing this package
// does, each with the reason.
var notUsed = map[string]string{
	"CS-01f": "counts all patterns of an instance; the package makes only the patterns it needs and never counts them",
}

type figure struct {
	id, quantity, unit, source string
	inputs                     map[string]string
	value, tolerance           float64
}

func readFigures(t *testing.T) []figure {
	t.Helper()
	f, err := os.Open("../../testdata/reference/04_cutting_stock.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close() //nolint:errcheck // only read from
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []figure
	for _, r := range rows[1:] {
		fig := figure{id: r[0], quantity: r[1], unit: r[4], source: r[6], inputs: map[string]string{}}
		for _, pair := range strings.Split(r[2], ";") {
			name, value, _ := strings.Cut(pair, "=")
			fig.inputs[name] = value
		}
		fig.value, fig.tolerance = number(t, r[3]), number(t, r[5])
		list = append(list, fig)
	}
	return list
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func hundred(t *testing.T, s string) int {
	t.Helper()
	return int(math.Round(100 * number(t, s)))
}

// job is the row's instance in hundredths; several stock lengths are priced by
// their length.
func (f figure) job(t *testing.T) Job {
	t.Helper()
	j := Job{Kerf: hundred(t, f.inputs["kerf"])}
	lengths := strings.Split(f.inputs["stock"], "|")
	for _, l := range lengths {
		b := Bar{Length: hundred(t, l)}
		if len(lengths) > 1 {
			b.Price = b.Length
		}
		j.Stock = append(j.Stock, b)
	}
	for _, p := range strings.Split(f.inputs["pieces"], "|") {
		length, count, _ := strings.Cut(p, "x")
		j.Pieces = append(j.Pieces, Piece{hundred(t, length), hundred(t, count) / 100})
	}
	return j
}

func (j Job) material() int {
	sum := 0
	for _, p := range j.Pieces {
		sum += p.Length * p.Count
	}
	return sum
}

func solved(t *testing.T, j Job) Result {
	t.Helper()
	r, err := Solve(context.Background(), j, Options{})
	if err != nil || !r.Proven {
		t.Fatalf("Solve: %+v, %v; want a proven plan", r, err)
	}
	return r
}

// linear is the value of the linear relaxation in bars.
func linear(j Job, unbounded bool) float64 {
	t := newTask(j)
	g := newSearch(t, newMeter(context.Background(), Options{})).newTree()
	for k := range g.kinds {
		if unbounded {
			g.kinds[k].count = maxPieces
		}
	}
	g.optimise()
	return g.total() * g.dear / float64(t.bars[0].cost)
}

func firstFit(j Job) int {
	plan, _ := newTask(j).pack([]int{0}, false)
	return len(plan)
}

// mostEqual is how many pieces of one length one bar gives, and what is left
// before the last cut (the table counts kerfs between pieces only).
func mostEqual(t *testing.T, f figure) (pieces int, left float64) {
	t.Helper()
	stock, piece, kerf := hundred(t, f.inputs["stock_mm"]), hundred(t, f.inputs["piece_mm"]), hundred(t, f.inputs["kerf_mm"])
	for n := 1; ; n++ {
		r := solved(t, Job{Pieces: []Piece{{piece, n}}, Stock: []Bar{{Length: stock}}, Kerf: kerf})
		if r.Bars > 1 {
			return pieces, left
		}
		pieces, left = n, float64(r.Patterns[0].Left)/100
		if r.Patterns[0].Left > 0 {
			left += float64(kerf) / 100
		}
	}
}

func got(t *testing.T, f figure) (float64, bool) {
	t.Helper()
	switch f.quantity {
	case "minimum number of stock lengths":
		return float64(solved(t, f.job(t)).Bars), true
	case "material total":
		return float64(f.job(t).material()) / 100, true
	case "material lower bound":
		j := f.job(t)
		bound := ceilDiv(j.material(), j.Stock[0].Length)
		if task := newTask(j); task.barsBy(task.clearOut(0)) < bound {
			t.Errorf("%s: our bound is below the plain one, %d", f.id, bound)
		}
		return float64(bound), true
	case "linear relaxation optimum":
		return linear(f.job(t), false), true
	case "linear relaxation optimum unbounded patterns":
		return linear(f.job(t), true), true
	case "rounded up linear bound":
		return math.Ceil(linear(f.job(t), true)), true
	case "waste at optimum":
		j := f.job(t)
		bought := solved(t, j).Bars * j.Stock[0].Length
		return 100 * float64(bought-j.material()) / float64(bought), true
	case "total waste at optimum":
		j := f.job(t)
		return float64(solved(t, j).Bars*j.Stock[0].Length-j.material()) / 100, true
	case "first fit decreasing count":
		return float64(firstFit(f.job(t))), true
	case "least total bought length, several stock lengths":
		return float64(solved(t, f.job(t)).Cost) / 100, true
	case "drop of the plan 16+12+5+5 from 40":
		return float64(solved(t, f.job(t)).Patterns[0].Left) / 100, true
	case "most equal pieces from one stock length with kerf: floor((L+k)/(l+k))":
		n, _ := mostEqual(t, f)
		return float64(n), true
	case "offcut left after those pieces, kerf only between pieces":
		_, left := mostEqual(t, f)
		return left, true
	case "worst-case bound of first-fit decreasing: 11/9 OPT + 6/9":
		return dosa(number(t, f.inputs["OPT"])), true
	}
	return 0, false
}

func TestReferenceFigures(t *testing.T) {
	used := 0
	for _, f := range readFigures(t) {
		if notUsed[f.id] != "" {
			t.Logf("%s is not used: %s", f.id, notUsed[f.id])
			continue
		}
		value, ok := got(t, f)
		if !ok {
			t.Errorf("%s: nothing here gives %q", f.id, f.quantity)
			continue
		}
		if used++; math.Abs(value-f.value) > f.tolerance+1e-12 {
			t.Errorf("%s: %s is %v, want %v ± %v (%s)", f.id, f.quantity, value, f.value, f.tolerance, f.source)
		}
	}
	t.Logf("%d figures used", used)
}

// dosa is the most bars first-fit decreasing takes where opt suffice (Dósa 2007).
func dosa(opt float64) float64 { return 11./9*opt + 6./9 }

// First-fit decreasing keeps to its proven worst case, and Solve never takes
// more than it.
func TestFirstFitWorstCase(t *testing.T) {
	for seed := range uint64(100) {
		rnd := rand.New(rand.NewPCG(seed, 1))
		j := Job{Stock: []Bar{{Length: 1000}}}
		for range 5 + rnd.IntN(25) {
			j.Pieces = append(j.Pieces, Piece{100 + rnd.IntN(500), 1})
		}
		r, err := Solve(context.Background(), j, Options{})
		if err != nil {
			t.Fatal(err)
		}
		first := firstFit(j)
		if r.Bars > first || r.Proven && float64(first) > dosa(float64(r.Bars)) {
			t.Errorf("seed %d: first fit takes %d bars, Solve %d (proven %v)", seed, first, r.Bars, r.Proven)
		}
	}
}
