package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// bench is a folder with the plan of a demo in it.
func bench(t *testing.T, name string) (plan string) {
	t.Helper()
	plan = filepath.Join(t.TempDir(), name+".plan.yaml")
	if err := os.WriteFile(plan, []byte(demo(t, name)), 0o644); err != nil {
		t.Fatal(err)
	}
	return plan
}

func content(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// filled writes a survey of some rows.
func filled(t *testing.T, plan string, rows ...string) string {
	t.Helper()
	path := filepath.Join(filepath.Dir(plan), "filled.csv")
	if err := os.WriteFile(path, []byte("part,port,x_from,x,y_from,y,z_from,z,facing,thread\n"+strings.Join(rows, "\n")+"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestEmptySurvey(t *testing.T) {
	code, out, problems := tubecut(t, demo(t, "ferry-bridge"), "survey", "-")
	if code != exitFine || problems != "" {
		t.Errorf("exits with %d: %s", code, problems)
	}
	golden(t, "ferry-bridge.survey.csv", out)
}

// A survey goes into the plan's file: only the ports that were measured change,
// with everything else in the file as it was.
func TestSurveyIsTakenIntoTheFile(t *testing.T) {
	plan := bench(t, "ferry-bridge")
	before := content(t, plan)
	code, out, problems := tubecut(t, "", "survey", plan, filled(t, plan, "pump,out,right,95.4,floor,52,back,150,,"))
	if code != exitFine || problems != "" || !strings.Contains(out, "Runs that change:") {
		t.Errorf("exits with %d: %s%s", code, out, problems)
	}
	after := content(t, plan)
	if !strings.Contains(after, "known_from: measured") || content(t, plan+".before") != before {
		t.Errorf("the plan was not written, or the version before is not kept:\n%s", after)
	}
	lines := map[string]bool{}
	for line := range strings.Lines(after) {
		lines[line] = true
	}
	for line := range strings.Lines(before) {
		if !lines[line] && !strings.Contains(line, "pump") && !strings.Contains(line, "out:") {
			t.Errorf("a line that has nothing to do with it is gone: %s", line)
		}
	}
}

// A part that seems to have moved is asked about; the file stays as it is until
// it is answered.
func TestSurveyAsks(t *testing.T) {
	plan := bench(t, "ferry-bridge")
	rows := filled(t, plan, "pump,out,right,101,floor,52,back,150,,", "pump,in,right,61,floor,52,back,150,,")
	before := content(t, plan)
	code, out, _ := tubecut(t, "", "survey", plan, rows)
	if code != exitFinding || !strings.Contains(out, "ASKED pump:") || !strings.Contains(out, "stands elsewhere") || content(t, plan) != before {
		t.Errorf("exits with %d, the plan changed: %v\n%s", code, content(t, plan) != before, out)
	}
	code, out, _ = tubecut(t, "", "survey", plan, rows, "--answer", "pump=moved", "--dry-run")
	if code != exitFine || content(t, plan) != before {
		t.Errorf("a dry run exits with %d, the plan changed: %v\n%s", code, content(t, plan) != before, out)
	}
	code, out, _ = tubecut(t, "", "survey", plan, rows, "--answer", "pump=moved")
	if code != exitFine || content(t, plan) == before || !strings.Contains(out, "place and turn are changed") {
		t.Errorf("answered, it exits with %d\n%s", code, out)
	}
}

func TestSurveyRefuses(t *testing.T) {
	plan := bench(t, "ferry-bridge")
	good := filled(t, plan, "pump,out,right,95,floor,52,back,150,,")
	bad := filepath.Join(t.TempDir(), "bad.csv")
	if err := os.WriteFile(bad, []byte("part,port,x,y,z\npump,out,1,,3\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	for want, args := range map[string][]string{
		"pump.out has no y":       {"survey", plan, bad},
		"write PART=moved":        {"survey", plan, good, "--answer", "pump"},
		"has no such part":        {"survey", plan, good, "--answer", "pmup=moved"},
		"name the file instead":   {"survey", "-", good},
		"no such file":            {"survey", plan, "nowhere.csv"},
		"survey needs PLAN":       {"survey"},
		"say one of --fits":       {"made", plan, "x"},
		"there is no such run":    {"made", plan, "x", "--wrong", "kinked"},
		"no tube of it is made":   {"made", plan, "radiator-to-pump", "--fails"},
		"does not come out of":    {"made", plan, "radiator-to-pump", "--wrong", "kinked", "--blank", "600", "--from", "500"},
		"name the file instead o": {"made", "-", "x", "--wrong", "y"},
	} {
		if code, _, problems := tubecut(t, "", args...); code != exitInput || !strings.Contains(problems, want) {
			t.Errorf("%v exits with %d: %q; want %q", args, code, problems, want)
		}
	}
}

// Two tries at a tube, then it is a fact: not sawn again, and told with its history.
func TestMade(t *testing.T) {
	plan := bench(t, "conservation-scanner")
	for _, args := range [][]string{
		{"--cut", "500", "--from", "1000", "--wrong", "2 mm long", "--date", "3 May"},
		{"--fits", "--from", "600", "--date", "4 May"},
	} {
		if code, out, problems := tubecut(t, "", append([]string{"made", plan, "pump-to-processor"}, args...)...); code != exitFine {
			t.Fatalf("exits with %d: %s%s", code, out, problems)
		}
	}
	code, out, problems := tubecut(t, "", "list", plan, "--json")
	if code != exitFine {
		t.Fatalf("exits with %d: %s", code, problems)
	}
	var answer struct {
		Tubes []struct {
			Run, Way string
			Made     struct {
				Count int
				Tries []struct {
					Fits    bool
					Wrong   string
					CutFrom float64 `json:"cut_from"`
				}
			}
		}
		Bars []struct{ Pieces []struct{ Run string } }
		Sawn []struct{ Length, Left float64 }
	}
	if err := json.Unmarshal([]byte(out), &answer); err != nil {
		t.Fatal(err)
	}
	for _, tube := range answer.Tubes {
		if tube.Run == "pump-to-processor" && (tube.Way != "as made" || tube.Made.Count != 1 || len(tube.Made.Tries) != 2 || tube.Made.Tries[0].Wrong != "2 mm long") {
			t.Errorf("%+v", tube)
		}
	}
	for _, b := range answer.Bars {
		for _, p := range b.Pieces {
			if p.Run == "pump-to-processor" {
				t.Error("it is sawn again")
			}
		}
	}
	if len(answer.Sawn) != 2 || answer.Sawn[0].Length != 1000 || answer.Sawn[1].Length != 600 {
		t.Errorf("sawn %+v", answer.Sawn)
	}
	if _, words, _ := tubecut(t, "", "list", plan); !strings.Contains(words, "Sawn already") || !strings.Contains(words, "did not fit") {
		t.Errorf("the list does not tell what is sawn:\n%s", words)
	}
	if text := content(t, plan); !strings.Contains(text, "2 mm long") || strings.Contains(text, "[600,") {
		t.Errorf("the plan does not tell of it, or the offcut is still there:\n%s", text)
	}
	if code, _, problems := tubecut(t, "", "made", plan, "pump-to-processor", "--fails", "--wrong", "the pump moved"); code != exitFine {
		t.Errorf("--fails exits with %d: %s", code, problems)
	}
	if _, out, _ = tubecut(t, "", "list", plan); strings.Contains(out, "as made") {
		t.Error("a tube that fits no longer is still taken for a fact")
	}
}

func TestSheetSurveyAlone(t *testing.T) {
	dir := t.TempDir()
	const bare = "format: 1\nname: Bare\nunits: mm\ncase: {size: [300, 300, 200]}\nclear: 4\nparts:\n  pump: {at: [10, 10, 10], ports: {out: {at: [0, 0, 0], facing: +x}}}\n"
	code, out, problems := tubecut(t, bare, "sheet", "-", "--survey", "--out", dir)
	if code != exitFine || problems != "" {
		t.Fatalf("exits with %d: %s", code, problems)
	}
	for _, name := range []string{"bare-survey.pdf", "bare-survey.csv"} {
		if !strings.Contains(out, name) || content(t, filepath.Join(dir, name)) == "" {
			t.Errorf("%s is not there: %s", name, out)
		}
	}
	if files, err := os.ReadDir(dir); err != nil || len(files) != 2 {
		t.Errorf("%d files, %v; want the survey alone", len(files), err)
	}
}
