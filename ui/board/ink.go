package board

import "image/color"

// ink says what a solid is painted with: a place in the style.
type ink uint8

// The inks. Parts and tubes have several.
const (
	inkTint     ink = 0
	inkTube     ink = inkTint + 6
	inkMetal    ink = inkTube + 7
	inkCollar   ink = inkMetal + 1
	inkPort     ink = inkCollar + 1
	inkPortFace ink = inkPort + 1
	inkGreyed   ink = inkPortFace + 1
	inks        ink = inkGreyed + 1
)

func (k ink) tube() bool { return k >= inkTube && k < inkMetal }

// of gives the ink's colour in a style.
func (k ink) of(s *Style) color.RGBA {
	switch {
	case k < inkTube:
		return s.Tints[k-inkTint]
	case k < inkMetal:
		return s.Tubes[k-inkTube]
	case k == inkMetal:
		return s.Metal
	case k == inkCollar:
		return s.Collar
	case k == inkPortFace:
		return s.PortFace
	case k == inkGreyed:
		return s.Greyed
	}
	return s.Port
}
