package cutlist_test

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"os"
	"testing"

	"tubewright/cutlist"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/planfile"
)

var update = flag.Bool("update", false, "write the golden files anew: read the difference before you commit it")

// read gives the plan of a file in testdata.
func read(t testing.TB, file string) route.Plan {
	t.Helper()
	data, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	return parse(t, file, data)
}

func parse(t testing.TB, file string, data []byte) route.Plan {
	t.Helper()
	plan, _, err := planfile.Read(file, data)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return plan
}

// built solves and builds a plan.
func built(t testing.TB, plan route.Plan) cutlist.List {
	t.Helper()
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		t.Fatalf("find.Solve: %v", err)
	}
	list, err := cutlist.Build(context.Background(), plan, sol)
	if err != nil {
		t.Fatalf("Build: %v", err)
	}
	return list
}

func answer(t testing.TB, list cutlist.List) []byte {
	t.Helper()
	text, err := list.JSON()
	if err != nil {
		t.Fatalf("JSON: %v", err)
	}
	return text
}

// golden compares with a file in testdata.
func golden(t *testing.T, file string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile("testdata/"+file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs; accept with: go test ./cutlist -update, then read the difference\ngot:\n%s", file, got)
	}
}

// The figures are those of "Worked by hand" and of the answer in the
// description of the plan format. By hand: stops (106, 100, 50) and
// (250, 244, 50); 144 + 144 less two setbacks of 32 plus an arc of 16π.
func TestWorkedByHand(t *testing.T) {
	text := answer(t, built(t, read(t, "worked.plan.yaml")))
	golden(t, "worked.json", text)
	var got map[string]any
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	var want map[string]any
	const published = `{"format": 1, "draft": true,
 "tubes": [{"run": "pump-to-plate", "tube": "petg-16-12", "way": "one bend",
            "start": ["socket-16"], "end": ["socket-16"],
            "corners": [[106, 100, 50], [250, 100, 50], [250, 244, 50]],
            "cut": {"aim": 273.27, "shortest": 268.27, "longest": 274.27}, "blank": 305.27,
            "bends": [{"turn": 90, "roll": 0, "radius": 32, "start": 111.5, "middle": 136.63, "end": 161.77,
                       "form_to": 92.35, "heat": 82.27}],
            "straights": [111.5, 111.5]}],
 "bars":  [{"tube": "petg-16-12", "length": 500, "from": "stock", "pieces": [{"run": "pump-to-plate", "length": 305.27}], "left": 193.73}],
 "proof": [{"tube": "petg-16-12", "cost": 7.4, "bound": 7.4, "proven": true}]}`
	if err := json.Unmarshal([]byte(published), &want); err != nil {
		t.Fatal(err)
	}
	holds(t, "", got, want)
	sockets := map[string]any{"item": "socket-16", "need": 2.0, "on_hand": 4.0, "buy": 0.0, "price": 0.0}
	holds(t, ".buy[1]", got["buy"].([]any)[1], sockets)
}

// holds tells where got lacks or changes what want has; got may have more keys.
func holds(t *testing.T, at string, got, want any) {
	t.Helper()
	switch w := want.(type) {
	case map[string]any:
		g, _ := got.(map[string]any)
		for key, value := range w {
			holds(t, at+"."+key, g[key], value)
		}
	case []any:
		g, _ := got.([]any)
		if len(g) != len(w) {
			t.Errorf("%s: got %v, want %v", at, got, want)
			return
		}
		for i := range w {
			holds(t, at+"[]", g[i], w[i])
		}
	default:
		if got != want {
			t.Errorf("%s: got %v, want %v", at, got, want)
		}
	}
}
