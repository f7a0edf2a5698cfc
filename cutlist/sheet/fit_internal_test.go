package sheet

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tubewright/cutlist/draw"
)

// Breaking a text loses nothing but spaces, and every line fits, unless one
// letter is wider than the line.
func TestWrappedKeepsEveryLetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-zЖ0-9 .\-_/]{0,80}`).Draw(t, "text")
		width := rapid.Float64Range(3, 60).Draw(t, "width")
		lines := wrapped(text, 3, false, width, 1000)
		bare := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got := strings.Join(lines, ""); bare(got) != bare(text) {
			t.Fatalf("%q became %q", text, lines)
		}
		for _, line := range lines {
			if w := draw.TextWidth(line, 3, false); w > width && len([]rune(line)) > 1 {
				t.Fatalf("the line %q is %.2f wide, room is %.2f", line, w, width)
			}
		}
	})
}

func TestWrappedBreaksWhereANameMay(t *testing.T) {
	tests := []struct {
		text  string
		width float64
		most  int
		want  string
	}{
		{"pump to plate", 12, 9, "pump to|plate"},
		{"pump-to-plate", 12, 9, "pump-|to-plate"},
		{"length 273.3", 9, 9, "length|273.3"},
		{"insertion", 7, 9, "inser|tion"},
		{"", 10, 9, ""},
		{"one two three four five", 9, 2, "one|two…"},
	}
	for _, tt := range tests {
		got := strings.Join(wrapped(tt.text, 3, false, tt.width, tt.most), "|")
		if got != tt.want {
			t.Errorf("wrapped(%q, %v wide) = %q, want %q", tt.text, tt.width, got, tt.want)
		}
	}
}

func TestShortened(t *testing.T) {
	if got := shortened("pump", 3, false, 100); got != "pump" {
		t.Errorf("a text that fits became %q", got)
	}
	if got := shortened("pump to plate", 3, false, 12); got != "pump t…" && got != "pump to…" && got != "pump…" {
		t.Errorf("shortened to %q", got)
	}
	if got := shortened("pump", 3, false, 0.1); got != "" {
		t.Errorf("no room gave %q", got)
	}
}

// Places moved apart keep their order and their gap and stay inside.
func TestApart(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 0))
		at := make([]float64, 1+r.IntN(20))
		x := 0.0
		for i := range at {
			x += r.Float64() * 8
			at[i] = math.Min(x, 100)
		}
		got := apart(at, 4, 0, 100)
		for i := range got {
			if got[i] < -1e-9 || got[i] > 100+1e-9 || i > 0 && got[i]-got[i-1] < 4-1e-9 {
				t.Fatalf("seed %d: %v moved to %v", seed, at, got)
			}
		}
	}
	if got := apart([]float64{10, 20, 30}, 4, 0, 100); got[0] != 10 || got[1] != 20 || got[2] != 30 {
		t.Errorf("places far enough apart moved to %v", got)
	}
}

func TestRoundScale(t *testing.T) {
	tests := []struct {
		fit, want float64
		said      string
	}{
		{2, 1, "scale 1 : 1"}, {0.7, 0.5 / 0.75, "scale 1 : 1.5"}, {0.21, 0.2, "scale 1 : 5"}, {0.2, 0.2, "scale 1 : 5"}, {0.001, 0.001, "not to scale"},
	}
	for _, tt := range tests {
		if got, said := roundScale(tt.fit); math.Abs(got-tt.want) > 1e-12 || said != tt.said {
			t.Errorf("roundScale(%v) = %v, %q; want %v, %q", tt.fit, got, said, tt.want, tt.said)
		}
	}
}

// The hull is checked by asking each point whether it lies inside.
func TestHullHoldsItsPoints(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 1))
		points := make([]draw.Point, 3+r.IntN(30))
		for i := range points {
			points[i] = draw.Point{X: r.Float64() * 10, Y: r.Float64() * 10}
		}
		h := hull(points)
		var middle draw.Point
		for _, p := range points {
			middle = middle.Plus(p.Times(1 / float64(len(points))))
		}
		for _, p := range points {
			if q := p.Plus(middle.Minus(p).Times(1e-9)); !inside(h, q) {
				t.Fatalf("seed %d: %v lies outside the hull of its own points", seed, p)
			}
			if q := middle.Plus(p.Minus(middle).Times(40)); inside(h, q) && math.Hypot(p.X-middle.X, p.Y-middle.Y) > 1 {
				t.Fatalf("seed %d: %v far off lies inside", seed, q)
			}
		}
	}
	if inside(hull([]draw.Point{{X: 1}, {X: 2}}), draw.Point{X: 1.5}) {
		t.Error("a line has an inside")
	}
}

func TestMoneyAndProof(t *testing.T) {
	if got := money(7.4); got != "7.40" {
		t.Errorf("money(7.4) = %q", got)
	}
	if got := trimmed(1.50); got != "1.5" {
		t.Errorf("trimmed(1.5) = %q", got)
	}
}
