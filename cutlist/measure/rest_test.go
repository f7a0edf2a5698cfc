package measure_test

import (
	"slices"
	"testing"

	"tubewright/cutlist/measure"
	"tubewright/route"
)

func TestTheRestIsWhatNoTubeRestsOn(t *testing.T) {
	plan, ways := museum(t)
	things := measure.Things(plan, ways)
	used, rest := names(things), names(measure.Rest(plan, things))
	for _, name := range rest {
		if slices.Contains(used, name) {
			t.Errorf("%s is offered twice", name)
		}
	}
	for _, row := range []struct {
		name string
		want bool
		why  string
	}{
		{"fitting extender-10", true, "the catalogue has it and no run uses it"},
		{"port top.fill", true, "a port without a run"},
		{"fitting socket-16", false, "runs use it"},
		{"fitting socket-12", false, "the plan has no tube of 12 mm"},
		{"port pump.out", false, "a run begins there"},
		{"tube petg-12-10", false, "the plan does not name it"},
	} {
		if slices.Contains(rest, row.name) != row.want {
			t.Errorf("%s offered: %v, want %v, because %s", row.name, !row.want, row.want, row.why)
		}
	}
	plan.Runs = nil
	if all := names(measure.Rest(plan, nil)); !slices.Contains(all, "tube petg-16-12") || !slices.Contains(all, "port pump.out") {
		t.Errorf("with no run, offered are %v", all)
	}
	if got := measure.Rest(route.Plan{}, nil); len(got) != 0 {
		t.Errorf("an empty plan offers %v", names(got))
	}
}
