package planfile_test

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"tubewright/assets"
	"tubewright/route/planfile"
)

// FuzzRead reads any text: it never panics; every problem has a place in the
// file and a way out; a plan that could be read can be written, in place and
// afresh, and comes back.
func FuzzRead(f *testing.F) {
	seeds, err := filepath.Glob(filepath.Join(broken, "*"+planfile.Ending))
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range append(seeds, "testdata/full.plan.yaml", "testdata/by-hand.plan.yaml") {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	for _, name := range assets.Demos() {
		if text, ok := assets.Demo(name); ok {
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		plan, src, err := planfile.Read("any.plan.yaml", text)
		if err != nil {
			checkProblems(t, err)
			return
		}
		if same, _, err := planfile.Write(plan, src); err != nil || string(same) != string(text) {
			t.Errorf("an unchanged plan is written as (%v)\n%q\nwant\n%q", err, same, text)
		}
		fresh, _, err := planfile.Write(plan, nil)
		if err != nil {
			t.Fatalf("a plan that was read cannot be written: %v", err)
		}
		back, _, err := planfile.Read("any.plan.yaml", fresh)
		if err != nil || !planfile.Same(plan, back) {
			t.Errorf("written and read again it differs (%v):\n%s", err, fresh)
		}
		plan.Clear, plan.Build = plan.Clear+1, plan.Build%100+1
		if _, _, err := planfile.Write(plan, src); err != nil {
			t.Errorf("a changed plan cannot be written: %v", err)
		}
	})
}

func checkProblems(t *testing.T, err error) {
	t.Helper()
	var problems planfile.Problems
	if !errors.As(err, &problems) || len(problems) == 0 {
		t.Fatalf("the error is %T, want Problems", err)
	}
	for _, p := range problems {
		if p.Line < 1 || p.Col < 1 || p.What == "" || p.Fix == "" {
			t.Errorf("a problem lacks something: %#v", p)
		}
	}
}
