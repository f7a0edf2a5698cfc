package bends_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

// noise is what float64 may leave of an exact figure of up to four digits. It is
// no tolerance of a source: those come from the rows.
const noise = 1e-11

// figure works out a row's figure by forming a tube with the row's inputs.
type figure func(t *testing.T, in inputs) float64

// group is a way to work out a figure and the rows it serves.
type group struct {
	of  figure
	ids string
}

// inputs are a row's "name=value" pairs; a unit at the end of a name is left out.
type inputs map[string]string

// referenceRow is one line of a table in testdata/reference.
type referenceRow struct {
	id, quantity, source string
	in                   inputs
	want, tolerance      float64
}

func TestReference(t *testing.T) {
	t.Run("bend geometry", func(t *testing.T) { compare(t, "01_bend_geometry.csv", geometryRows, nil) })
	t.Run("offset bends", func(t *testing.T) { compare(t, "02_offset_bends.csv", offsetRows, nil) })
	t.Run("lengths, rotations, angles", func(t *testing.T) { compare(t, "03_xyz_lra.csv", rollRows, nil) })
}

// compare checks every row of a table. A row must be served by one group or be
// listed in left with the reason; nothing may be listed that is not in the table.
func compare(t *testing.T, name string, groups []group, left map[string]string) {
	figures := byID(t, groups)
	for _, row := range readReference(t, name) {
		of, used := figures[row.id]
		_, listed := left[row.id]
		delete(figures, row.id)
		delete(left, row.id)
		switch {
		case used == listed:
			t.Errorf("%s %s: used %v and left out %v; want one of them", name, row.id, used, listed)
		case used:
			row.check(t, of)
		}
	}
	for id := range figures {
		t.Errorf("%s has no row %s to use", name, id)
	}
	for id := range left {
		t.Errorf("%s has no row %s to leave out", name, id)
	}
}

func (r referenceRow) check(t *testing.T, of figure) {
	t.Run(r.id, func(t *testing.T) {
		if got := of(t, r.in); !(math.Abs(got-r.want) <= r.tolerance+noise) {
			t.Errorf("%s of %v = %.9g, want %v within %v\n\tsource: %s", r.quantity, r.in, got, r.want, r.tolerance, r.source)
		}
	})
}

func byID(t *testing.T, groups []group) map[string]figure {
	figures := map[string]figure{}
	for _, g := range groups {
		for id := range strings.FieldsSeq(g.ids) {
			if figures[id] != nil {
				t.Errorf("row %s is used twice", id)
			}
			figures[id] = g.of
		}
	}
	return figures
}

func readReference(t *testing.T, name string) (rows []referenceRow) {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "testdata", "reference", name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close() //nolint:errcheck // only read from
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil || len(lines) < 2 {
		t.Fatalf("%s: %d lines, %v", name, len(lines), err)
	}
	for _, l := range lines[1:] {
		rows = append(rows, referenceRow{
			id: l[0], quantity: l[1], in: readInputs(l[2]), source: l[6],
			want: number(t, l[3]), tolerance: number(t, l[5]),
		})
	}
	return rows
}

func readInputs(text string) inputs {
	in := inputs{}
	for pair := range strings.SplitSeq(text, ";") {
		name, value, _ := strings.Cut(pair, "=")
		for _, unit := range []string{"_mm", "_in", "_m", "_deg"} {
			name = strings.TrimSuffix(name, unit)
		}
		in[name] = value
	}
	return in
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func (in inputs) num(t *testing.T, name string) float64 {
	t.Helper()
	return number(t, in[name])
}

func (in inputs) list(t *testing.T, name string) (list []float64) {
	t.Helper()
	for text := range strings.SplitSeq(in[name], "|") {
		list = append(list, number(t, text))
	}
	return list
}

func (in inputs) points(t *testing.T) (points []mgl64.Vec3) {
	t.Helper()
	for text := range strings.SplitSeq(in["points"], "|") {
		var p mgl64.Vec3
		for i, c := range strings.Split(text, ":") {
			p[i] = number(t, c)
		}
		points = append(points, p)
	}
	return points
}

// formed forms a bare path: a tube without size or needs, one radius everywhere.
func formed(t *testing.T, radius float64, corners ...mgl64.Vec3) bends.Formed {
	t.Helper()
	return formedOf(t, bends.Tube{Radius: radius}, corners...)
}

func formedOf(t *testing.T, tube bends.Tube, corners ...mgl64.Vec3) bends.Formed {
	t.Helper()
	f, err := bends.Form(tube, bends.Path{Corners: corners})
	if err != nil {
		t.Fatalf("Form(%v): %v", corners, err)
	}
	return f
}

// leg is the distance between two corners in turn: the straight and the
// setbacks at its ends.
func leg(f bends.Formed, j int) float64 {
	sum := f.Straights[j]
	if j > 0 {
		sum += f.Bends[j-1].Setback
	}
	if j < len(f.Bends) {
		sum += f.Bends[j].Setback
	}
	return sum
}
