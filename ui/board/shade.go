package board

import (
	"image/color"

	"github.com/go-gl/mathgl/mgl64"
)

// light is where the light comes from as the viewer sees it: from the upper
// left and from behind the viewer, so that every look is lit alike.
var light = mgl64.Vec3{-0.34, 0.58, 0.74}.Normalize()

// Brightness of a surface: halfLight where the light passes along it, up to
// halfLight·2 where it falls square on it, in steps of the colour tables. The
// soft fall-off past square keeps undersides readable.
const halfLight = 127.0

// fadeSteps is how many tables of growing haze there are: things farther from
// the viewer pale a little toward the ground, which tells their order.
const fadeSteps = 8

// mostFade is how much of the ground the farthest thing takes on.
const mostFade = 0.34

// shades are the colour tables of a style, from dark to bright.
type shades struct {
	style  Style
	ready  bool
	plain  [inks][fadeSteps][256]pixel
	chosen [inks][256]pixel // with a tinge of the colour of what is chosen; tubes keep theirs
	edge   [inks]pixel      // of the lines round a solid
}

// set works the tables out when the style is another one.
func (s *shades) set(style *Style) {
	if s.ready && s.style == *style {
		return
	}
	s.style, s.ready = *style, true
	for k := range inks {
		base := k.of(style)
		s.edge[k] = pack(edgeOf(k, base, style))
		tinged := base
		if !k.tube() {
			tinged = mixed(base, style.Select, 0.16)
		}
		for t := range 256 {
			c := toned(base, float64(t)/255, k.tube())
			s.chosen[k][t] = pack(toned(tinged, float64(t)/255, k.tube()))
			for n := range fadeSteps {
				s.plain[k][n][t] = pack(mixed(c, style.Paper, mostFade*float64(n)/(fadeSteps-1)))
			}
		}
	}
}

// edgeOf is the colour of a solid's lines: a deep shade of its own.
func edgeOf(k ink, base color.RGBA, style *Style) color.RGBA {
	switch {
	case k.tube():
		return mixed(base, style.Edge, 0.62)
	case k == inkPort || k == inkPortFace || k == inkGreyed:
		return base
	}
	return mixed(base, style.Edge, 0.66)
}

// facingTone is the brightness at which a surface has its own colour: that of
// one square to the line of sight.
const facingTone = 0.87

// toned is a colour in a light from 0 to 1. Tubes shine where the light falls
// square on them.
func toned(base color.RGBA, t float64, shiny bool) color.RGBA {
	if t < facingTone {
		k := t / facingTone
		return scaled(base, 0.46+0.54*k*(2-k)*0.5+0.27*k)
	}
	k := (t - facingTone) / (1 - facingTone)
	if shiny {
		return mixed(base, color.RGBA{255, 255, 255, 255}, 0.42*k*k)
	}
	return mixed(base, color.RGBA{255, 255, 255, 255}, 0.18*k)
}

func scaled(c color.RGBA, k float64) color.RGBA {
	k = min(k, 1)
	return color.RGBA{uint8(float64(c.R)*k + 0.5), uint8(float64(c.G)*k + 0.5), uint8(float64(c.B)*k + 0.5), 255}
}

// mixed is a with a part of b, 0 to 1.
func mixed(a, b color.RGBA, part float64) color.RGBA {
	m := func(x, y uint8) uint8 { return uint8(float64(x) + (float64(y)-float64(x))*part + 0.5) }
	return color.RGBA{m(a.R, b.R), m(a.G, b.G), m(a.B, b.B), 255}
}
