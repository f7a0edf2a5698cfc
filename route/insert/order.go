package insert

import (
	"context"
	"slices"

	"tubewright/route"
	"tubewright/route/find"
)

// Report is the answer for a whole machine.
type Report struct {
	// Order is the runs in the order in which they go in; those that no order was
	// found for are in Left.
	Order []string
	Left  []string
	// In is each run's answer as it goes in, the runs before it in Order in their
	// places; of those in Left as if alone. In the plan's order.
	In []Result
	// Out is each run's answer with all the others in their places: whether it
	// comes out for service. No proof is looked for where none is found.
	Out []Result
	// First are, for each run that does not come out with all the others in, the
	// runs that must be out before it; empty where it comes out.
	First [][]string
}

// Machine finds an order of putting in.
//
// It goes backward, from the finished machine: a run that comes out with all
// that are still in is taken out, and so on. Fewer runs in place never hinder a
// piece, so a run once free stays free, and the order in which free ones are
// taken changes nothing: no other order succeeds where this one stops.
// The error is the context's.
func Machine(ctx context.Context, plan route.Plan, sol find.Solution, o Options) (Report, error) {
	return newMachine(ctx, plan, sol, o).order(ctx)
}

func (m *machine) order(ctx context.Context) (Report, error) {
	n := len(m.runs)
	r := Report{In: make([]Result, n), Out: make([]Result, n), First: make([][]string, n)}
	in := slices.Repeat([]bool{true}, n)
	has := func(k int) bool { return in[k] }
	var taken []int
	for i := range m.runs {
		r.Out[i] = m.ask(i, has)
		if ctx.Err() != nil {
			return r, ctx.Err()
		}
	}
	for again := true; again; {
		again = false
		for i := n - 1; i >= 0; i-- {
			if ctx.Err() != nil {
				return r, ctx.Err()
			}
			if !in[i] {
				continue
			}
			answer := r.Out[i]
			if answer.Verdict != Possible {
				answer = m.ask(i, has)
			}
			if answer.Verdict == Possible {
				r.In[i], in[i], again = answer, false, true
				r.First[i] = m.needs(i, r.Out[i], taken)
				taken = append(taken, i)
			}
		}
	}
	slices.Reverse(taken)
	for _, i := range taken {
		r.Order = append(r.Order, m.runs[i].name)
	}
	for i := range m.runs {
		if in[i] {
			r.Left = append(r.Left, m.runs[i].name)
			r.In[i] = m.sure(i, func(int) bool { return false })
		}
	}
	return r, ctx.Err()
}

// needs are the runs that must be out before one comes out: one that alone is
// enough, else all that were out.
func (m *machine) needs(i int, out Result, taken []int) (list []string) {
	if out.Verdict == Possible {
		return nil
	}
	for _, k := range taken {
		if m.ask(i, func(x int) bool { return x != k }).Verdict == Possible {
			return []string{m.runs[k].name}
		}
	}
	for _, k := range taken {
		list = append(list, m.runs[k].name)
	}
	return list
}
