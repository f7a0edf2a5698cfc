package ui

import (
	"slices"
	"testing"
)

func TestLineUp(t *testing.T) {
	for _, row := range []struct {
		name  string
		wides []float32
		width float32
		want  []linedUp
		rows  int
	}{
		{"nothing", nil, 100, nil, 0},
		{"all in a row", []float32{20, 30, 40}, 100, []linedUp{{0, 0}, {0, 25}, {0, 60}}, 1},
		{"the last goes under", []float32{20, 30, 41}, 100, []linedUp{{0, 0}, {0, 25}, {1, 0}}, 2},
		{"one too wide", []float32{20, 130, 20}, 100, []linedUp{{0, 0}, {1, 0}, {2, 0}}, 3},
		{"no width", []float32{20, 20}, 0, []linedUp{{0, 0}, {1, 0}}, 2},
	} {
		got, rows := lineUp(row.wides, row.width, 5)
		if !slices.Equal(got, row.want) || rows != row.rows {
			t.Errorf("%s: %v in %d rows, want %v in %d", row.name, got, rows, row.want, row.rows)
		}
	}
	wides := []float32{20, 30, 41}
	got, _ := lineUp(wides, 100, 5)
	if want := []linedUp{{0, 45}, {0, 70}, {1, 59}}; !slices.Equal(endAt(got, wides, 100), want) {
		t.Errorf("at the right: %v, want %v", got, want)
	}
}
