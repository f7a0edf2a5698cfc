package find

import (
	"context"
	"errors"
	"testing"
)

// gaveUp is a halt whose context is done.
func gaveUp() *halt {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	h := &halt{ctx: ctx}
	h.halted()
	return h
}

// TestNothingHalfDoneIsRemembered: what was cut short is forgotten, and done from the
// start when it is asked for again.
func TestNothingHalfDoneIsRemembered(t *testing.T) {
	plan := demoLike()
	h, err := newScene(plan).newHunt(plan.Runs[0], request{below: anyCost})
	if err != nil {
		t.Fatal(err)
	}
	i, ok := h.drawUp(h.a.plain, h.b.plain, nil)
	if !ok {
		t.Fatal("the straight way cannot be drawn")
	}
	h.halt = gaveUp()
	if h.judge(h.a, h.a.plain) == nil || h.a.plain.judged {
		t.Error("a chain that was not looked at to the end counts as judged")
	}
	if h.sound(&i) || i.test.done {
		t.Error("an idea that was not looked at to the end counts as tried")
	}
	if h.halt = nil; h.judge(h.a, h.a.plain) != nil || !h.sound(&i) {
		t.Error("chain and idea are clear once they are looked at")
	}
}

// TestHalfToldIsToldAgain: what a run without a way lacks is not told when it was not
// measured to the end.
func TestHalfToldIsToldAgain(t *testing.T) {
	plan := demoLike()
	h, err := newScene(plan).newHunt(plan.Runs[0], request{below: anyCost})
	if err != nil {
		t.Fatal(err)
	}
	h.offer(h.a.plain, h.b.plain, Miss{}, nil)
	none := h.noWay()
	stopped := &table{halt: gaveUp()}
	if err := stopped.told(none); !errors.Is(err, none) || none.hunt == nil || len(none.Tried) > 0 {
		t.Errorf("told to the end although it was stopped: %+v", none)
	}
	if _ = new(table).told(none); none.hunt != nil {
		t.Error("not told to the end")
	}
}
