package planfile

// A shape tells the JSON Schema what a codec reads.
type shape struct {
	kind   string // number, integer, text, name, choice, flag, list, mapping, register, reference, either, format
	bound  bound
	length bool // counted in the file's units
	words  []string
	keys   []shapeKey
	each   *shape
	least  int // entries of a list
	most   int
	lay    bool // names of a register hold no dot
	either []shape
}

type shapeKey struct {
	name, doc string
	must      bool
	shape     shape
}

func (rec record[T]) shape() shape {
	sh := shape{kind: "mapping"}
	for _, k := range rec.keys {
		sh.keys = append(sh.keys, shapeKey{k.name, k.doc, k.must, k.shape})
	}
	return sh
}
