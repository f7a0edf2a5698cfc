package cutlist_test

import (
	"context"
	"strings"
	"testing"

	"tubewright/cutlist"
	"tubewright/route/find"
)

func TestOrderOfPuttingInOfTheWorkedPlan(t *testing.T) {
	plan := read(t, "worked.plan.yaml")
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		t.Fatal(err)
	}
	l := built(t, plan)
	if text := string(answer(t, l)); strings.Contains(text, "put_in") || l.PutSteps() != nil {
		t.Error("an order stands there that nobody asked for")
	}
	if l, err = l.WithPutIn(context.Background(), sol); err != nil {
		t.Fatal(err)
	}
	steps := l.PutSteps()
	if len(steps) != 1 || steps[0].Letter != "A" || steps[0].Run != "pump-to-plate" {
		t.Fatalf("steps %+v", steps)
	}
	text := string(answer(t, l))
	for _, want := range []string{`"put_in": {`, `"order": [`, `"verdict": "possible"`, `"unscrew": [`, `"out_first": []`} {
		if !strings.Contains(text, want) {
			t.Errorf("want %s in\n%s", want, text)
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := l.WithPutIn(ctx, sol); err == nil {
		t.Error("a stopped search gives no error")
	}
	if (cutlist.List{}).PutSteps() != nil {
		t.Error("an empty list has steps")
	}
}
