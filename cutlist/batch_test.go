package cutlist_test

import (
	"math"
	"slices"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
)

// formedTube is a tube through corners, its sockets giving 0.3 mm and 1° each.
func formedTube(t *testing.T, letter, run string, corners ...mgl64.Vec3) cutlist.Tube {
	t.Helper()
	spec := route.Tube{Name: "petg", Tube: bends.Tube{OD: 16, ID: 12, Radius: 32, StraightEnd: 10, StraightBetween: 5}}
	f, err := bends.Form(spec.Tube, bends.Path{Corners: corners})
	if err != nil {
		t.Fatal(err)
	}
	laid := route.Laid{Socket: route.Fitting{Give: route.Give{Sideways: 0.3, Degrees: 1}}}
	e := bends.Ends{SeatGap: [2]float64{0.5, 0.5}, Play: [2]float64{3, 3}}
	return cutlist.Tube{
		Letter: letter, Run: run, Way: find.Way{Run: run, Tube: spec, Formed: f, Ends: e, Start: laid, End: laid},
		Cut: f.Cut(e, 2), Bench: f.Bench(e),
	}
}

type vec3 = mgl64.Vec3

// crank is a tube of two bends whose second leaves its plane.
func crank(sign float64) []vec3 {
	return []vec3{{0, 0, 0}, {120, 0, 0}, {120, 150, 0}, {120, 150, 140 * sign}}
}

// backwards lists corners from the other end.
func backwards(c []vec3) []vec3 {
	c = slices.Clone(c)
	slices.Reverse(c)
	return c
}

// elsewhere turns and shifts corners: the same tube in another place.
func elsewhere(c []vec3) []vec3 {
	turn := route.Turned(vec3{20, 130, -75})
	out := make([]vec3, len(c))
	for i, p := range c {
		out[i] = turn.Mul3x1(p).Add(vec3{5, -6, 7})
	}
	return out
}

func TestTubesOfOneShapeShareAJig(t *testing.T) {
	flat := []vec3{{0, 0, 0}, {100, 0, 0}, {100, 90, 0}, {250, 90, 0}}
	longer := slices.Clone(crank(1))
	longer[0][0] -= 0.2
	for _, c := range []struct {
		name            string
		corners         []vec3
		same, turned    bool
		mirror, another bool
	}{
		{"in another place", elsewhere(crank(1)), true, false, false, false},
		{"from the other end", elsewhere(backwards(crank(1))), true, true, false, false},
		{"its mirror image", crank(-1), false, false, true, false},
		{"its mirror image from the other end", elsewhere(backwards(crank(-1))), false, false, true, false},
		{"0.2 mm longer", longer, false, false, false, true},
		{"another altogether", flat, false, false, false, true},
	} {
		l := cutlist.List{Tubes: []cutlist.Tube{formedTube(t, "A", "one", crank(1)...), formedTube(t, "B", "two", c.corners...)}}
		got := l.Batch()
		switch {
		case c.same && (len(got) != 1 || got[0].Reversed[1] != c.turned || got[0].Each != 2):
			t.Errorf("%s: %d templates, %+v", c.name, len(got), got[0].Reversed)
		case !c.same && len(got) != 2:
			t.Errorf("%s: %d templates, want 2", c.name, len(got))
		case c.mirror && got[1].MirrorOf != "A", c.another && got[1].MirrorOf != "":
			t.Errorf("%s: mirror of %q", c.name, got[1].MirrorOf)
		}
	}
}

// A tube in one plane is its own mirror image: turned over it is the same.
func TestAFlatTubeIsItsOwnMirror(t *testing.T) {
	flat := func(sign float64) []vec3 {
		return []vec3{{0, 0, 0}, {100, 0, 0}, {100, 90, 0}, {100 + sign*130, 90, 0}}
	}
	l := cutlist.List{Tubes: []cutlist.Tube{formedTube(t, "A", "s", flat(1)...), formedTube(t, "B", "s too", elsewhere(flat(1))...), formedTube(t, "C", "u", flat(-1)...)}}
	if got := l.Batch(); len(got) != 2 || len(got[0].Runs) != 2 || got[1].MirrorOf != "" {
		t.Errorf("%+v", got)
	}
}

// Worked by hand: corner distances 120, 150, 140, radius 32, gap 0.5 at each
// end. End A stands at x = 0.5, end B at z = 139.5.
func TestFirstArticle(t *testing.T) {
	tube := formedTube(t, "A", "one", crank(1)...)
	developed := 120 + 150 + 140 - 2*2*32 + 2*32*math.Pi/2
	want := []cutlist.Check{
		{"finished length", developed - 1, 5, 1, "mm"}, // play 3 + 3 less the gaps; the gaps
		{"end A to the back of bend 1", 119.5 + 8, 0.6, 0.6, "mm"},
		{"back of bend 1 to the back of bend 2", 150 + 16, 0.6, 0.6, "mm"},
		{"back of bend 2 to end B", 139.5 + 8, 0.6, 0.6, "mm"},
		{"turn of bend 1", 90, 2, 2, "deg"},
		{"turn of bend 2", 90, 2, 2, "deg"},
		{"roll from bend 1 to bend 2", 90, 2, 2, "deg"},
		{"span along the first leg", 119.5, 0.6, 0.6, "mm"},
		{"span across, in the plane of bend 1", 150, 0.6, 0.6, "mm"},
		{"span across, out of that plane", 139.5, 0.6, 0.6, "mm"},
	}
	got := tube.FirstArticle()
	if len(got) != len(want) {
		t.Fatalf("%d checks, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		g := got[i]
		if g.What != w.What || g.Unit != w.Unit || math.Abs(g.Nominal-w.Nominal) > 1e-6 || math.Abs(g.Below-w.Below) > 1e-9 || math.Abs(g.Above-w.Above) > 1e-9 {
			t.Errorf("got %+v\nwant %+v", g, w)
		}
	}
	if got := formedTube(t, "S", "straight", vec3{}, vec3{200, 0, 0}).FirstArticle(); len(got) != 1 || got[0].Nominal != 199 {
		t.Errorf("a straight: %+v", got)
	}
}

// The classroom's twelve machines: every piece that is sawn belongs to a jig, and
// one cut plan holds them all.
func TestClassroomBatch(t *testing.T) {
	l, _ := answered(t, demoPlan(t, "classroom-batch"))
	templates, sum, sawn := l.Batch(), 0, 0
	for _, m := range templates {
		sum += m.Pieces
		if m.Pieces < 12*m.Each {
			t.Errorf("%d pieces for template %s, which each of 12 machines has %d of", m.Pieces, m.Letter, m.Each)
		}
	}
	for _, b := range l.Bars {
		sawn += len(b.Pieces)
		used := b.Left
		for i, p := range b.Pieces {
			used += p.Length
			if i > 0 || b.Left > 0 {
				used += l.Plan.Saw.Kerf
			}
		}
		if used > b.Length+l.Plan.Saw.Kerf+1e-6 {
			t.Errorf("a bar of %.2f holds %.2f", b.Length, used)
		}
	}
	// MT-082: 3 mm is the tolerance asked of a trade test piece (a plumbing
	// course's task sheet); no first article may be checked more loosely.
	for _, m := range templates {
		if c := m.Tube.FirstArticle()[0]; (c.Below+c.Above)/2 > 3+1e-9 {
			t.Errorf("template %s: finished length −%.2f +%.2f, a trade test piece is asked for ± 3", m.Letter, c.Below, c.Above)
		}
	}
	if want := 12*len(l.Tubes) + l.Plan.Spares.Bent; sum != want || sawn != want {
		t.Errorf("%d pieces on jigs, %d sawn, want %d", sum, sawn, want)
	}
	assertJSONSays(t, l, `"batch"`, `"finished length"`)
}
