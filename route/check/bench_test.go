package check_test

import (
	"fmt"
	"testing"

	"tubewright/route"
	"tubewright/route/check"
)

// grid is a plan as large as the demo: eight runs, twenty parts.
func grid() *scene {
	s := sound()
	for k := 1; k < 4; k++ {
		up := vec{0, 0, 200 * float64(k)}
		for i := range 2 {
			p := s.plan.Parts[i]
			p.Name, p.At = fmt.Sprint(p.Name, k), up
			s.add(p)
		}
		for i := range 2 {
			run := s.plan.Runs[i]
			var corners []vec
			for _, c := range s.corners[i] {
				corners = append(corners, c.Add(up))
			}
			from, to := run.From, run.To
			s.run(fmt.Sprint(run.Name, k), fmt.Sprint(from.Part, k, ".", from.Port), fmt.Sprint(to.Part, k, ".", to.Port), corners...)
		}
	}
	for k := range 12 {
		z := 60 * float64(k)
		s.add(route.Part{Name: fmt.Sprint("card", k), Solids: append(box(vec{300, 10, z}, vec{420, 60, z + 40}), box(vec{300, 60, z}, vec{420, 70, z + 20})...)})
	}
	s.plan.Case[2] = 900
	return s
}

func BenchmarkFindings(b *testing.B) {
	s := grid()
	sol := s.solution(b)
	b.ReportAllocs()
	for b.Loop() {
		check.Findings(s.plan, sol)
	}
}
