package find

import (
	"testing"

	"tubewright/route"
)

// warm is a hunt of the demo-like plan with its ideas, and a table with options.
func warm(t *testing.T) (*hunt, *table) {
	t.Helper()
	plan := demoLike()
	tab := newTable(newScene(plan))
	tab.nearMemo = make([][]int8, len(tab.rows)*len(tab.rows))
	for _, i := range tab.order {
		if err := tab.list(t.Context(), i); err != nil {
			t.Fatal(err)
		}
	}
	h := tab.rows[tab.runNumber("long")].home
	h.others = tab.reserved(0)
	return h, tab
}

func (t *table) runNumber(name string) int {
	for i, r := range t.plan.Runs {
		if r.Name == name {
			return i
		}
	}
	return -1
}

// The loops inside ask the guard, compare ways and put fittings together millions
// of times: none may allocate.
func TestInnerLoopsDoNotAllocate(t *testing.T) {
	h, tab := warm(t)
	option := tab.rows[tab.runNumber("run")].options[0]
	keep := keeping{own: [2]int{-1, -1}}
	seen, looked := 0, 0
	s := h.newStraightener() // between ports back to back, which no straight joins
	s.grasp = 100
	arm := s.bare[1]
	arm.frames[0] = route.NewFrame(s.bare[0].frames[0].Ahead(-300).Add(vec{1.3, 2.7, 3.1}), s.bare[0].frames[0].Dir.Mul(-1))
	parts := noSwap()
	parts.add(h.parts, h.parts)
	c := change{scene: h.scene, parts: &parts, runs: noSwap()}
	for name, loop := range map[string]func(){
		"clearance of a limb from the parts": func() {
			for i := range option.limbs {
				if h.against(&option.limbs[i], keep) != nil {
					seen++
				}
			}
		},
		"clearance from other runs": func() {
			if h.crowded(option.limbs) {
				seen++
			}
		},
		"two ways": func() {
			for i := range tab.rows {
				if clashes(option.limbs, tab.rows[i].options[0].limbs, h.plan.Clear) {
					seen++
				}
			}
		},
		"an idea known to be sound": func() {
			for n := range h.families {
				if h.firstClear(h.families[n], anyCost) != nil {
					seen++
				}
			}
		},
		"a straight's arm on a port": func() {
			for _, fit := range s.sides[0].kit[route.Elbow] {
				if a := s.bare[0].round(fit, 30); a.n == 1 {
					seen++
				}
			}
		},
		"handfuls that close nothing": func() {
			s.tried = 0
			for s.offsets = range 3 {
				s.shutAll(&s.bare[0], &arm)
			}
			looked += s.tried
		},
		"what moved, asked of again": func() {
			for i := range option.limbs {
				if c.sameAnswer(&ask{limb: option.limbs[i]}) {
					seen++
				}
			}
		},
	} {
		if n := testing.AllocsPerRun(100, loop); n != 0 {
			t.Errorf("%s: %.0f allocations", name, n)
		}
	}
	if seen == 0 || looked == 0 {
		t.Error("nothing was near anything, or no handful looked at: the test says little")
	}
}
