package budget_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"tubewright/bends"
	"tubewright/bends/budget"
)

// trade gives the value of a row of testdata/trade.csv.
func trade(t *testing.T, id string) float64 {
	t.Helper()
	file, err := os.Open("testdata/trade.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	for _, row := range rows {
		if row[0] == id {
			if v, err := strconv.ParseFloat(row[3], 64); err == nil {
				return v
			}
		}
	}
	t.Fatalf("no row %s (%v)", id, err)
	return 0
}

// A hand that marks and cuts to half a millimetre on a former known to half a
// millimetre makes the trade's test piece, one bend on the bending machine's
// former, within its tolerance of length 95 times in 100 or more (MT-076, MT-082).
func TestTradeTestPiece(t *testing.T) {
	tube := bends.Tube{OD: 15, ID: 13, Radius: trade(t, "MT-076") * 15}
	f, err := bends.Form(tube, bends.Table{Rows: []bends.Row{{Length: 200, Turn: 90, Radius: tube.Radius}}, Last: 200}.Path())
	if err != nil {
		t.Fatal(err)
	}
	j := table(budget.Errors{Cut: 0.5, Turn: 1.5, Radius: 0.5}, 200, bend(200, 90, 0))
	j.Tube = f
	j.Ends[1].Stop, j.Ends[1].Dir = f.Corners[2], vec{0, -1, 0}
	if sd := budget.Of(j).AsBent.Length; 1.96*sd > trade(t, "MT-082") || sd < 0.4 {
		t.Errorf("the leg comes out to ±%.2f mm, 95 times in 100; want at most %g, and no less than a cut", 1.96*sd, trade(t, "MT-082"))
	}
}

// The trim left by the trade (TP-014, low end) is enough: of a usual tube neither
// leg wants more in 99.7 of 100.
func TestTradeTrimIsEnough(t *testing.T) {
	hand := budget.Errors{Port: 1, Facing: 0.5, Cut: 0.5, Turn: 1.5, Roll: 2, Radius: 0.5}
	b := budget.Of(table(hand, 60, bend(60, 90, 0), bend(60, 90, 90)))
	for end, m := range b.Eased {
		if trim := trade(t, "TP-014"); 3*m.Length > trim+2.5 || m.Length == 0 {
			t.Errorf("end %d wants ±%.1f mm; the trim is %g, and the window 2.5", end, m.Length, trim)
		}
	}
}
