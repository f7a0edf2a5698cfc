package insert_test

import (
	"testing"

	"tubewright/route/check"
	"tubewright/route/insert"
)

func TestFindingsOfPuttingIn(t *testing.T) {
	plan, sol := stacked().solve(t)
	list := machineOf(t, plan, sol, free).Findings()
	if len(list) != 2 || list[0].Code != check.ServiceBlocked || list[0].Severity != check.Note || !told(list[0].What, "run r: s must come out first") ||
		list[1].Code != check.InOrderOnly || list[1].Severity != check.Note || !told(list[1].What, "this one goes: r, s.") {
		t.Errorf("one behind the other: %+v", list)
	}
	plan, sol = facing(160).holed(70, 20, 18).solve(t)
	list = machineOf(t, plan, sol, free).Findings()
	if len(list) != 1 || list[0].Code != check.CannotBePutIn || list[0].Severity != check.Error || list[0].Measure >= 0 || !told(list[0].Fix, "move what is in the way") {
		t.Errorf("through a hole: %+v", list)
	}
	plan, sol = facing(120).solve(t)
	list = machineOf(t, plan, sol, insert.Options{Thread: 5}).Findings()
	if len(list) != 1 || list[0].Measure != -4 || !told(list[0].Fix, "ports do not face each other") {
		t.Errorf("with threads: %+v", list)
	}
	plan, sol = facing(120).solve(t)
	if list = machineOf(t, plan, sol, free).Findings(); len(list) != 0 {
		t.Errorf("between open faces: %+v", list)
	}
}
