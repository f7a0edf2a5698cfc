package find

import "testing"

func TestChancesAreNeverWrittenAsCertain(t *testing.T) {
	for _, tt := range []struct {
		chance float64
		want   string
	}{{0.923, "92 in 100"}, {0.9985, "99 in 100"}, {1, "100 in 100"}, {0.001, "1 in 100"}, {0, "0 in 100"}} {
		if got := InHundred(tt.chance); got != tt.want {
			t.Errorf("%v is written %q, want %q", tt.chance, got, tt.want)
		}
	}
}
