package planfile

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// bigPlan has as many parts and runs as a plan may have.
func bigPlan() string {
	var b strings.Builder
	b.WriteString("format: 1\ncase: {size: [9999, 999, 999]}\ntube: petg-16-12\nparts:\n")
	for i := range maxEntries {
		fmt.Fprintf(&b, "  p%d: {kind: flow-meter, at: [%d, 0, 0]}\n", i, i)
	}
	b.WriteString("runs:\n")
	for i := range maxEntries - 1 {
		fmt.Fprintf(&b, "  r%d: {from: p%d.out, to: p%d.in}\n", i, i, i+1)
	}
	return b.String()
}

// The largest plan there may be is read and written in a time one can wait.
func TestTheLargestPlan(t *testing.T) {
	text := bigPlan()
	started := time.Now()
	plan, src, err := Read("big.plan.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	read := time.Since(started)
	plan = plan.Clone()
	plan.Parts[5000].At[1] = 3
	got, _, err := Write(plan, src)
	if want := strings.Replace(text, "[5000, 0, 0]", "[5000, 3, 0]", 1); err != nil || string(got) != want {
		t.Errorf("one number changed: %v, %d bytes, want %d", err, len(got), len(want))
	}
	t.Logf("read in %v, read and written in %v", read, time.Since(started))
	if time.Since(started) > mostTime {
		t.Errorf("it took %v", time.Since(started))
	}
}
