package planfile

import "gopkg.in/yaml.v3"

// An item is a value as it will stand in a file.
type item struct {
	kind    itemKind
	word    string  // of a word: as it is written, quoted where it must be
	list    []*item // of a list
	rows    []row   // of a table
	layout  layout
	ordered bool // the order of the rows says something
	// holds reports whether a value of a file already says this; nil: look at
	// what the item is made of.
	holds func(n *yaml.Node) bool
}

// row is one key of a table. A quiet one says nothing new, so it is not added to
// a table of the file that goes without it. A pinned one is written all the same
// when the table is new: a measured tube keeps its numbers, whatever a later
// catalogue may say.
type row struct {
	key    string
	value  *item // nil: an empty value
	quiet  bool
	pinned bool
	zero   bool // says no more than a missing key: goes rather than being changed to 0
}

type itemKind int

const (
	word itemKind = iota
	list
	table
)

// layout says how a list or table is set out.
type layout int

const (
	block layout = iota // one entry to a line
	flow                // in brackets
	fit                 // in brackets while one line holds it, else one entry to a line
)

// spoken gives the rows a new table is written with.
func (it *item) spoken() []row {
	var out []row
	for _, r := range it.rows {
		if !r.quiet || r.pinned {
			out = append(out, r)
		}
	}
	return out
}
