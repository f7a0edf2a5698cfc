package planfile

import (
	_ "embed" // for the schema
	"slices"
)

//go:embed plan.schema.json
var schema []byte

// Schema is the JSON Schema (draft 2020-12) of a plan file, for editors that
// complete and check while one types. It knows the keys, types and bounds; what
// one value asks of another only [Read] knows. The tests make it from the same
// keys the reader uses.
func Schema() []byte { return slices.Clone(schema) }
