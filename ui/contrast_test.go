package ui

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
)

// leastContrast is what WCAG 2.1 asks of text, success criterion 1.4.3, level AA.
// It lets controls that are off have less; ours are held to the same, since they
// have names that one may want to read.
const leastContrast = 4.5

// picturesEnv names a folder that gets a picture of every screen, to be looked at.
const picturesEnv = "TUBEWRIGHT_SCREENS"

func TestEveryTextStandsOutInThePicture(t *testing.T) {
	b := scanner(t)
	for _, dark := range []bool{false, true} {
		b.setTheme(dark)
		b.sized(100, fyne.NewSize(1280, 800))
		for i, s := range screens(t) {
			s.show(b)
			shown := b.win.Canvas().Capture()
			for _, w := range topWords(wordsOn(b.win.Canvas())) {
				if core, ground, ok := painted(shown, w); ok && contrast(core, ground) < leastContrast {
					t.Errorf("%s, dark %v: %v is painted in %v on %v: contrast %.2f", s.name, dark, w, core, ground, contrast(core, ground))
				}
			}
			keepPicture(t, fmt.Sprintf("%02d %s, %s", i, strings.ReplaceAll(s.name, ":", ""), themeWord()), shown)
			b.tidy()
		}
	}
}

// topWords are those of the uppermost layer: what lies under a question is veiled.
func topWords(all []word) (top []word) {
	for _, w := range all {
		if len(top) > 0 && w.layer > top[0].layer {
			top = nil
		}
		top = append(top, w)
	}
	return top
}

// painted gives the colour of a text's letters at their core, and the ground under
// them, as a picture has them: the ground is what most of the place shows, the core
// the pixel nearest to the colour that was asked for. ok is false where too little
// of the text can be seen.
func painted(shown image.Image, w word) (core, ground color.NRGBA, ok bool) {
	seen := tight(w).cut(w.clip)
	if seen.empty() || seen.y1-seen.y0 < 0.9*(tight(w).y1-tight(w).y0) || seen.x1-seen.x0 < 3 {
		return core, ground, false
	}
	core, ground = coreAndGround(shown, image.Rect(int(seen.x0), int(seen.y0), int(seen.x1)+1, int(seen.y1)+1), w.of.Color)
	return core, ground, true
}

// inkSpread is how far from an ink a colour is the ink's own, squared: a bold letter
// may fill more of its place than its ground does.
const inkSpread = 24 * 24

// coreAndGround gives, of a place in a picture, the colour nearest to an ink and the
// one that most of the place shows.
func coreAndGround(shown image.Image, place image.Rectangle, ink color.Color) (core, ground color.NRGBA) {
	counts := map[color.NRGBA]int{}
	place = place.Intersect(shown.Bounds())
	for y := place.Min.Y; y < place.Max.Y; y++ {
		for x := place.Min.X; x < place.Max.X; x++ {
			counts[color.NRGBAModel.Convert(shown.At(x, y)).(color.NRGBA)]++
		}
	}
	want := color.NRGBAModel.Convert(ink).(color.NRGBA)
	ground = want // where nothing else is seen
	most, least := 0, 1<<30
	for c, n := range counts {
		if far := distance(c, want) > inkSpread; far && (n > most || n == most && distance(c, want) > distance(ground, want)) {
			ground, most = c, n
		}
		if d := distance(c, want); d < least {
			core, least = c, d
		}
	}
	return core, ground
}

// distance is how far apart two colours are, squared.
func distance(a, b color.NRGBA) int {
	r, g, bl := int(a.R)-int(b.R), int(a.G)-int(b.G), int(a.B)-int(b.B)
	return r*r + g*g + bl*bl
}

// keepPicture writes a picture where one is asked for.
func keepPicture(t *testing.T, name string, shown image.Image) {
	t.Helper()
	dir := os.Getenv(picturesEnv)
	if dir == "" {
		return
	}
	f, err := os.Create(filepath.Join(dir, name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, shown); err != nil {
		t.Fatal(err)
	}
}
