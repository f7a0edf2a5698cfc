package sheet_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"tubewright/assets"
	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/cutlist/sheet"
)

// placedText is a text of a drawing and the box of its ink: from the top of the
// capitals to below the tails. Capitals with accents reach a little higher.
type placedText struct {
	text   string
	lo, hi draw.Point
}

func texts(d draw.Drawing) (all []placedText) {
	for _, it := range d.Items {
		t, ok := it.(draw.Text)
		if !ok || t.Text == "" {
			continue
		}
		lo, hi := t.Bounds()
		cut := (draw.Ascent - 0.75) * t.Size
		switch t.Turn {
		case 0:
			lo.Y += cut
		case 90:
			hi.X -= cut
		}
		all = append(all, placedText{t.Text, lo, hi})
	}
	return all
}

// slack is how far boxes may reach into each other, mm: less than a hairline.
const slack = 0.05

// cluttered says which texts of a drawing leave it or cover each other.
func cluttered(d draw.Drawing, margin float64) (faults []string) {
	all := texts(d)
	for i, a := range all {
		if a.lo.X < margin-slack || a.lo.Y < margin-slack || a.hi.X > d.W-margin+slack || a.hi.Y > d.H-margin+slack {
			faults = append(faults, fmt.Sprintf("%q leaves the page: %.1f to %.1f", a.text, a.lo, a.hi))
		}
		for _, b := range all[i+1:] {
			w := math.Min(a.hi.X, b.hi.X) - math.Max(a.lo.X, b.lo.X)
			h := math.Min(a.hi.Y, b.hi.Y) - math.Max(a.lo.Y, b.lo.Y)
			if w > slack && h > slack {
				faults = append(faults, fmt.Sprintf("%q and %q cover each other by %.2f × %.2f mm near %.1f", a.text, b.text, w, h, a.lo))
			}
		}
	}
	return faults
}

// The checker must be able to fail.
func TestClutteredSeesFaults(t *testing.T) {
	d := draw.Drawing{W: 100, H: 100}
	at := func(x, y float64) draw.Text {
		return draw.Text{At: draw.Point{X: x, Y: y}, Text: "bend", Size: 4}
	}
	d.Add(at(50, 50), at(53, 51), at(96, 20))
	if got := cluttered(d, 0); len(got) != 2 {
		t.Errorf("got %q, want one overlap and one text off the page", got)
	}
}

// made keeps what everyList made: tests only read it.
var made map[string]cutlist.List

func everyList(t *testing.T) map[string]cutlist.List {
	t.Helper()
	if made != nil {
		return made
	}
	firm := list(t, smallPlan())
	firm.Draft, firm.Reasons, firm.Measure = false, nil, nil
	empty := cutlist.List{Plan: smallPlan()}
	empty.Plan.Name = ""
	inches := smallPlan()
	inches.Units, inches.Build = "in", 3
	tried := triedPlan(t)
	all := map[string]cutlist.List{
		"small": list(t, smallPlan()), "firm": firm, "empty": empty, "inches": list(t, inches), "stress": stressList(t), "tried": list(t, tried),
		"long": list(t, longPlan()),
	}
	for _, name := range assets.Demos() {
		all[name] = demo(t, name)
	}
	made = all
	return all
}

func TestNoTextLeavesThePageOrCoversAnother(t *testing.T) {
	for name, l := range everyList(t) {
		for _, paper := range []sheet.Paper{sheet.A4, sheet.Letter} {
			for n, page := range sheet.Pages(l, sheet.Options{Paper: paper, Date: "1 May", Revision: "rev B"}) {
				for _, fault := range cluttered(page, 5) {
					t.Errorf("%s on %s, page %d: %s", name, paper, n+1, fault)
				}
			}
		}
	}
}

func contains(text, part string) bool { return strings.Contains(text, part) }
