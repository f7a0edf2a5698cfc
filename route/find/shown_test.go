package find

import (
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/route"
)

// wayOf is a way with so many bends, all of a turn, and fittings.
func wayOf(name string, bendCount int, turn, long, cost float64, fittings int) *option {
	w := Way{Name: name, Cost: cost}
	w.Formed.Developed = long
	w.Formed.Corners = make([]vec, bendCount+2)
	for i := range w.Formed.Corners {
		w.Formed.Corners[i] = v(float64(i)*10, 0, 0)
	}
	for range bendCount {
		w.Formed.Bends = append(w.Formed.Bends, bends.Bend{Turn: turn})
	}
	w.Start.Bodies = append(w.Start.Bodies, make([]route.Body, fittings)...)
	return &option{way: w}
}

func TestShownLeavesOutWhatIsBettered(t *testing.T) {
	tab := &table{rows: []row{{chosen: 0}}}
	list := []*option{
		wayOf("first", 2, 90, 300, 400, 2),
		wayOf("two more bends for nothing", 4, 90, 320, 500, 2),
		wayOf("shorter", 4, 90, 250, 510, 2),
		wayOf("odd and shorter by a hair", 2, 70, 297, 520, 2),
		wayOf("straight", 0, 0, 100, 600, 3),
		wayOf("straight, at any price", 0, 0, 90, 990, 3),
		wayOf("straight, with four fittings more", 0, 0, 80, 900, 6),
		wayOf("far dearer", 1, 90, 70, 1100, 2),
	}
	got, at := tab.shown(0, list, 0)
	var names []string
	for _, o := range got {
		names = append(names, o.way.Name)
	}
	if want := "first; shorter; straight; straight, at any price"; strings.Join(names, "; ") != want || at != 0 {
		t.Errorf("shown are %q, chosen %d, want %q", strings.Join(names, "; "), at, want)
	}
	if got, at := tab.shown(0, list, 7); got[at].way.Name != "far dearer" {
		t.Errorf("the chosen way is left out: %q stands in its place", got[at].way.Name)
	}
}
