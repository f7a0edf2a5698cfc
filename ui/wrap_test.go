package ui

import (
	"slices"
	"testing"
	"unicode/utf8"
)

// tens is a type whose every letter is ten wide.
func tens(s string) float32 { return 10 * float32(utf8.RuneCountInString(s)) }

func TestWrapText(t *testing.T) {
	for _, row := range []struct {
		name, text string
		width      float32
		want       []string
	}{
		{"nothing", "", 100, []string{""}},
		{"fits", "pump to plate", 130, []string{"pump to plate"}},
		{"at a space", "pump to plate", 120, []string{"pump to", "plate"}},
		{"a word too long", "conservation", 50, []string{"conse", "rvati", "on"}},
		{"long word after a short one", "a conservation", 60, []string{"a", "conser", "vation"}},
		{"a long word at its hyphens", "pump-to-processor", 100, []string{"pump-to-", "processor"}},
		{"a hyphen in front is no break", "-conservation", 50, []string{"-cons", "ervat", "ion"}},
		{"narrower than a letter", "ab", 5, []string{"a", "b"}},
		{"no width at all", "ab", 0, []string{"a", "b"}},
		{"two paragraphs", "one\ntwo", 100, []string{"one", "two"}},
		{"not in the middle of a letter", "äöü", 20, []string{"äö", "ü"}},
	} {
		if got := wrapText(row.text, row.width, tens); !slices.Equal(got, row.want) {
			t.Errorf("%s: wrapText(%q, %v) = %q, want %q", row.name, row.text, row.width, got, row.want)
		}
	}
}

func TestShorten(t *testing.T) {
	for _, row := range []struct {
		text  string
		width float32
		want  string
	}{
		{"radiator", 80, "radiator"},
		{"radiator", 70, "radiat…"},
		{"to plate", 40, "to…"},
		{"radiator", 5, "…"},
	} {
		if got := shorten(row.text, row.width, tens); got != row.want {
			t.Errorf("shorten(%q, %v) = %q, want %q", row.text, row.width, got, row.want)
		}
	}
}
