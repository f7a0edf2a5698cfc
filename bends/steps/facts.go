package steps

import "slices"

// Who says what is in the list.
const (
	copperBook     = "copper tube handbook, push-connect joints"
	courseSlides   = "plumbing course slides"
	insertTutorial = "hardware site tutorial"
	plasticsPage   = "plastics fabrication encyclopaedia"
	commonPractice = "common practice"
)

const (
	// HoldLeast and HoldMost are how long a thin acrylic bend is held while it
	// cools, minutes (plastics fabrication encyclopaedia).
	HoldLeast, HoldMost = 1, 3
	// TrimLeast is the least that is usually left on each end of a bent tube, mm
	// (common practice, from memory, good to 5 mm).
	TrimLeast = 10
	// trimSpread is how well TrimLeast is known, mm: less than both is told.
	trimSpread = 5
)

// hot lists the materials that are formed hot in this trade (common practice).
var hot = []string{"petg", "acrylic", "pmma", "polycarbonate", "pvc", "glass"}

// heated reports whether a material is formed hot.
func heated(material string) bool { return slices.Contains(hot, material) }

// corded reports whether a bending cord goes through a material: what is formed
// hot by hand, but not glass, which no cord stands.
func corded(material string) bool { return heated(material) && material != "glass" }

// thinAcrylic reports whether the times to hold acrylic are the material's.
func thinAcrylic(material string) bool { return material == "acrylic" || material == "pmma" }
