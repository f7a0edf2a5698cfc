package planfile

import (
	"sync"

	"gopkg.in/yaml.v3"

	"tubewright/assets"
	"tubewright/route"
)

// Shelf is the shipped catalogue, read once. Nobody may write to it. It panics
// when the catalogue the program brings along cannot be read, which the tests
// rule out.
var Shelf = sync.OnceValue(func() *route.Catalogue {
	shelf, err := ReadCatalogue("catalogue.yaml", assets.Catalogue())
	if err != nil {
		panic("planfile: the shipped catalogue: " + err.Error())
	}
	return shelf
})

// ReadCatalogue reads a catalogue: the sections tubes, fittings and parts of a
// plan file, each entry complete in itself, parts by the name of their kind and
// without a place. The error is of type [Problems].
func ReadCatalogue(name string, data []byte) (*route.Catalogue, error) {
	doc, problems := parse(name, data)
	var shelf route.Catalogue
	r := newReader(doc, &route.Plan{}, problems)
	if problems == nil || doc.root != nil {
		r.readAll(func(s spot, n *yaml.Node) { catalogueKeys.read(s, n, &shelf) })
	}
	if len(r.problems) > 0 {
		return nil, ordered(r.problems)
	}
	return &shelf, nil
}
