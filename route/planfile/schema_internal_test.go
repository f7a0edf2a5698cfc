package planfile

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"testing"
)

var update = flag.Bool("update", false, "accept what the tests produce as right; read the diff before you commit it")

// object keeps its keys in order, which a map would not.
type object []member

type member struct {
	key   string
	value any
}

func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		key, err := json.Marshal(m.key)
		if err != nil {
			return nil, err
		}
		value, err := json.Marshal(m.value)
		if err != nil {
			return nil, err
		}
		b.Write(key)
		b.WriteByte(':')
		b.Write(value)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// nameText is a name: no control character, no blank at its ends, not too long.
const nameText = `^[^\s\p{Cc}]([^\p{Cc}]*[^\s\p{Cc}])?$`

// dotlessText is a name of a part or a port.
const dotlessText = `^[^\s\p{Cc}.]([^\p{Cc}.]*[^\s\p{Cc}.])?$`

func schemaOf(sh shape) object {
	switch sh.kind {
	case "number", "integer":
		return numberSchema(sh)
	case "format":
		return object{{"const", Format}}
	case "text":
		return object{{"type", "string"}, {"maxLength", maxName}}
	case "name":
		return object{{"type", "string"}, {"maxLength", maxName}, {"pattern", nameText}}
	case "reference":
		return object{{"type", "string"}, {"pattern", `^[^.]+\..+$`}}
	case "choice":
		return object{{"enum", sh.words}}
	case "flag":
		return object{{"type", "boolean"}}
	case "list":
		return listSchema(sh)
	case "either":
		var any []object
		for _, one := range sh.either {
			any = append(any, schemaOf(one))
		}
		return object{{"anyOf", any}}
	}
	return mappingSchema(sh)
}

func numberSchema(sh shape) object {
	o := object{{"type", sh.kind}}
	if sh.bound.above {
		o = append(o, member{"exclusiveMinimum", sh.bound.least})
	} else {
		o = append(o, member{"minimum", sh.bound.least})
	}
	return append(o, member{"maximum", sh.bound.most})
}

func listSchema(sh shape) object {
	if sh.least == 0 {
		return object{{"type", []string{"array", "null"}}, {"items", schemaOf(*sh.each)}, {"maxItems", sh.most}}
	}
	return object{{"type", "array"}, {"items", schemaOf(*sh.each)}, {"minItems", sh.least}, {"maxItems", sh.most}}
}

func mappingSchema(sh shape) object {
	if sh.kind == "register" {
		text := nameText
		if sh.lay {
			text = dotlessText
		}
		return object{
			{"type", []string{"object", "null"}},
			{"maxProperties", maxEntries},
			{"propertyNames", object{{"maxLength", maxName}, {"pattern", text}}},
			{"additionalProperties", schemaOf(*sh.each)},
		}
	}
	keys, must := object{}, []string{}
	for _, k := range sh.keys {
		one := schemaOf(k.shape)
		keys = append(keys, member{k.name, append(object{{"description", k.doc}}, one...)})
		if k.must {
			must = append(must, k.name)
		}
	}
	if sh.kind == "one of" {
		return object{{"type", "object"}, {"properties", keys}, {"additionalProperties", false}, {"minProperties", 1}, {"maxProperties", 1}}
	}
	types := any([]string{"object", "null"})
	if len(must) > 0 {
		types = "object"
	}
	return object{{"type", types}, {"properties", keys}, {"required", must}, {"additionalProperties", false}}
}

// The schema in the package is the one the reader's keys make.
func TestSchemaIsMadeOfTheKeys(t *testing.T) {
	made := append(object{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"title", "A plan of coolant tubes, format 1"},
		{"description", "Lengths are in the file's units, angles in degrees, volumes in litres. Bounds on lengths are in mm."},
	}, schemaOf(planKeys.shape())...)
	raw, err := json.Marshal(made)
	if err != nil {
		t.Fatal(err)
	}
	var want bytes.Buffer
	if err := json.Indent(&want, raw, "", "  "); err != nil {
		t.Fatal(err)
	}
	want.WriteByte('\n')
	if *update {
		if err := os.WriteFile("plan.schema.json", want.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if !bytes.Equal(want.Bytes(), Schema()) {
		t.Error("plan.schema.json is not what the keys make; run go test ./route/planfile -update and read the diff")
	}
}
