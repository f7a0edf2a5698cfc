package find

import (
	"testing"
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

// The loops inside ask the guard and compare ways millions of times: neither
// may allocate.
func TestInnerLoopsDoNotAllocate(t *testing.T) {
	h, tab := warm(t)
	option := tab.rows[tab.runNumber("run")].options[0]
	keep := keeping{own: [2]int{-1, -1}}
	seen := 0
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
	} {
		if n := testing.AllocsPerRun(100, loop); n != 0 {
			t.Errorf("%s: %.0f allocations", name, n)
		}
	}
	if seen == 0 {
		t.Error("nothing was near anything: the test says little")
	}
}
