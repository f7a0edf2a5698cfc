package board

import (
	"encoding/csv"
	"fmt"
	"image/color"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"tubewright/cutlist"
)

// paletteRow is one row of the check values; see the file's own columns.
type paletteRow struct{ id, quantity, inputs, value, tolerance, source string }

func paletteRows(t *testing.T) []paletteRow {
	t.Helper()
	f, err := os.Open("../../testdata/reference/10_palette_paper.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []paletteRow
	for _, l := range lines[1:] {
		rows = append(rows, paletteRow{l[0], l[1], l[2], l[3], l[5], l[6]})
	}
	return rows
}

func hexColour(t *testing.T, hex string) color.RGBA {
	t.Helper()
	v, err := strconv.ParseUint(strings.TrimPrefix(hex, "#"), 16, 32)
	if err != nil {
		t.Fatal(err)
	}
	return rgb(uint32(v))
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestContrastAgainstPublishedValues takes the ratios from the reference file.
func TestContrastAgainstPublishedValues(t *testing.T) {
	white, checked := rgb(0xFFFFFF), 0
	for _, r := range paletteRows(t) {
		var got float64
		switch {
		case strings.HasPrefix(r.quantity, "WCAG contrast ratio against white"):
			_, hex, _ := strings.Cut(r.inputs, "hex=")
			got = Contrast(hexColour(t, hex), white)
		case r.quantity == "WCAG contrast ratio black on white":
			got = Contrast(rgb(0), white)
		case r.quantity == "WCAG contrast ratio of grey 767676 on white":
			got = Contrast(rgb(0x767676), white)
		default:
			continue
		}
		checked++
		if want := number(t, r.value); math.Abs(got-want) > number(t, r.tolerance) {
			t.Errorf("%s: %s %s is %.3f, want %.3f (%s)", r.id, r.quantity, r.inputs, got, want, r.source)
		}
	}
	if checked < 8 {
		t.Errorf("only %d rows were checked", checked)
	}
}

// TestTubeColoursAreThePublishedPalette looks each published colour up among
// the tubes', in both styles. Black is left out on purpose.
func TestTubeColoursAreThePublishedPalette(t *testing.T) {
	published := map[string]bool{}
	for _, r := range paletteRows(t) {
		if r.quantity == "palette colour, hex" {
			published[r.value] = true
		}
		if _, hex, ok := strings.Cut(r.inputs, "hex="); ok {
			published["#"+hex] = true
		}
	}
	delete(published, "#000000")
	for _, s := range []Style{Light(), Dark()} {
		for _, c := range s.Tubes {
			hex := fmt.Sprintf("#%02X%02X%02X", c.R, c.G, c.B)
			if !published[hex] {
				t.Errorf("%s is not in the published palette", hex)
			}
		}
	}
	if len(published) != len(Style{}.Tubes) {
		t.Errorf("%d published colours besides black, %d tubes' colours", len(published), len(Style{}.Tubes))
	}
}

// leastContrast is WCAG 2, criterion 1.4.3, level AA: the reference file's row PP-027.
const leastContrast = 4.5

func TestTextStandsOut(t *testing.T) {
	for _, s := range []Style{Light(), Dark()} {
		texts := map[string]color.RGBA{
			"text": s.Text, "muted": s.Muted, "chosen": s.Select, "guide": s.Guide,
			"error": s.Error, "warning": s.Warning, "note": s.Note,
		}
		// Words in the picture stand on a halo; the others on bare grounds.
		for name, c := range texts {
			if got := Contrast(c, s.Halo); got < leastContrast {
				t.Errorf("dark %v: %s on its halo has %.2f", s.Dark, name, got)
			}
		}
		for name, ground := range map[string]color.RGBA{"ruler": s.Ruler, "ground": s.Background} {
			if got := Contrast(s.Muted, ground); got < leastContrast {
				t.Errorf("dark %v: muted text on the %s has %.2f", s.Dark, name, got)
			}
		}
		for _, c := range s.Tubes {
			if got := Contrast(inkOn(c), c); got < leastContrast {
				t.Errorf("dark %v: a letter on %v has %.2f", s.Dark, c, got)
			}
		}
	}
}

// leastMark is WCAG 2, criterion 1.4.11: the reference file's row PP-028.
const leastMark = 3.0

func TestMarksStandOut(t *testing.T) {
	for _, s := range []Style{Light(), Dark()} {
		for name, pair := range map[string][2]color.RGBA{
			"choice on its halo":  {s.Select, s.Halo},
			"hover on paper":      {s.Hover, s.Paper},
			"port on paper":       {s.Port, s.Paper},
			"port on its face":    {s.Port, s.PortFace},
			"case on the ground":  {s.CaseLine, s.Background},
			"guide on its halo":   {s.Guide, s.Halo},
			"warning on its halo": {s.Warning, s.Halo},
		} {
			if got := Contrast(pair[0], pair[1]); got < leastMark {
				t.Errorf("dark %v: %s has %.2f", s.Dark, name, got)
			}
		}
	}
}

// TestNotByColourAlone says that letters and shapes tell apart what colours do.
func TestNotByColourAlone(t *testing.T) {
	seen := map[string]bool{}
	for i := range 60 {
		l := cutlist.Letter(i)
		if seen[l] {
			t.Fatalf("letter %s twice", l)
		}
		seen[l] = true
	}
	if cutlist.Letter(0) != "A" || cutlist.Letter(25) != "Z" || cutlist.Letter(26) != "AA" || cutlist.Letter(53) != "BB" {
		t.Errorf("letters go %s, %s, %s, %s", cutlist.Letter(0), cutlist.Letter(25), cutlist.Letter(26), cutlist.Letter(53))
	}
}
