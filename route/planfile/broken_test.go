package planfile_test

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tubewright/route/planfile"
)

// broken is where the plans with one mistake each lie; other packages use them too.
const broken = "../../testdata/broken"

// Each broken plan is told what its .txt holds, word for word. To accept what is
// told now: go test ./route/planfile -update, then read the diff.
func TestBrokenPlans(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(broken, "*"+planfile.Ending))
	if err != nil || len(files) < 20 {
		t.Fatalf("%d broken plans (%v), want twenty and more", len(files), err)
	}
	for _, file := range files {
		golden := strings.TrimSuffix(file, planfile.Ending) + ".txt"
		got := toldOf(t, file) + "\n"
		if flag.Lookup("update").Value.String() == "true" {
			if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if want, err := os.ReadFile(golden); err != nil || string(want) != got {
			t.Errorf("%s is told (%v):\n%s\nwant:\n%s\nTo accept: go test ./route/planfile -update", filepath.Base(file), err, got, want)
		}
	}
}

// toldOf reads a broken plan under its bare name and checks what holds for all
// problems: a place in the file, in order, with a way out.
func toldOf(t *testing.T, file string) string {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	plan, _, err := planfile.Read(filepath.Base(file), data)
	var problems planfile.Problems
	if !errors.As(err, &problems) || len(problems) == 0 || plan.Runs != nil {
		t.Fatalf("Read(%s) = %v; want Problems and no plan", file, err)
	}
	last := planfile.Problem{}
	for _, p := range problems {
		if p.Line < 1 || p.Col < 1 || p.What == "" || p.Fix == "" {
			t.Errorf("%s: the problem lacks something: %#v", file, p)
		}
		if p.Line < last.Line || p.Line == last.Line && p.Col < last.Col {
			t.Errorf("%s: line %d:%d is told after %d:%d", file, p.Line, p.Col, last.Line, last.Col)
		}
		last = p
	}
	return problems.Error()
}
