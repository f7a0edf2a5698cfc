package route

// Picture is a photo or a drawing that lies under one look at the case, to
// place parts and ports by. It counts for nothing that is found or cut.
type Picture struct {
	File   string      // PNG or JPEG beside the plan's file or in a folder there, with / between names
	Look   PictureLook // under which it lies
	At     [2]float64  // where its lower left corner stands: the look's two coordinates in the case, mm
	Scale  float64     // mm that one of its pixels stands for
	Fade   float64     // 0: as it is, 1: not to be seen
	Locked bool        // stays where it is when it is dragged
}

// PictureLook is a look at the case that a picture can lie under.
type PictureLook string

// The looks, each with the coordinates that At counts in: across, then upright.
const (
	UnderSide  PictureLook = "side"  // x, y
	UnderAbove PictureLook = "above" // x, z
	UnderFront PictureLook = "front" // z, y
)
