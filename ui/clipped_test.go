package ui

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// slip is how far a text may stand out of its place, in Fyne's pixels: rounding.
const slip = 0.6

// windowSizes are those the window is promised to be usable at, and the first one.
var windowSizes = []fyne.Size{{Width: 1024, Height: 700}, {Width: 1280, Height: 800}, {Width: 2560, Height: 1440}}

// menuBar is what the menus take of the window's height, at text as it comes: the
// test driver has none.
const menuBar = 34

// sized gives the window a size of text and of itself.
func (b *bench) sized(percent int, size fyne.Size) {
	b.setText(percent)
	size.Height -= grown(menuBar)
	b.win.Resize(size)
	b.settle()
}

func TestNoTextIsClippedOrCovered(t *testing.T) {
	b := scanner(t)
	for _, percent := range []int{100, 125, 150} {
		for i, size := range windowSizes {
			b.setTheme(i == 1) // texts stand alike in both; each is looked at
			b.sized(percent, size)
			for _, s := range screens(t) {
				s.show(b)
				unfaulty(t, b, fmt.Sprintf("%s, text %d %%, %v by %v", s.name, percent, size.Width, size.Height))
				b.tidy()
			}
		}
	}
}

// What a window shows before there is a plan, or with an empty one.
func TestNoTextIsClippedWithoutAPlan(t *testing.T) {
	for _, percent := range []int{100, 125, 150} {
		for _, size := range windowSizes {
			t.Run(fmt.Sprintf("text %d, %v by %v", percent, size.Width, size.Height), func(t *testing.T) {
				b := newBench(t)
				b.settings.Recent = []string{"/home/someone/a long path to the plans of the year/conservation-scanner.plan.yaml"}
				b.sized(percent, size)
				if !b.welcome.Visible() {
					t.Fatal("there is no welcome")
				}
				unfaulty(t, b, "welcome")
				b.emptyPlan()
				b.settle()
				unfaulty(t, b, "empty plan")
			})
		}
	}
}

func unfaulty(t *testing.T, b *bench, name string) {
	t.Helper()
	for _, fault := range faultsOf(wordsOn(b.win.Canvas())) {
		t.Errorf("%s: %s", name, fault)
	}
}

// faultsOf lists the texts that stand out of their place, or on another.
func faultsOf(all []word) (faults []string) {
	for i, w := range all {
		if !w.limit.holds(w.letters, slip) {
			faults = append(faults, fmt.Sprintf("%v stands out of %v", w, w.limit))
		}
		for _, o := range all[:i] {
			if w.layer == o.layer && covers(w, o) {
				faults = append(faults, fmt.Sprintf("%v covers %v", w, o))
			}
		}
	}
	return faults
}

// covers reports whether the letters of two texts that can be seen meet. A line of
// text has air above and below its letters.
func covers(a, b word) bool {
	x, y := tight(a).cut(a.clip), tight(b).cut(b.clip)
	both := x.cut(y)
	return both.x1-both.x0 > slip && both.y1-both.y0 > slip
}

func tight(w word) area {
	air := (w.letters.y1 - w.letters.y0) * 0.15
	return area{w.letters.x0, w.letters.y0 + air, w.letters.x1, w.letters.y1 - air}
}

// The checks find what they are for: a text wider than its place, and one on another.
func TestFaultsAreFound(t *testing.T) {
	themed(t)
	first, second := newLine("a line of text", textSize, ink), newLine("another", textSize, ink)
	first.Resize(fyne.NewSize(40, 20))
	second.Resize(fyne.NewSize(100, 20))
	w := test.NewTempWindow(t, container.NewWithoutLayout(first, second))
	w.Resize(fyne.NewSize(300, 100))
	faults := faultsOf(wordsOn(w.Canvas()))
	if len(faults) != 2 || !strings.Contains(faults[0], "stands out") || !strings.Contains(faults[1], "covers") {
		t.Errorf("found are %q, want the first to stand out and the second to cover it", faults)
	}
	first.Resize(fyne.NewSize(100, 20))
	second.Move(fyne.NewPos(0, 30))
	if faults := faultsOf(wordsOn(w.Canvas())); len(faults) != 0 {
		t.Errorf("set right, found are %q", faults)
	}
}
