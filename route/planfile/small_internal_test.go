package planfile

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	tests := []struct {
		name  string
		known []string
		want  string
	}{
		{"cleer", []string{"case", "clear"}, "clear"},
		{"Clear", []string{"clean", "clear"}, "clear"},
		{"soket-16", []string{"socket-15", "socket-16"}, "socket-16"},
		{"pmup", []string{"plate", "pump"}, "pump"},
		{"colour", []string{"kind", "at", "turn"}, ""},
		{"a", []string{"b"}, ""},
		{"", []string{"a"}, ""},
		{"ab", []string{"abc", "abd"}, ""},
		{"abc", []string{"abd", "abe"}, "abd"},
		{"длина", []string{"длинна"}, "длинна"},
	}
	for _, tt := range tests {
		if got := nearest(tt.name, tt.known); got != tt.want {
			t.Errorf("nearest(%q, %q) = %q, want %q", tt.name, tt.known, got, tt.want)
		}
	}
}

// slowDistance tries every way to begin, plainly.
func slowDistance(a, b string) int {
	switch {
	case a == "":
		return len(b)
	case b == "":
		return len(a)
	}
	best := min(slowDistance(a[1:], b)+1, slowDistance(a, b[1:])+1, slowDistance(a[1:], b[1:])+differ(rune(a[0]), rune(b[0])))
	if len(a) > 1 && len(b) > 1 && a[0] == b[1] && a[1] == b[0] {
		best = min(best, slowDistance(a[2:], b[2:])+1)
	}
	return best
}

func TestDistanceIsTheSlowOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.StringMatching(`[ab]{0,5}`).Draw(t, "a"), rapid.StringMatching(`[abc]{0,5}`).Draw(t, "b")
		if got, want := distance([]rune(a), []rune(b), 99), slowDistance(a, b); got != want {
			t.Fatalf("distance(%q, %q) = %d, want %d", a, b, got, want)
		}
	})
}

func TestFigures(t *testing.T) {
	third := 1.0 / 3
	tests := []struct {
		v, factor float64
		want      string
	}{
		{0, 1, "0"},
		{math.Copysign(0, -1), 1, "0"},
		{12.5, 1, "12.5"},
		{0.1 + 0.2, 1, "0.3"},
		{-1e-12, 1, "0"},
		{1e6, 1, "1000000"},
		{31.242, 25.4, "1.23"},
		{25.4, 25.4, "1"},
		{third, 1, "0.3333333333333333"},
		{third, 25.4, "0.01312336"},
		{1e6 / 7, 25.4, "5624.29696288"},
		{1000 * third, 25.4, "13.12335958"},
	}
	for _, tt := range tests {
		if got := figures(tt.v, tt.factor); got != tt.want {
			t.Errorf("figures(%v, %v) = %s, want %s", tt.v, tt.factor, got, tt.want)
		}
	}
}

// A number written and read is the number; written again it is the same text.
func TestFiguresComeBack(t *testing.T) {
	for _, v := range []float64{26759.270032254513, 25.4 * 1053.514568199} { // fell either side of asGoodAsExact
		first := figures(v, 25.4)
		back, err := strconv.ParseFloat(first, 64)
		if again := figures(back*25.4, 25.4); err != nil || again != first {
			t.Errorf("figures(%v, 25.4) = %s, and then %s (%v)", v, first, again, err)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-limit, limit).Draw(t, "v")
		for _, factor := range []float64{1, 25.4} {
			text := figures(v, factor)
			back, err := strconv.ParseFloat(text, 64)
			if err != nil || !alike(back*factor, v) || !decimal.MatchString(text) {
				t.Fatalf("figures(%v, %v) = %s, which is %v (%v)", v, factor, text, back*factor, err)
			}
			if again := figures(back*factor, factor); again != text {
				t.Fatalf("figures(%v, %v) = %s, and then %s", v, factor, text, again)
			}
		}
	})
}

func TestQuotedTextIsReadAsItself(t *testing.T) {
	for _, text := range []string{"G1/4", "plain words", "yes", "No", "null", "~", "12", "1e3", "0x1f", "2024-01-02", "a: b", "a #b", "#b", "-", "- a", "[a]", "{a}", "a,b", `it's`, `a "b"`, `back\slash`, "ø 12°", "<<", "=", "!a", "&a", "*a", "%a", "@a", "`a", "true", "é", "…", ".5", "1.2.3", "petg-16-12", "G1/4 (BSPP)", ""} {
		for _, set := range []string{"%s", "[%s]", "{k: %s}", "{%s: v}"} {
			root, err := decodeOne(strings.Replace(set, "%s", quoted(text), 1))
			if err != nil {
				t.Errorf("quoted(%q) = %s in %q: %v", text, quoted(text), set, err)
				continue
			}
			n := root
			if len(n.Content) > 0 {
				n = n.Content[len(n.Content)-1]
			}
			if strings.HasSuffix(set, ": v}") {
				n = root.Content[0]
			}
			if n.Value != text || n.ShortTag() != "!!str" {
				t.Errorf("quoted(%q) = %s in %q is read as %q, %s", text, quoted(text), set, n.Value, n.ShortTag())
			}
		}
	}
}

func TestLinesCountAsYAMLDoes(t *testing.T) {
	l := newLines("a\nb\r\nc\rd\u0085e\u2028f\n")
	for i, want := range []string{"a", "b", "c", "d", "e", "f", ""} {
		if got := l.line(i + 1); got != want {
			t.Errorf("line %d is %q, want %q", i+1, got, want)
		}
	}
	if got := l.line(0) + l.line(8); got != "" {
		t.Errorf("lines beyond the text are %q", got)
	}
	text := "é: [ü, x]\n  y"
	l = newLines(text)
	for at := range text {
		if line, col := l.place(at); l.offset(line, col) != at {
			t.Errorf("byte %d is at %d:%d, which is byte %d", at, line, col, l.offset(line, col))
		}
	}
}

func TestExcerptFitsATerminal(t *testing.T) {
	long := strings.Repeat("0123456789", 30)
	l := newLines("a\tb\x1b[31m\u202e\n" + long)
	if got, want := l.excerpt(1, 1), "a b\uFFFD[31m\uFFFD"; got != want {
		t.Errorf("excerpt = %q, want %q", got, want)
	}
	for _, col := range []int{1, 50, 150, 300, 9999} {
		got := []rune(l.excerpt(2, col))
		if len(got) > excerptWidth+2 {
			t.Errorf("the excerpt at column %d has %d characters", col, len(got))
		}
	}
	if got := l.excerpt(2, 150); !strings.HasPrefix(got, "…") || !strings.HasSuffix(got, "…") || !strings.Contains(got, long[90:150]) {
		t.Errorf("the excerpt at column 150 is %q", got)
	}
}

func TestProblemsAreOrderedAndBounded(t *testing.T) {
	var ps Problems
	for i := range 3 * maxProblems {
		ps = append(ps, Problem{File: "f", Line: 3*maxProblems - i, Col: 1, What: "w", Fix: "x"})
	}
	ps = append(ps, ps[0])
	got := ordered(ps)
	if len(got) != maxProblems || got[0].Line != 1 || got[maxProblems-2].Line != maxProblems-1 {
		t.Fatalf("%d problems, from line %d", len(got), got[0].Line)
	}
	if want := fmt.Sprint(2*maxProblems+1, " more problems from here on"); got[maxProblems-1].What != want {
		t.Errorf("the last problem is %q, want %q", got[maxProblems-1].What, want)
	}
}

func TestNormal(t *testing.T) {
	if _, ok := normal(mgl64.Vec3{0, 1e-9, 0}); ok {
		t.Error("a vector of no length has a direction")
	}
	once, _ := normal(mgl64.Vec3{3, -4, 0})
	if twice, _ := normal(once); once != twice || !alike(once.Len(), 1) {
		t.Errorf("normal gives %v, and then %v", once, twice)
	}
}
