package planfile_test

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tubewright/route/planfile"
)

const anyFile = "any" + planfile.Ending

// A plan written and read again is the plan; written once more it is the same text.
func TestAnyPlanSurvivesWriting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := anyPlan(t)
		text, _, err := planfile.Write(plan, nil)
		if err != nil {
			t.Fatalf("Write: %v", err)
		}
		back, src, err := planfile.Read(anyFile, text)
		if err != nil {
			t.Fatalf("Read of what Write gave: %v\n%s", err, text)
		}
		if !planfile.Same(plan, back) {
			t.Fatalf("the plan came back different:\n%s", text)
		}
		if again, _, err := planfile.Write(back, nil); err != nil || !bytes.Equal(text, again) {
			t.Fatalf("written again it differs (%v):\n%s\n%s", err, text, again)
		}
		if kept, _, err := planfile.Write(back, src); err != nil || !bytes.Equal(text, kept) {
			t.Fatalf("written over itself it differs (%v):\n%s\n%s", err, text, kept)
		}
	})
}

// Any plan can be written over the file of any other, with a comment on every line.
func TestAnyPlanWrittenOverAnyOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old, _, err := planfile.Write(anyPlan(t), nil)
		if err != nil {
			t.Fatal(err)
		}
		commented := strings.ReplaceAll(string(old), "\n", " # said\n")
		_, src, err := planfile.Read(anyFile, []byte(commented))
		if err != nil {
			t.Fatalf("%v\n%s", err, commented)
		}
		plan := anyPlan(t)
		text, report, err := planfile.Write(plan, src)
		if err != nil {
			t.Fatal(err)
		}
		back, _, err := planfile.Read(anyFile, text)
		if err != nil || !planfile.Same(plan, back) {
			t.Fatalf("the plan came back different (%v):\n%s", err, text)
		}
		if strings.Contains(report.Message, "afresh: its") {
			t.Fatalf("not changed in place:\n%s\nto become\n%s", commented, text)
		}
	})
}
