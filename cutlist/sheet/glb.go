package sheet

import (
	"io"

	"tubewright/cutlist"
	"tubewright/cutlist/mesh"
)

// GLB writes the machine as a binary glTF file, in the paper's colours; see [mesh.GLB].
func GLB(w io.Writer, l cutlist.List) error {
	th := PaperTheme()
	return mesh.GLB(w, l, mesh.Paint{Case: th.Ink, Part: th.Part, Fitting: th.Fitting, Tube: ColourOf})
}
