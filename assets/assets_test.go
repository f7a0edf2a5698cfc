package assets_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"tubewright/assets"
)

// Every demo file is listed, and every one listed is there.
func TestDemosAreTheFiles(t *testing.T) {
	entries, err := os.ReadDir("demos")
	if err != nil {
		t.Fatal(err)
	}
	var files []string
	for _, e := range entries {
		files = append(files, strings.TrimSuffix(e.Name(), ".plan.yaml"))
	}
	if listed := slices.Sorted(slices.Values(assets.Demos())); !slices.Equal(listed, files) {
		t.Errorf("listed %v, files %v", listed, files)
	}
	for _, name := range assets.Demos() {
		if text, ok := assets.Demo(name); !ok || !strings.HasPrefix(string(text), "#") || !strings.Contains(string(text), "nvented") {
			t.Errorf("demo %s does not begin by saying that it is invented", name)
		}
	}
	if text, ok := assets.Demo("../catalogue"); ok || text != nil {
		t.Error("a way out of the folder gives a file")
	}
}

// Every starting plan is listed, says that it is invented, has no tube and
// vouches for nothing.
func TestStartsAreTheFiles(t *testing.T) {
	entries, err := os.ReadDir("starts")
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != len(assets.Starts()) {
		t.Errorf("%d files for %v", len(entries), assets.Starts())
	}
	for _, name := range assets.Starts() {
		text, ok := assets.Start(name)
		if s := string(text); !ok || !strings.HasPrefix(s, "#") || !strings.Contains(s, "invented") || strings.Contains(s, "runs:") || strings.Contains(s, "known_from") {
			t.Errorf("start %s: there %v, or it does not begin as it should", name, ok)
		}
	}
	if _, ok := assets.Start("../demos/ferry-bridge"); ok {
		t.Error("a way out of the folder gives a file")
	}
}

// The catalogue vouches for none of its numbers.
func TestCatalogueIsTypical(t *testing.T) {
	text := string(assets.Catalogue())
	for _, section := range []string{"tubes:", "fittings:", "parts:"} {
		if !strings.Contains(text, "\n"+section) {
			t.Errorf("no section %s", section)
		}
	}
	for line := range strings.Lines(text) {
		said, _, _ := strings.Cut(line, "#")
		if strings.Contains(said, "known_from: drawing") || strings.Contains(said, "known_from: measured") {
			t.Errorf("the catalogue vouches: %s", line)
		}
	}
}
