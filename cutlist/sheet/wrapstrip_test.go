package sheet_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
	"tubewright/route"
)

// bendsOf is the arcs of a formed tube.
func bendsOf(f bends.Formed) (arcs []bends.Piece) {
	for _, p := range f.Pieces() {
		if p.Radius > 0 {
			arcs = append(arcs, p)
		}
	}
	return arcs
}

// markedAt is where the mark of a bend must stand on its strip, mm to the right
// of the start line, worked out in space: looking from outside at the tube with
// end B up, right is the travel crossed with the way out. The line of a bend runs
// along the inside of it, which points from the tube to the bend's centre.
func markedAt(before, bend bends.Piece, od float64) float64 {
	travel := bend.V
	out := bend.U.Mul(-1)
	// The way to the centre of the bend before, where its arc ends.
	s, c := math.Sincos(before.Turn * math.Pi / 180)
	start := before.U.Mul(c).Add(before.V.Mul(s)).Mul(-1)
	right := travel.Cross(start)
	turn := math.Atan2(out.Dot(right), out.Dot(start))
	return math.Mod(turn*od/2+math.Pi*od, math.Pi*od)
}

// strip is a wrap strip found on a page by its caption.
type strip struct {
	caption string
	at      draw.Point
	lines   []float64 // heavy upright lines, mm from the caption's left
}

func stripsOf(p draw.Drawing) (all []strip) {
	for _, it := range p.Items {
		switch it := it.(type) {
		case draw.Text:
			if strings.Contains(it.Text, ", bend ") && strings.Contains(it.Text, " to ") && it.Size < 2.5 {
				all = append(all, strip{caption: it.Text, at: it.At})
			}
		case draw.Line:
			if n := len(all) - 1; n >= 0 && it.Stroke.Width == 0.5 && len(it.Points) == 2 && math.Abs(it.Points[0].X-it.Points[1].X) < 1e-6 {
				all[n].lines = append(all[n].lines, it.Points[0].X-all[n].at.X)
			}
		}
	}
	return all
}

// Every roll has its strip: as long as the tube is round, marked where the bends
// stand in space, with its words.
func TestWrapStripsGoRoundTheTube(t *testing.T) {
	counted := 0
	for name, l := range everyList(t) {
		var found []strip
		words := map[string]int{}
		for _, p := range sheet.Pages(l, sheet.Options{}) {
			if all := stripsOf(p); strings.Contains(run([]draw.Drawing{p}), "Wrapstrips") && len(all) > 0 {
				found = append(found, all...)
				for _, x := range texts(p) {
					words[x.text]++
				}
			}
		}
		n := 0
		for _, tube := range jigs(l) {
			arcs, od := bendsOf(tube.Way.Formed), tube.Way.Formed.Tube.OD
			for i := 1; i < len(arcs); i++ {
				roll := tube.Bench.Bends[i].Roll
				if math.Abs(roll) < 0.05 {
					continue
				}
				if n >= len(found) {
					t.Fatalf("%s: %d strips, and more rolls", name, len(found))
				}
				s := found[n]
				n++
				if want := fmt.Sprintf("%s, bend %d to %d", tube.Letter, i, i+1); !strings.HasPrefix(s.caption, want) {
					t.Errorf("%s: strip %d is called %q, want %q", name, n, s.caption, want)
				}
				around, mark := math.Pi*od, markedAt(arcs[i-1], arcs[i], od)
				if len(s.lines) != 3 || math.Abs(s.lines[0]) > 1e-6 || math.Abs(s.lines[1]-around) > 1e-6 || math.Abs(s.lines[2]-mark) > 0.01 {
					t.Errorf("%s, %s (roll %v): lines at %.3f, want 0, %.3f = π × %v, and %.3f", name, s.caption, roll, s.lines, around, od, mark)
				}
				for _, want := range []string{l.Plan.Units.TextUnit(math.Abs(tube.Bench.Bends[i].Wrap)), fmt.Sprintf("bend %d", i), fmt.Sprintf("bend %d", i+1), rollText(roll)} {
					if words[want] == 0 {
						t.Errorf("%s, %s: no strip says %q", name, s.caption, want)
					}
				}
				counted++
			}
		}
		if n != len(found) {
			t.Errorf("%s: %d strips for %d rolls", name, len(found), n)
		}
	}
	if counted < 50 {
		t.Errorf("only %d strips", counted)
	}
}

func rollText(roll float64) string {
	if roll > 0 {
		return "+" + route.Degrees(roll)
	}
	return route.Degrees(roll)
}

// A tube too thick for a strip across the paper is told what to measure.
func TestTooLongAWrapStripIsSaid(t *testing.T) {
	l := list(t, smallPlan())
	tubes := append([]cutlist.Tube(nil), l.Tubes...)
	l.Tubes = tubes
	for i := range tubes {
		tubes[i].Way.Formed.Tube.OD = 70
	}
	if all := run(sheet.Pages(l, sheet.Options{})); !strings.Contains(all, "thestripislongerthanthispaperiswide") {
		t.Error("nothing is said of strips that are too long")
	}
}
