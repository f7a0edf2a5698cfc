package main

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"tubewright/assets"
)

var update = flag.Bool("update", false, "accept the output as it is now: go test ./cmd/tubecut -update")

// tubecut runs the command in this process.
func tubecut(t *testing.T, in string, args ...string) (code int, out, problems string) {
	t.Helper()
	var o, p bytes.Buffer
	code = run(context.Background(), args, strings.NewReader(in), &o, &p)
	return code, o.String(), p.String()
}

func demo(t *testing.T, name string) string {
	t.Helper()
	text, ok := assets.Demo(name)
	if !ok {
		t.Fatalf("no demo %q", name)
	}
	return string(text)
}

// golden compares output with a file under testdata.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; got\n%s\nTo accept it: go test ./cmd/tubecut -update, then read the difference.", path, got)
	}
}

func TestDemosInWords(t *testing.T) {
	wants := map[string]int{"conservation-scanner": exitFine, "ferry-bridge": exitFinding, "classroom-batch": exitFine}
	for _, name := range assets.Demos() {
		code, out, problems := tubecut(t, demo(t, name), "list", "-")
		if code != wants[name] || problems != "" {
			t.Errorf("list of %s exits with %d, want %d; standard error %q", name, code, wants[name], problems)
		}
		golden(t, name+".list.txt", out)
	}
}

func TestDemosInJSON(t *testing.T) {
	for _, name := range assets.Demos() {
		_, out, _ := tubecut(t, demo(t, name), "list", "-", "--json")
		if !json.Valid([]byte(out)) {
			t.Fatalf("list --json of %s is no JSON:\n%s", name, out)
		}
		golden(t, name+".list.json", out)
	}
}

// The museum demo is what its file says: eight runs, no draft, no error, one
// run by an offset, one by an extender, one with three bends.
func TestConservationScannerKeepsItsWord(t *testing.T) {
	_, out, _ := tubecut(t, demo(t, "conservation-scanner"), "list", "-", "--json")
	var answer struct {
		Draft bool `json:"draft"`
		Tubes []struct {
			Run        string     `json:"run"`
			Start, End []string   `json:"-"`
			RawStart   []string   `json:"start"`
			RawEnd     []string   `json:"end"`
			Bends      []struct{} `json:"bends"`
		} `json:"tubes"`
		Findings []struct{ Code, Severity string } `json:"findings"`
	}
	if err := json.Unmarshal([]byte(out), &answer); err != nil {
		t.Fatal(err)
	}
	if answer.Draft || len(answer.Tubes) != 8 {
		t.Errorf("draft %v with %d tubes, want no draft and 8", answer.Draft, len(answer.Tubes))
	}
	var offset, extender, three bool
	for _, tube := range answer.Tubes {
		chain := strings.Join(append(tube.RawStart, tube.RawEnd...), " ")
		offset = offset || strings.Contains(chain, "offset-")
		extender = extender || strings.Contains(chain, "extender-")
		three = three || len(tube.Bends) == 3
	}
	if !offset || !extender || !three {
		t.Errorf("offset %v, extender %v, three bends %v; want all of them", offset, extender, three)
	}
	for _, f := range answer.Findings {
		if f.Severity != "note" {
			t.Errorf("finding %s of severity %s, want notes only", f.Code, f.Severity)
		}
	}
}

// The ferry demo starts with four kinds of finding to settle, and is a draft.
func TestFerryBridgeHasFourKindsToSettle(t *testing.T) {
	code, out, _ := tubecut(t, demo(t, "ferry-bridge"), "check", "-", "--json")
	var findings []struct{ Code, Severity string }
	if err := json.Unmarshal([]byte(out), &findings); err != nil {
		t.Fatal(err)
	}
	kinds := map[string]bool{}
	for _, f := range findings {
		if f.Severity != "note" {
			kinds[f.Code] = true
		}
	}
	for _, want := range []string{"part-hits-part", "cannot-form", "pump-backwards", "mixed-metals"} {
		if !kinds[want] {
			t.Errorf("no finding %s", want)
		}
	}
	if code != exitFinding || len(kinds) != 4 {
		t.Errorf("exit %d with kinds %v, want 1 and four kinds", code, kinds)
	}
}

func TestSameBytesEveryTime(t *testing.T) {
	plan := demo(t, "conservation-scanner")
	_, first, _ := tubecut(t, plan, "list", "-", "--json")
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for i := range 10 {
		if i == 5 {
			runtime.GOMAXPROCS(1)
		}
		if _, again, _ := tubecut(t, plan, "list", "-", "--json"); again != first {
			t.Fatalf("run %d gives other bytes", i+2)
		}
	}
}

func TestWays(t *testing.T) {
	code, out, _ := tubecut(t, demo(t, "conservation-scanner"), "ways", "-", "card-to-capture")
	if code != exitFine {
		t.Errorf("exit %d, want 0", code)
	}
	golden(t, "card-to-capture.ways.txt", out)
	_, out, _ = tubecut(t, demo(t, "conservation-scanner"), "ways", "-", "card-to-capture", "--json")
	golden(t, "card-to-capture.ways.json", out)
}

// A run without a way is an error to settle, not a fault of the input.
func TestNoWayIsAFinding(t *testing.T) {
	plan := strings.Replace(demo(t, "conservation-scanner"),
		"sight-tube: {from: column.out, to: top.high, tube: glass-16-12}",
		"sight-tube: {from: column.out, to: top.high, tube: glass-16-12, end: [socket-16]}", 1)
	code, out, problems := tubecut(t, plan, "ways", "-", "sight-tube", "--json")
	if code != exitFinding || !strings.Contains(out, `"ways": []`) || !strings.Contains(problems, "sight-tube") {
		t.Errorf("exit %d, output %q, standard error %q; want 1, an empty list, and why", code, out, problems)
	}
}

func TestSheets(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "made", "here")
	code, out, problems := tubecut(t, demo(t, "conservation-scanner"), "sheet", "-", "--out", dir, "--paper", "letter", "--glb")
	if code != exitFine || problems != "" {
		t.Fatalf("exit %d, standard error %q", code, problems)
	}
	files := strings.Fields(out)
	if len(files) != 6 {
		t.Fatalf("files %q, want one PDF, three CSV, the answer and the machine", files)
	}
	for _, f := range files {
		if info, err := os.Stat(f); err != nil || info.Size() == 0 {
			t.Errorf("%s: %v", f, err)
		}
	}
	_, out, problems = tubecut(t, demo(t, "conservation-scanner"), "sheet", "-", "--out", dir, "--svg")
	if n := strings.Count(out, ".svg\n"); n != 11 || problems != "" {
		t.Errorf("%d SVG files (standard error %q), want four looks and seven templates:\n%s", n, problems, out)
	}
}

// What the help shows works as it stands.
func TestListHelpPipesADemo(t *testing.T) {
	if _, out, _ := tubecut(t, "", "list", "--help"); !strings.Contains(out, "tubecut demo ferry-bridge | tubecut list -") {
		t.Errorf("no pipe from a named demo in %q", out)
	}
	_, plan, _ := tubecut(t, "", "demo", "ferry-bridge")
	if _, out, _ := tubecut(t, plan, "list", "-"); !strings.Contains(out, "Tubes") {
		t.Errorf("no list of the demo but %q", out)
	}
}

// A folder that cannot be made stops the sheets with its reason.
func TestSheetsNeedAFolder(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	code, out, problems := tubecut(t, demo(t, "ferry-bridge"), "sheet", "-", "--out", filepath.Join(file, "sheets"))
	if code != exitInput || out != "" || !strings.Contains(problems, "folder") {
		t.Errorf("exit %d, output %q, standard error %q; want 2, nothing, and why", code, out, problems)
	}
}

func TestWhatCannotBeUsed(t *testing.T) {
	tests := []struct {
		name, in, want string
		args           []string
	}{
		{"no such file", "", "no-such.plan.yaml", []string{"list", "no-such.plan.yaml"}},
		{"broken plan", "format: 1\nname: x\nunits: mm\ncase: {size: [1, 2, 3]}\ntub: y\n", `standard input:5:1`, []string{"list", "-"}},
		{"no such run", demo(t, "ferry-bridge"), `"pump-to-procesor"`, []string{"ways", "-", "pump-to-procesor"}},
		{"no such paper", demo(t, "ferry-bridge"), `"a3"`, []string{"sheet", "-", "--out", t.TempDir(), "--paper", "a3"}},
		{"no such demo", "", `no demo "x"`, []string{"demo", "x"}},
		{"no such command", "", `unknown command "lsit"`, []string{"lsit"}},
		{"no argument", "", "list needs PLAN; see tubecut list --help", []string{"list"}},
		{"no run", "", "ways needs PLAN and RUN", []string{"ways", "x.plan.yaml"}},
		{"too much", "", `does not know what to do with "b"`, []string{"check", "a", "b"}},
	}
	for _, test := range tests {
		code, out, problems := tubecut(t, test.in, test.args...)
		if code != exitInput || out != "" || !strings.Contains(problems, test.want) {
			t.Errorf("%s: exit %d, output %q, standard error %q; want 2, nothing, and %q", test.name, code, out, problems, test.want)
		}
	}
}

// Stopped by hand, it says so and writes nothing.
func TestStoppedByHand(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	dir := filepath.Join(t.TempDir(), "sheets")
	for _, args := range [][]string{{"list", "-"}, {"check", "-"}, {"ways", "-", "sight-tube"}, {"sheet", "-", "--out", dir}} {
		var out, problems bytes.Buffer
		code := run(ctx, args, strings.NewReader(demo(t, "conservation-scanner")), &out, &problems)
		if code != exitStopped || out.Len() > 0 || problems.String() != "tubecut: stopped before it was done\n" {
			t.Errorf("%v: exit %d, output %q, standard error %q; want %d", args, code, out.String(), problems.String(), exitStopped)
		}
	}
	if _, err := os.Stat(dir); !os.IsNotExist(err) {
		t.Errorf("the folder was made: %v", err)
	}
}

func TestCompletion(t *testing.T) {
	plan := filepath.Join("testdata", "plans", "stock-too-few.plan.yaml")
	for want, args := range map[string][]string{
		"s1\ns2\nbent\n:4\n": {"__complete", "ways", plan, ""},
		"a4\nletter\n:4\n":   {"__complete", "sheet", plan, "--paper", ""},
		":4\n":               {"__complete", "ways", "no-such.plan.yaml", ""},
		"ferry-bridge\n:4\n": {"__complete", "demo", "f"},
	} {
		if _, out, _ := tubecut(t, "", args...); out != want {
			t.Errorf("%v completes to %q, want %q", args, out, want)
		}
	}
}

func TestHelpSchemaDemosVersion(t *testing.T) {
	for _, args := range [][]string{
		{"--help"},
		{"list", "--help"},
		{"check", "--help"},
		{"ways", "--help"},
		{"sheet", "--help"},
		{"nest", "--help"},
		{"demo", "--help"},
		{"schema", "--help"},
	} {
		if code, out, _ := tubecut(t, "", args...); code != exitFine || !strings.Contains(out, "Examples:") {
			t.Errorf("%v: exit %d, no examples in %q", args, code, out)
		}
	}
	if _, out, _ := tubecut(t, "", "schema"); !json.Valid([]byte(out)) {
		t.Error("schema is no JSON")
	}
	if _, out, _ := tubecut(t, "", "demo"); out != strings.Join(assets.Demos(), "\n")+"\n" {
		t.Errorf("demo lists %q", out)
	}
	if _, out, _ := tubecut(t, "", "--version"); !strings.Contains(out, version) {
		t.Errorf("--version prints %q", out)
	}
	if code, out, _ := tubecut(t, "", "completion", "bash"); code != exitFine || !strings.Contains(out, "tubecut") {
		t.Errorf("completion exits %d", code)
	}
}
