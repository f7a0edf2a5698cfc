package sheet_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"tubewright/cutlist/sheet"
)

func TestFileName(t *testing.T) {
	tests := []struct{ name, want string }{
		{"Conservation scanner", "conservation-scanner"},
		{"../../etc/passwd", "etc-passwd"},
		{`C:\Windows\x`, "c-windows-x"},
		{"/", "plan"},
		{"", "plan"},
		{"...", "plan"},
		{"CON", "plan-con"},
		{"lpt1", "plan-lpt1"},
		{"com", "com"},
		{"aux.pdf", "aux-pdf"},
		{"Ωμέγα № 7", "ωμέγα-7"},
		{"-rf *", "rf"},
		{"a\x00b\nc", "a-b-c"},
		{strings.Repeat("long ", 60), strings.TrimSuffix(strings.Repeat("long-", 16), "-")},
	}
	for _, tt := range tests {
		if got := sheet.FileName(tt.name); got != tt.want {
			t.Errorf("FileName(%q) = %q, want %q", tt.name, got, tt.want)
		}
	}
}

func TestFileNameIsSafeForAnyName(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.String().Draw(t, "name")
		got := sheet.FileName(name)
		if got == "" || len(got) > 85 || !utf8.ValidString(got) || strings.ContainsAny(got, "/\\:*?\"<>|. \x00") || got[0] == '-' || filepath.Base(got) != got {
			t.Fatalf("FileName(%q) = %q", name, got)
		}
	})
}

func TestWriteAll(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "sheets")
	l := list(t, smallPlan())
	l.Plan.Name = "../Conservation scanner"
	paths, err := sheet.WriteAll(dir, l, sheet.Options{GLB: true})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"conservation-scanner.pdf", "conservation-scanner-cuts.csv", "conservation-scanner-bars.csv",
		"conservation-scanner-buying.csv", "conservation-scanner.json", "conservation-scanner.glb",
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != len(want) {
		t.Fatalf("the folder holds %v (%v), want %d files and nothing beside them", entries, err, len(want))
	}
	for i, name := range want {
		if paths[i] != filepath.Join(dir, name) {
			t.Errorf("path %d is %s, want %s in %s", i, paths[i], name, dir)
		}
	}
	var pdf bytes.Buffer
	if err := sheet.PDF(&pdf, l, sheet.Options{}); err != nil {
		t.Fatal(err)
	}
	if got, err := os.ReadFile(paths[0]); err != nil || !bytes.Equal(got, pdf.Bytes()) {
		t.Errorf("the PDF in the folder is not the one PDF writes (%v)", err)
	}
	answer, err := l.JSON()
	if err != nil {
		t.Fatal(err)
	}
	if got, err := os.ReadFile(paths[4]); err != nil || !bytes.Equal(got, answer) {
		t.Errorf("the answer in the folder is not the list's (%v)", err)
	}
}

// Asked for SVG, the folder holds each look and each template too, the same
// bytes every time.
func TestWriteAllWithSVG(t *testing.T) {
	l := list(t, smallPlan())
	want := []string{"look-side", "look-above", "look-front", "look-parallel"}
	for _, tube := range l.Tubes {
		for n := range sheet.TemplateCount(tube) {
			want = append(want, fmt.Sprintf("template-%s-%d", tube.Letter, n+1))
		}
	}
	if len(want) < 7 {
		t.Fatalf("the plan has only %v", want)
	}
	var before [][]byte
	for range 2 {
		paths, err := sheet.WriteAll(t.TempDir(), l, sheet.Options{SVG: true})
		if err != nil {
			t.Fatal(err)
		}
		if len(paths) <= len(want) {
			t.Fatalf("wrote %v, want %v among them", paths, want)
		}
		paths = paths[len(paths)-len(want):] // the SVGs come last
		var all [][]byte
		for i, name := range want {
			if got := filepath.Base(paths[i]); got != "conservation-scanner-test-"+name+".svg" {
				t.Errorf("file %d is %s, want %s", i, got, name)
			}
			text, err := os.ReadFile(paths[i])
			if err != nil || len(svgPaths(t, text)) < 10 {
				t.Errorf("%s holds no picture (%v)", paths[i], err)
			}
			all = append(all, text)
		}
		for i := range before {
			if !bytes.Equal(before[i], all[i]) {
				t.Errorf("%s has other bytes the second time", want[i])
			}
		}
		before = all
	}
}

// A file that cannot be put in its place leaves no half-written one behind.
func TestWriteAllLeavesNothingHalfDone(t *testing.T) {
	dir := t.TempDir()
	l := list(t, smallPlan())
	blocked := filepath.Join(dir, sheet.FileName(l.Plan.Name)+"-cuts.csv")
	if err := os.MkdirAll(filepath.Join(blocked, "in the way"), 0o755); err != nil {
		t.Fatal(err)
	}
	paths, err := sheet.WriteAll(dir, l, sheet.Options{})
	if err == nil || !strings.Contains(err.Error(), blocked) {
		t.Errorf("got %v, want an error that names %s", err, blocked)
	}
	if len(paths) != 1 {
		t.Errorf("written %v, want the PDF only", paths)
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 2 {
		t.Errorf("the folder holds %v (%v), want the PDF and the folder in the way", entries, err)
	}
}

func TestWriteAllWithoutAFolder(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := sheet.WriteAll(filepath.Join(file, "x"), list(t, smallPlan()), sheet.Options{}); err == nil {
		t.Error("no error although the folder cannot be made")
	}
}
