package main

import (
	"bytes"
	"context"
	"strings"
	"testing"
)

// The ferry demo has a drawn path that cannot be formed, memory in a fan and two
// runs at a pump the wrong way round: each gets a way out that was tried.
func TestCheckWithOffers(t *testing.T) {
	code, out, problems := tubecut(t, demo(t, "ferry-bridge"), "check", "-", "--offers")
	if code != exitFinding || !strings.Contains(problems, "looking for ways out, 1 of 5: The drawn path") {
		t.Errorf("exit %d, standard error %q", code, problems)
	}
	for _, s := range []string{
		"Tried, and it helps: Hand run card-to-radiator back",
		"Tried, and it helps: Move fan-2 4 mm in +z, if it can be fastened there. It settles another error with it.",
		"Tried, and it helps: Swap the runs on pump.in and pump.out.",
		"Or, tried too: ",
	} {
		if !strings.Contains(out, s) {
			t.Errorf("does not say %q:\n%s", s, out)
		}
	}
	_, out, _ = tubecut(t, demo(t, "ferry-bridge"), "check", "-", "--offers", "--json")
	if !strings.Contains(out, `"change": "swap-ports"`) {
		t.Errorf("the JSON lacks the offers:\n%s", out)
	}
}

func TestOffersCanBeStopped(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	var out bytes.Buffer
	stop := &stopper{cancel: cancel}
	code := run(ctx, []string{"check", "-", "--offers"}, strings.NewReader(demo(t, "ferry-bridge")), &out, stop)
	if code != exitStopped || out.Len() > 0 || !strings.Contains(stop.String(), "stopped before it was done") {
		t.Errorf("exit %d, printed %q, standard error %q", code, out.String(), stop.String())
	}
}

// stopper is a standard error that presses Ctrl+C at the first word.
type stopper struct {
	bytes.Buffer
	cancel func()
}

func (s *stopper) Write(p []byte) (int, error) {
	s.cancel()
	return s.Buffer.Write(p)
}
