package loop_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"tubewright/route/loop"
)

// indexRows are the rows of the table of trade practice that the anodic index
// is taken from, by metal.
var indexRows = map[string]string{"copper": "TP-050", "brass": "TP-051", "nickel": "TP-052"}

// limitRow is the row of the largest difference.
const limitRow = "TP-054"

// leftOut lists the rows of the table that say nothing this package does, each
// with the reason.
var leftOut = map[string]string{
	"TP-043": "no number; TestWorstMetals has aluminium among copper",
	"TP-044": standardPotential,
	"TP-045": standardPotential,
	"TP-046": standardPotential,
	"TP-048": standardPotential,
	"TP-049": standardPotential,
}

const standardPotential = "a standard electrode potential knows no oxide film; the anodic index is what is gone by"

// trade reads the table of trade practice: a value for each row.
func trade(t *testing.T) map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/reference/09_trade_practice.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close() //nolint:errcheck // only read from
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	values := map[string]string{}
	for _, row := range rows[1:] {
		values[row[0]] = row[3]
	}
	return values
}

func TestAnodicIndexIsTheTables(t *testing.T) {
	rows := trade(t)
	take := func(id string) float64 {
		v, err := strconv.ParseFloat(rows[id], 64)
		if err != nil {
			t.Errorf("row %s: %v", id, err)
		}
		delete(rows, id)
		return v
	}
	for metal, id := range indexRows {
		if got, ok := loop.AnodicIndex(metal); !ok || got != take(id) {
			t.Errorf("AnodicIndex(%q) = %v, %v, which is not what %s says", metal, got, ok, id)
		}
	}
	if want := take(limitRow); loop.WetLimit != want {
		t.Errorf("limit %v V, want %v by %s", loop.WetLimit, want, limitRow)
	}
	for id := range rows {
		if leftOut[id] == "" {
			t.Errorf("row %s is neither used nor left out with a reason", id)
		}
	}
	for id := range leftOut {
		if _, ok := rows[id]; !ok {
			t.Errorf("there is no row %s to leave out", id)
		}
	}
}

// Aluminium is far from copper, in either spelling (TP-043: not mixed in one loop).
func TestAluminiumIsFarFromCopper(t *testing.T) {
	copper, _ := loop.AnodicIndex("copper")
	for _, name := range []string{"aluminium", "Aluminum"} { //nolint:misspell // both spellings
		if v, ok := loop.AnodicIndex(name); !ok || v-copper <= 3*loop.WetLimit {
			t.Errorf("AnodicIndex(%q) = %v, %v: not far from copper", name, v, ok)
		}
	}
}
