package cutlist_test

import (
	"os"
	"strings"
	"testing"

	"tubewright/route/check"
)

func TestAssumedStock(t *testing.T) {
	b := newBench()
	b.add(t, "a", 299, false)
	l := b.list(t)
	got := told(l, check.StockAssumed)
	if len(got) != 1 || got[0].Severity != check.Note || !strings.Contains(got[0].What, "500.0 mm and 1000.0 mm") {
		t.Fatalf("findings %+v", got)
	}
	if p := l.Proof[0]; p.Cost != 1 || p.Bound != 1 || !p.Proven {
		t.Errorf("proof %+v; want one bar, proven", p)
	}
	if l.Buy[0].Note == "" || l.Buy[0].Price != 0 {
		t.Errorf("buying %+v; want a note that the price is not known", l.Buy[0])
	}
}

// The assumed lengths are those of two rows of trade practice (common practice).
func TestAssumedLengthsAreTheUsualOnes(t *testing.T) {
	data, err := os.ReadFile("testdata/stock_lengths.csv")
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, line := range strings.Split(string(data), "\n") {
		if row := strings.Split(line, ","); row[0] == "TP-021" || row[0] == "TP-022" {
			want = append(want, row[3])
		}
	}
	b := newBench()
	b.add(t, "short", 299, false)
	b.add(t, "long", 599, false)
	what := told(b.list(t), check.StockAssumed)[0].What
	if len(want) != 2 || !strings.Contains(what, want[0]+".0 mm and "+want[1]+".0 mm") {
		t.Errorf("assumed: %q; usual: %v", what, want)
	}
}

func TestAssumedPrice(t *testing.T) {
	b := newBench()
	b.stock(500, 8, 0)
	b.stock(1000, 12, 0)
	b.stock(250, 0, 0)
	b.add(t, "a", 199, false)
	l := b.list(t)
	if got := told(l, check.StockAssumed); len(got) != 1 || !strings.Contains(got[0].What, "4.00") {
		t.Fatalf("findings %+v; want 250 mm at 8/500 a millimetre", got)
	}
	if l.Proof[0].Cost != 4 {
		t.Errorf("proof %+v; want the short bar at 4", l.Proof[0])
	}
}
