package ui

import (
	"errors"
	"io/fs"
	"path"

	"tubewright/route"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// underModel is what the panel shows of the picture under the look.
type underModel struct {
	shown  bool
	index  int // among the plan's pictures
	name   string
	fade   float64
	locked bool
	wrong  string // why it cannot be shown; "" when it can
}

// lookUnder gives the plan's word for a flat look.
func lookUnder(l board.Look) (route.PictureLook, bool) {
	switch l {
	case board.Side:
		return route.UnderSide, true
	case board.Above:
		return route.UnderAbove, true
	case board.Front:
		return route.UnderFront, true
	case board.Turntable:
	}
	return "", false
}

// boardLook is the other way about.
func boardLook(l route.PictureLook) board.Look {
	switch l {
	case route.UnderAbove:
		return board.Above
	case route.UnderFront:
		return board.Front
	case route.UnderSide:
	}
	return board.Side
}

// topUnder is the picture that lies on top under a look; −1 for none.
func topUnder(p route.Plan, l board.Look) int {
	word, flat := lookUnder(l)
	for i := len(p.Pictures) - 1; i >= 0 && flat; i-- {
		if p.Pictures[i].Look == word {
			return i
		}
	}
	return -1
}

// underOf is what the panel shows of the picture on top under a look; wrong
// says why it cannot be shown.
func underOf(s session.Snapshot, l board.Look, wrong func(file string) string) underModel {
	i := topUnder(s.Plan, l)
	if i < 0 {
		return underModel{}
	}
	p := s.Plan.Pictures[i]
	return underModel{true, i, path.Base(p.File), p.Fade, p.Locked, wrong(p.File)}
}

// whyNoPhoto says why a picture cannot be shown, and that the plan goes on without.
func whyNoPhoto(err error) string {
	switch {
	case err == nil:
		return ""
	case errors.Is(err, fs.ErrNotExist):
		return "It is not beside the plan any more. The plan works without it."
	}
	return sentence(err.Error()) + " The plan works without it."
}

// laid is a picture of w by h pixels as it is laid under a look at first: whole
// and in the middle of the case, half faded.
func laid(file string, l route.PictureLook, size [3]float64, w, h int) route.Picture {
	across, upright := 0, 1
	switch l {
	case route.UnderAbove:
		upright = 2
	case route.UnderFront:
		across = 2
	case route.UnderSide:
	}
	scale := min(size[across]/float64(w), size[upright]/float64(h))
	half := func(axis, pixels int) float64 { return size[axis]/2 - float64(pixels)*scale/2 }
	p := route.Picture{File: file, Look: l, Scale: scale, Fade: 0.4, At: [2]float64{half(across, w), half(upright, h)}}
	// The axes that run to the left or down the screen count from the far side.
	switch l {
	case route.UnderAbove:
		p.At[1] = size[2] - p.At[1]
	case route.UnderFront:
		p.At[0] = size[2] - p.At[0]
	case route.UnderSide:
	}
	return p
}

// rescaled is a picture scaled so that two of its points are a distance apart;
// the first stays where it is. The points count along the look's axes, mm.
func rescaled(p route.Picture, from, to [2]float64, distance func(a, b [2]float64) float64, want float64) route.Picture {
	k := want / distance(from, to)
	p.Scale *= k
	for i := range p.At {
		p.At[i] = from[i] + (p.At[i]-from[i])*k
	}
	return p
}
