package mend_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/mend"
)

// crowded is two to four parts with a port on each of two faces, boxes between
// them, and one to three runs, some drawn, some picked, some of glass: much is
// wrong with it.
func crowded(r *rand.Rand) route.Plan {
	plan := bench()
	plan.Fittings = append(plan.Fittings, extender(15), extender(30))
	n := 2 + r.IntN(2)
	for i := range n {
		at := vec{10 + 440*float64(i)/float64(n-1)*0.9, 100 + float64(r.IntN(3)*10), 110 + float64(r.IntN(2)*15)}
		k := box(fmt.Sprintf("part-%d", i), at, at.Add(vec{40, 60, 60}))
		right := float64(min(1, n-1-i))
		k = with(k, "one", at.Add(vec{40 * right, 15, 30}), vec{2*right - 1, 0, 0}, route.Any)
		k = with(k, "two", at.Add(vec{40 * right, 45, 30}), vec{2*right - 1, 0, 0}, route.Any)
		k.Passages = [][2]string{{"one", "two"}}
		plan.Parts = append(plan.Parts, k)
	}
	for i := range 1 + r.IntN(3) {
		at := vec{float64(80 + r.IntN(300)), float64(50 + r.IntN(150)), float64(50 + r.IntN(150))}
		plan.Parts = append(plan.Parts, box(fmt.Sprintf("box-%d", i), at, at.Add(vec{20, 60, 60})))
	}
	for i := range 1 + r.IntN(2) {
		one := run(fmt.Sprintf("run-%d", i), "part-0."+[]string{"one", "two"}[i], fmt.Sprintf("part-%d.%s", n-1, []string{"one", "two"}[r.IntN(2)]))
		switch r.IntN(8) {
		case 0, 1:
			one.Way = route.Drawn
		case 2, 3, 4:
			one.Tube = "glass-16-12"
		case 5, 6:
			one.Way = route.Straight
		}
		plan.Runs = append(plan.Runs, one)
	}
	return plan
}

// errorsOf counts a plan's errors by what they are about, judged afresh.
func errorsOf(t *testing.T, plan route.Plan) map[string]int {
	t.Helper()
	count := map[string]int{}
	for _, f := range check.Findings(plan, solve(t, plan)) {
		if f.Severity == check.Error {
			count[about(f)]++
		}
	}
	return count
}

// about names a finding by its kind and those it is about; a run without a way
// by itself, whatever stood nearest in its way.
func about(f check.Finding) string {
	runs, parts := slices.Sorted(slices.Values(f.Runs)), slices.Sorted(slices.Values(f.Parts))
	if f.Code == check.NoWay {
		return string(f.Code) + " " + f.Runs[0]
	}
	return fmt.Sprint(f.Code, runs, parts)
}

// seeds is how many scenes to try: more by the variable TUBEWRIGHT_MEND_SEEDS.
func seeds(t *testing.T, few int) uint64 {
	t.Helper()
	if text := os.Getenv("TUBEWRIGHT_MEND_SEEDS"); text != "" {
		n, err := strconv.Atoi(text)
		if err != nil {
			t.Fatal(err)
		}
		few = n
	}
	return uint64(few)
}

// longSeeds are scenes whose runs have so little room that each trial is a long
// search: half a minute together, for when more seeds are asked for.
var longSeeds = []uint64{2, 4, 6}

// Whatever is offered, applied to the plan and judged afresh, settles the
// finding and brings no error; a move by a step less does not; the plan is as
// it was; and a second search says the same.
func TestOffersKeepTheirWord(t *testing.T) {
	offers, least := 0, 0
	for seed := range seeds(t, 10) {
		if slices.Contains(longSeeds, seed) && os.Getenv("TUBEWRIGHT_MEND_SEEDS") == "" {
			continue
		}
		plan := crowded(rand.New(rand.NewPCG(seed, 0)))
		kept := plan.Clone()
		sol := solve(t, plan)
		before := errorsOf(t, plan)
		list := check.Findings(plan, sol)
		for n, f := range list {
			if f.Severity != check.Error || n > 3 {
				continue
			}
			search := mend.Search{Effort: 3000}
			a, err := search.Advise(context.Background(), plan, sol, f)
			if err != nil {
				t.Fatal(err)
			}
			for _, o := range a.Offers {
				offers++
				if why := broken(t, plan, before, f, o); why != "" {
					t.Errorf("seed %d: %s\n%q: %s", seed, f.What, o.Words, why)
				}
				if m, ok := o.Change.(mend.Move); ok && o.Least {
					least++
					m.By = m.By.Mul((m.By.Len() - 1) / m.By.Len())
					if m.By.Len() > 0.5 && helps(t, plan, before, f, m) {
						t.Errorf("seed %d: %s\n%q: a step less helps too", seed, f.What, o.Words)
					}
				}
			}
			if n == 0 {
				again, err := search.Advise(context.Background(), plan, sol, f)
				if err != nil || !reflect.DeepEqual(words(a.Offers), words(again.Offers)) {
					t.Errorf("seed %d: %q, and a second time %q (%v)", seed, words(a.Offers), words(again.Offers), err)
				}
			}
		}
		if !reflect.DeepEqual(plan, kept) {
			t.Fatalf("seed %d: the plan was written to", seed)
		}
	}
	t.Logf("%d offers, %d of them least moves", offers, least)
	if offers < 25 || least < 5 {
		t.Errorf("only %d offers and %d least moves: the scenes say little", offers, least)
	}
}

// broken says in what an offer does not keep its word.
func broken(t *testing.T, plan route.Plan, before map[string]int, f check.Finding, o mend.Offer) string {
	t.Helper()
	changed, err := o.Change.Apply(plan)
	switch {
	case err != nil:
		return err.Error()
	case !reflect.DeepEqual(changed, o.Plan):
		return "its plan is another than the change makes"
	case !strings.HasSuffix(o.Words, "."):
		return "its words are no sentence"
	case !helps(t, plan, before, f, o.Change):
		return "it does not settle the finding, or brings an error"
	}
	return ""
}

func helps(t *testing.T, plan route.Plan, before map[string]int, f check.Finding, c mend.Change) bool {
	t.Helper()
	changed, err := c.Apply(plan)
	if err != nil {
		t.Fatal(err)
	}
	after := errorsOf(t, changed)
	for what := range after {
		if before[what] == 0 {
			return false
		}
	}
	return after[about(f)] == 0
}

// blocked is a glass tube with a box somewhere across its way, and maybe another
// beside that.
func blocked(r *rand.Rand) route.Plan {
	plan := bench()
	plan.Parts = []route.Part{hole("a", vec{50, 150, 150}, vec{1, 0, 0}), hole("b", vec{450, 150, 150}, vec{-1, 0, 0})}
	for i := range 1 + r.IntN(2) {
		at := vec{120 + 120*float64(i) + 40*r.Float64(), 150 - 90*r.Float64(), 150 - 90*r.Float64()}
		plan.Parts = append(plan.Parts, box(fmt.Sprintf("box-%d", i), at, at.Add(vec{30 + 60*r.Float64(), 90, 90})))
	}
	plan.Runs = []route.Run{run("through", "a.p", "b.p")}
	plan.Runs[0].Tube = "glass-16-12"
	return plan
}

// On small scenes a slow rival tries every step of every part along every axis,
// solving the whole plan each time: the least move of each part is the one
// offered.
func TestMovesAreTheLeastOfAll(t *testing.T) {
	met := 0
	for seed := range seeds(t, 16) {
		plan := blocked(rand.New(rand.NewPCG(seed, 1)))
		sol := solve(t, plan)
		before := errorsOf(t, plan)
		for _, f := range check.Findings(plan, sol) {
			if f.Code != check.NoWay && f.Code != check.PartHitsPart {
				continue
			}
			a, err := mend.Search{Offers: 20, Farthest: 24}.Advise(context.Background(), plan, sol, f)
			if err != nil || !a.Whole {
				t.Fatalf("seed %d: whole %v, %v", seed, a.Whole, err)
			}
			for _, m := range leastMoves(t, plan, before, f, 24) {
				met++
				if text := m.Words(plan.Units); !slices.Contains(words(a.Offers), text) {
					t.Errorf("seed %d: %s\nthe least is %q, offered are\n%s", seed, f.What, text, strings.Join(words(a.Offers), "\n"))
				}
			}
		}
	}
	t.Logf("%d least moves", met)
	if met < 6 {
		t.Errorf("only %d moves: the scenes say little", met)
	}
}

// leastMoves finds the least move of each part that the search would look at:
// no part that needs more than three times the steps of the best.
func leastMoves(t *testing.T, plan route.Plan, before map[string]int, f check.Finding, far int) (list []mend.Move) {
	t.Helper()
	for steps := 1; steps <= far; steps++ {
		for _, k := range plan.Parts {
			moved := slices.ContainsFunc(list, func(m mend.Move) bool { return m.Parts[0] == k.Name })
			if moved || len(k.Solids) > 0 && !slices.Contains(f.Parts, k.Name) || len(list) > 0 && float64(steps) > 3*list[0].By.Len()+0.5 {
				continue
			}
			for dir := range 6 {
				m := mend.Move{Parts: []string{k.Name}}
				m.By[dir/2] = float64(steps) * float64(1-dir%2*2)
				if helps(t, plan, before, f, m) {
					list = append(list, m)
					break
				}
			}
		}
	}
	return list
}
