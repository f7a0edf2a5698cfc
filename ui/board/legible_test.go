package board

import (
	"fmt"
	"image"
	"image/color"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// leastRead is what WCAG 2.1 asks of text, success criterion 1.4.3, level AA.
const leastRead = 4.5

// script is a text as it was written on a picture: how much of each pixel its
// letters cover, 0 to 255.
type script struct {
	text  string
	cover map[image.Point]uint8
}

// scriptOf finds the pixels of a text as [frame.text] does.
func scriptOf(t *typeface, text string, x, y float32) script {
	s := script{text, map[image.Point]uint8{}}
	line := int(y + 0.5)
	for _, r := range text {
		whole := floor(x)
		g := t.glyph(r, x-whole)
		for i, m := range g.mask {
			at := image.Pt(int(whole)+g.x+i%g.w, line+g.y+i/g.w)
			s.cover[at] = max(s.cover[at], m)
		}
		x += g.advance
	}
	return s
}

// core is the pixel that the letters cover most, and how much.
func (s script) core(in image.Rectangle) (at image.Point, most uint8) {
	for p, m := range s.cover {
		if p.In(in) && (m > most || m == most && (p.Y < at.Y || p.Y == at.Y && p.X < at.X)) {
			at, most = p, m
		}
	}
	return at, most
}

// around lists the pixels beside the letters' cores that no letter covers.
func (s script) around(in image.Rectangle) (list []image.Point) {
	seen := map[image.Point]bool{}
	for p, m := range s.cover {
		if m < 128 {
			continue
		}
		for dy := -1; dy <= 1; dy++ {
			for dx := -1; dx <= 1; dx++ {
				if q := p.Add(image.Pt(dx, dy)); s.cover[q] == 0 && q.In(in) && !seen[q] {
					seen[q] = true
					list = append(list, q)
				}
			}
		}
	}
	return list
}

// under reports whether a text lies under the ground of a word one has in hand.
func (s script) under(tags []tagAt, scale float32) (hidden bool) {
	for _, t := range tags {
		if t.text == s.text {
			return false
		}
		r := t.at.grown(6 * scale)
		for at := range s.cover {
			x, y := float32(at.X), float32(at.Y)
			hidden = hidden || r.x0 < x && x < r.x1 && r.y0 < y && y < r.y1
		}
	}
	return hidden
}

// unread says why a text of a picture cannot be read; "" when it can. Each letter's
// core is held against every pixel beside the letters: what little is darker or
// lighter there, the corner of a mark, does no harm.
func (s script) unread(img *image.RGBA) string {
	at, most := s.core(img.Rect)
	beside := s.around(img.Rect)
	if most < 128 || len(beside) == 0 {
		return ""
	}
	core, dull, worst := img.RGBAAt(at.X, at.Y), 0, 21.0
	var ground color.RGBA
	for _, p := range beside {
		if c := Contrast(core, img.RGBAAt(p.X, p.Y)); c < leastRead {
			dull++
			if c < worst {
				worst, ground = c, img.RGBAAt(p.X, p.Y)
			}
		}
	}
	if share := float64(dull) / float64(len(beside)); share > 0.05 {
		return fmt.Sprintf("%q at %v: %.0f %% of the ground beside its letters, such as %v under %v, has a contrast below %.1f, down to %.2f",
			s.text, at, 100*share, ground, core, leastRead, worst)
	}
	return ""
}

// TestEveryLabelCanBeRead looks at all that is written on pictures of a demo, in
// every look, both styles, and three sizes of writing.
func TestEveryLabelCanBeRead(t *testing.T) {
	s := demoScene(t)
	texts := 0
	for _, style := range []Style{Light(), Dark()} {
		for _, look := range Looks() {
			for i, show := range labelledShows(s) {
				for _, scale := range []float64{1, 1.25, 1.5} {
					name := fmt.Sprintf("dark %v, %v, %d, writing %v times", style.Dark, look, i, scale)
					texts += unreadLabels(t, name, s, look, &style, show, scale)
				}
			}
		}
	}
	if texts < 500 {
		t.Errorf("only %d texts were looked at", texts)
	}
}

// labelledShows are states in which different things are written.
func labelledShows(s *Scene) []Show {
	at := func(i int) mgl64.Vec3 { return s.Ports[i].Frame.At }
	return []Show{
		{},
		{Selection: []Target{PartTarget("pump")}, Measure: &Measure{A: at(0), B: at(1), Both: true}},
		{Selection: []Target{FindingTarget(0)}, Guides: []Guide{{A: at(0), B: at(2)}, {A: at(1), B: at(3), Miss: 3}}},
		{Rubber: &Rubber{From: at(0), To: at(2), Why: "another thread"}, Greyed: []route.PortRef{s.Ports[2].Ref}},
	}
}

// unreadLabels draws a picture, tells what cannot be read on it and how many texts
// it has.
func unreadLabels(t *testing.T, name string, s *Scene, look Look, style *Style, show Show, scale float64) int {
	t.Helper()
	const w, h = 640, 460
	show.Words, show.Rulers, show.Quality, show.Caption, show.Scale = true, true, Fine, look.String(), scale
	c := NewCamera(look, s.Case, w, h)
	c.Inset = [4]int{int(rulerWide * scale), 0, 0, int(rulerHigh * scale)}
	c.Fit(s, w, h)
	img, p := picture(w, h), &Painter{}
	var all []script
	p.small.wrote = func(t *typeface, text string, x, y float32) { all = append(all, scriptOf(t, text, x, y)) }
	p.Render(img, s, c, style, show)
	for _, text := range all {
		if text.under(p.tags, float32(scale)) {
			continue // what one has in hand lies over all else
		}
		if why := text.unread(img); why != "" {
			t.Errorf("%s: %s", name, why)
		}
	}
	return len(all)
}

// The check finds a text that is too faint.
func TestFaintLabelsAreFound(t *testing.T) {
	var f frame
	f.resize(100, 40)
	f.clear(pack(rgb(0xFFFFFF)))
	var l lettering
	face := l.face(12, regular)
	for _, row := range []struct {
		ink  color.RGBA
		read bool
	}{{rgb(0x000000), true}, {rgb(0x555D60), true}, {rgb(0xAAAAAA), false}} {
		f.clear(pack(rgb(0xFFFFFF)))
		f.text(face, "Label", 10, 20, pack(row.ink))
		img := picture(100, 40)
		f.put(img)
		if why := scriptOf(face, "Label", 10, 20).unread(img); (why == "") != row.read {
			t.Errorf("in %v: %q, want it read %v", row.ink, why, row.read)
		}
	}
}
