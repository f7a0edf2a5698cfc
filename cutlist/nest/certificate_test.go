package nest_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"tubewright/cutlist/nest"
)

// solvedJob is a job with its result.
type solvedJob struct {
	name string
	job  nest.Job
	r    nest.Result
}

func solveAll(t *testing.T, jobs map[string]nest.Job, opt nest.Options) (list []solvedJob) {
	t.Helper()
	for name, job := range jobs {
		r, err := nest.Solve(context.Background(), job, opt)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		list = append(list, solvedJob{name, job, r})
	}
	slices.SortFunc(list, func(a, b solvedJob) int { return strings.Compare(a.name, b.name) })
	return list
}

// certJobs are the shipped problems and random jobs of several stock lengths,
// offcuts and a kerf.
func certJobs(t *testing.T) map[string]nest.Job {
	jobs := map[string]nest.Job{}
	for _, p := range readProblems(t, "../../testdata/stock") {
		jobs[p.name] = p.job
	}
	for seed := range uint64(60) {
		jobs[fmt.Sprintf("small %d", seed)] = smallJob(seed, false)
	}
	for seed := range uint64(200) {
		job := randomJob(rand.New(rand.NewPCG(seed, 21)))
		if bestByTryingAll(job).uncut == 0 {
			jobs[fmt.Sprintf("tiny %d", seed)] = job
		}
	}
	return jobs
}

// Whatever is called proven is proven: the checker accepts the plan and the bound.
func TestCertificatesAreAccepted(t *testing.T) {
	proven, all := 0, solveAll(t, certJobs(t), nest.Options{Budget: 50_000_000})
	for _, s := range all {
		checkPlan(t, s.job, s.r, nil)
		if err := checkCertificate(s.job, s.r.Bound, s.r.Certificate); err != nil {
			t.Errorf("%s: bound %d (cost %d): %v", s.name, s.r.Bound, s.r.Cost, err)
		}
		if s.r.Proven {
			proven++
		}
	}
	t.Logf("%d of %d are proven", proven, len(all))
	if proven < len(all)*9/10 {
		t.Errorf("only %d of %d are proven; that tests little", proven, len(all))
	}
}

// copyOf is a certificate to spoil.
func copyOf(c *nest.Certificate) *nest.Certificate {
	d := *c
	d.Tree, d.Filters = copyProof(c.Tree), nil
	for _, f := range c.Filters {
		d.Filters = append(d.Filters, *copyDual(&f))
	}
	return &d
}

func copyProof(p *nest.Proof) *nest.Proof {
	if p == nil {
		return nil
	}
	return &nest.Proof{Leaf: copyDual(p.Leaf), A: p.A, B: p.B, Together: copyProof(p.Together), Apart: copyProof(p.Apart)}
}

func copyDual(d *nest.Dual) *nest.Dual {
	if d == nil {
		return nil
	}
	return &nest.Dual{Scale: d.Scale, Prices: slices.Clone(d.Prices), Over: slices.Clone(d.Over)}
}

func firstLeaf(p *nest.Proof) *nest.Dual {
	for p.Leaf == nil {
		p = p.Apart
	}
	return p.Leaf
}

// spoilers each make one thing of a certificate or a bound wrong.
var spoilers = []struct {
	name  string
	spoil func(bound *int, c *nest.Certificate)
}{
	{"bound + 1", func(bound *int, _ *nest.Certificate) { *bound++ }},
	{"bound and floor + 1", func(bound *int, c *nest.Certificate) { *bound++; c.Floor += c.PerCost }},
	{"all of them + 1", func(bound *int, c *nest.Certificate) {
		*bound++
		c.Floor += c.PerCost
		c.Reached = c.Floor
	}},
	{"a price at twice what it is", func(_ *int, c *nest.Certificate) {
		d := firstLeaf(c.Tree)
		i := dearest(d)
		d.Prices[i] *= 2
	}},
	{"a price gone", func(_ *int, c *nest.Certificate) {
		d := firstLeaf(c.Tree)
		d.Prices[dearest(d)] = 0
	}},
	{"one price too few", func(_ *int, c *nest.Certificate) {
		d := firstLeaf(c.Tree)
		d.Prices = d.Prices[1:]
	}},
	{"a coarser scale", func(_ *int, c *nest.Certificate) { firstLeaf(c.Tree).Scale /= 2 }},
	{"a finer scale", func(_ *int, c *nest.Certificate) { firstLeaf(c.Tree).Scale *= 2 }},
	{"no scale", func(_ *int, c *nest.Certificate) { firstLeaf(c.Tree).Scale = 0 }},
	{"bars below nothing", func(_ *int, c *nest.Certificate) { firstLeaf(c.Tree).Over[0] = -1 }},
	{"no tree", func(_ *int, c *nest.Certificate) { c.Tree = nil }},
	{"a tree without an end", func(_ *int, c *nest.Certificate) { c.Tree = &nest.Proof{} }},
	{"a branch on nothing", func(_ *int, c *nest.Certificate) { c.Tree = &nest.Proof{A: -1, Apart: c.Tree} }},
}

func dearest(d *nest.Dual) int {
	best := 0
	for i, p := range d.Prices {
		if p > d.Prices[best] {
			best = i
		}
	}
	return best
}

// A certificate with one thing wrong is refused. Some jobs stay provable though
// something is spoilt (where a bound has room to spare), so each spoiler must
// tell on most, and those that claim too much on all.
func TestSpoiltCertificatesAreRefused(t *testing.T) {
	all := solveAll(t, certJobs(t), nest.Options{Budget: 5_000_000})
	for n, m := range spoilers {
		tried, refused := 0, 0
		for _, s := range all {
			if !s.r.Proven || s.r.Bound == 0 || s.r.Certificate.Tree == nil {
				continue
			}
			bound, c := s.r.Bound, copyOf(s.r.Certificate)
			m.spoil(&bound, c)
			tried++
			err := checkCertificate(s.job, bound, c)
			if err != nil {
				refused++
			} else if bound > s.r.Cost {
				t.Errorf("%s: %s: accepted for %d though there is a plan for %d", s.name, m.name, bound, s.r.Cost)
			}
		}
		t.Logf("%s: refused %d of %d", m.name, refused, tried)
		if tried < 50 || refused == 0 || n > 4 && 2*refused < tried {
			t.Errorf("%s: refused %d of %d", m.name, refused, tried)
		}
	}
}

// The hundredth part of a price more than a load may be worth is seen.
func TestOnePriceUpIsRefused(t *testing.T) {
	job := nest.Job{Stock: []nest.Bar{{Length: 30}}, Pieces: []nest.Piece{{Length: 15, Count: 3}, {Length: 10, Count: 5}, {Length: 6, Count: 9}}}
	const perCost = 1 << 15
	weight := perCost + 1 // of one bar
	// a half, a third and a fifth of a bar: 3/2 + 5/3 + 9/5 = 4.97 bars
	sound := &nest.Dual{Scale: 30, Prices: []int{15 * weight, 10 * weight, 6 * weight}, Over: []int{0}}
	c := &nest.Certificate{PerCost: perCost, Reached: 4*weight + weight*29/30 - 1, Floor: 5 * perCost, Tree: &nest.Proof{Leaf: sound}}
	if err := checkCertificate(job, 5, c); err != nil {
		t.Fatalf("a sound certificate is refused: %v", err)
	}
	for i := range sound.Prices {
		sound.Prices[i]++
		if err := checkCertificate(job, 5, c); err == nil {
			t.Errorf("price %d up by one is accepted", i)
		}
		sound.Prices[i]--
	}
	c.Floor = 6 * perCost // 6 bars are right, but this does not prove it
	if err := checkCertificate(job, 6, c); err == nil {
		t.Error("6 bars are accepted though only 4.97 are proven")
	}
}

// wrongs is what checkPlan says of a plan.
func wrongs(job nest.Job, r nest.Result) int {
	var quiet recorder
	checkPlan(&quiet, job, r, nil)
	return quiet.n
}

// recorder counts what a check says.
type recorder struct{ n int }

func (*recorder) Helper()                 {}
func (r *recorder) Errorf(string, ...any) { r.n++ }

// A plan with one thing wrong is refused.
func TestSpoiltPlansAreRefused(t *testing.T) {
	job := smallJob(5, false)
	sound, err := nest.Solve(context.Background(), job, nest.Options{})
	if err != nil || wrongs(job, sound) > 0 {
		t.Fatalf("%v, or the plan is not sound to begin with", err)
	}
	tests := map[string]func(r *nest.Result){
		"a piece dropped":      func(r *nest.Result) { p := &r.Patterns[0]; p.Pieces = p.Pieces[1:] },
		"a piece too many":     func(r *nest.Result) { p := &r.Patterns[0]; p.Pieces = append(p.Pieces, p.Pieces[0]) },
		"a piece a bit longer": func(r *nest.Result) { r.Patterns[0].Pieces[0]++ },
		"a bar too many":       func(r *nest.Result) { r.Patterns[0].Count++ },
		"a pattern dropped":    func(r *nest.Result) { r.Patterns = r.Patterns[1:] },
		"cost":                 func(r *nest.Result) { r.Cost-- },
		"bars":                 func(r *nest.Result) { r.Bars++ },
		"bought":               func(r *nest.Result) { r.Bought++ },
		"left":                 func(r *nest.Result) { r.Patterns[0].Left++ },
		"bound above cost":     func(r *nest.Result) { r.Bound = r.Cost + 1 },
		"proven below cost":    func(r *nest.Result) { r.Bound = r.Cost - 1 },
		"an offcut used twice": func(r *nest.Result) {
			p := r.Patterns[0]
			if p.Count--; !p.Offcut {
				panic("the first pattern is no offcut: take another seed")
			}
			r.Patterns[1] = r.Patterns[0]
		},
	}
	for name, spoil := range tests {
		r := sound
		r.Patterns = slices.Clone(sound.Patterns)
		for i, p := range r.Patterns {
			r.Patterns[i].Pieces = slices.Clone(p.Pieces)
		}
		if spoil(&r); wrongs(job, r) == 0 {
			t.Errorf("%s: accepted", name)
		}
	}
}
