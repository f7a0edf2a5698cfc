package planfile

import (
	"path"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"tubewright/route"
)

var pictureKeys = record[route.Picture]{
	layout: always[route.Picture](flow),
	check:  checkPicture,
	keys: []key[route.Picture]{
		keyOf("file", "PNG or JPEG beside this file, with / between the names of folders", func(p *route.Picture) *string { return &p.File }, title[string]()).needed(),
		keyOf("look", "the look it lies under: side, above or front", func(p *route.Picture) *route.PictureLook { return &p.Look }, choice(route.UnderSide, route.UnderAbove, route.UnderFront)).needed(),
		keyOf("at", "where its lower left corner stands, [across, upright]: x and y from the side, x and z from above, z and y from the front", func(p *route.Picture) *[2]float64 { return &p.At },
			two(length(anyNumber), "[across, upright]", "Write it as [across, upright], the place of the picture's lower left corner.")),
		keyOf("scale", "the length that one of its pixels stands for", func(p *route.Picture) *float64 { return &p.Scale }, length(over)).needed(),
		keyOf("fade", "0 shows it as it is, 1 not at all", func(p *route.Picture) *float64 { return &p.Fade }, count(bound{least: 0, most: 1})),
		keyOf("locked", "true: it stays where it is when it is dragged", func(p *route.Picture) *bool { return &p.Locked }, truth()),
	},
}

func pictures() codec[[]route.Picture] {
	return listOf[[]route.Picture](pictureKeys.codec(), block)
}

// pictureEndings are those of the files a picture may be.
var pictureEndings = []string{".png", ".jpg", ".jpeg"}

// checkPicture keeps a plan from naming files elsewhere than beside it: such a
// plan would not survive being moved, and might show what is none of its business.
func checkPicture(s spot, n *yaml.Node, g given, p *route.Picture) {
	if !g.sound("file") || p.File == "" {
		return
	}
	file := s.in("file")
	at := g.place(n, "file")
	switch clean := path.Clean(p.File); {
	case strings.ContainsAny(p.File, `\:`):
		file.bad(at, `holds a \ or a :`, "Put the picture beside the plan and write its name, with / between the names of folders.")
	case path.IsAbs(p.File) || clean == ".." || strings.HasPrefix(clean, "../"):
		file.bad(at, "leads away from the plan's folder", "Put the picture beside the plan and write its name alone.")
	case !slices.Contains(pictureEndings, strings.ToLower(path.Ext(p.File))):
		file.bad(at, "must end in .png, .jpg or .jpeg, but is "+short(p.File), "Save the picture as PNG or JPEG beside the plan.")
	}
}
