package planfile_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"
	"pgregory.net/rapid"

	"tubewright/assets"
	"tubewright/route/planfile"
)

func planSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(planfile.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("plan.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("plan.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// values gives a YAML text as the plain values the schema is about.
func values(text []byte) (any, error) {
	var v any
	if err := yaml.Unmarshal(text, &v); err != nil {
		return nil, err
	}
	return v, nil
}

func TestSchemaTakesEveryGoodPlan(t *testing.T) {
	schema := planSchema(t)
	texts := map[string][]byte{}
	for _, name := range []string{"full", "by-hand"} {
		text, err := os.ReadFile("testdata/" + name + planfile.Ending)
		if err != nil {
			t.Fatal(err)
		}
		texts[name] = text
	}
	for _, name := range assets.Demos() {
		if text, ok := assets.Demo(name); ok {
			texts[name] = text
		}
	}
	for name, text := range texts {
		v, err := values(text)
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(v); err != nil {
			t.Errorf("the schema refuses %s: %v", name, err)
		}
	}
}

func TestSchemaTakesWhatWriteGives(t *testing.T) {
	schema := planSchema(t)
	rapid.Check(t, func(t *rapid.T) {
		text, _, err := planfile.Write(anyPlan(t), nil)
		if err != nil {
			t.Fatal(err)
		}
		v, err := values(text)
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(v); err != nil {
			t.Fatalf("the schema refuses a written plan: %v\n%s", err, text)
		}
	})
}

// beyond are the broken plans whose fault no schema can see: what one value
// asks of another, what YAML allows, and how a number is spelt.
var beyond = []string{
	"no-such-tube", "no-such-fitting", "no-such-kind", "same-corner-twice", "aliases", "alias-bomb",
	"own-tube-incomplete", "own-fitting-incomplete", "no-tube", "two-documents", "control-character", "merge-key", "many-at-once",
}

func TestSchemaRefusesBrokenPlans(t *testing.T) {
	schema := planSchema(t)
	files, err := filepath.Glob(filepath.Join(broken, "*"+planfile.Ending))
	if err != nil || len(files) == 0 {
		t.Fatalf("no broken plans (%v)", err)
	}
	refused := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		v, err := values(text)
		if err != nil {
			continue // not even YAML, or an anchor that would unfold
		}
		var no *jsonschema.ValidationError
		if err := schema.Validate(v); errors.As(err, &no) {
			refused++
			continue
		}
		_, name, _ := strings.Cut(strings.TrimSuffix(filepath.Base(file), planfile.Ending), "-")
		if !named(beyond, name) {
			t.Errorf("the schema takes %s (%v), and it is not among those no schema can refuse", name, err)
		}
	}
	if refused < 15 {
		t.Errorf("the schema refuses %d of %d broken plans, want 15 and more", refused, len(files))
	}
}

func named(names []string, name string) bool {
	for _, n := range names {
		if n == name {
			return true
		}
	}
	return false
}
