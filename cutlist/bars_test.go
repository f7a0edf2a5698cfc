package cutlist_test

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"tubewright/cutlist"
	"tubewright/cutlist/nest"
	"tubewright/route"
	"tubewright/route/check"
	"tubewright/route/find"
)

// text writes bars shortly: "stock 500: a1 299 b1* 100, left 97 keep".
func text(bars []cutlist.Bar) []string {
	var lines []string
	for _, b := range bars {
		line := fmt.Sprintf("%s %g:", b.From, b.Length)
		for _, p := range b.Pieces {
			spare := ""
			if p.Spare {
				spare = "*"
			}
			line += fmt.Sprintf(" %s%d%s %g", p.Run, p.Machine, spare, p.Length)
		}
		line += fmt.Sprintf(", left %g", b.Left)
		if b.Keep {
			line += " keep"
		}
		lines = append(lines, line)
	}
	return lines
}

// A straight run of length D has a blank of D − 2·0.5 + 2 = D + 1, a bent one
// D + 31; every piece costs a kerf of 1 besides.
func TestBars(t *testing.T) {
	tests := []struct {
		name   string
		make   func(t *testing.T, b *bench)
		want   []string
		source string
	}{
		{"one straight", func(t *testing.T, b *bench) {
			b.stock(500, 7.4, 0)
			b.add(t, "a", 299, false)
		}, []string{"stock 500: a1 300, left 199 keep"}, "500 − 300 − 1"},
		{"ends flush", func(t *testing.T, b *bench) {
			b.stock(500, 7.4, 0)
			b.add(t, "a", 248.5, false)
			b.add(t, "b", 248.5, false)
		}, []string{"stock 500: a1 249.5 b1 249.5, left 0"}, "249.5 + 1 + 249.5 = 500: the second needs no kerf"},
		{"less than a kerf left", func(t *testing.T, b *bench) {
			b.stock(500, 7.4, 0)
			b.add(t, "a", 498.5, false)
		}, []string{"stock 500: a1 499.5, left 0"}, "half a millimetre is used up by the saw"},
		{"offcut first", func(t *testing.T, b *bench) {
			b.stock(500, 7.4, 0)
			b.plan.Offcuts = []route.Offcuts{{Tube: "petg-16-12", Lengths: []float64{310, 225.5}}}
			b.add(t, "long", 400, false)
			b.add(t, "short", 219, false)
		}, []string{"offcut 225.5: short1 220, left 4.5", "stock 500: long1 401, left 98"}, "the shorter offcut holds it"},
		{"bent blank", func(t *testing.T, b *bench) {
			b.stock(500, 7.4, 0)
			b.add(t, "a", 274.27, true)
		}, []string{"stock 500: a1 305.27, left 193.73 keep"}, "the plan format's example"},
		{"machines and spares", func(t *testing.T, b *bench) {
			b.stock(1000, 12.9, 0)
			b.plan.Build = 2
			b.plan.Spares = route.Spares{Bent: 1, Straight: 1}
			b.add(t, "bent", 200, true)
			b.add(t, "low", 99, false)
			b.add(t, "high", 119, false)
		}, []string{
			"stock 1000: bent1 231 bent2 231 bent0* 231 high1 120 high2 120, left 62",
			"stock 1000: high0* 120 low1 100 low2 100, left 677 keep",
		}, "3·231 + 2·120 + 5 and 120 + 2·100 + 3: no other two bars leave more in one piece"},
		{"dearer bar is shorter", func(t *testing.T, b *bench) {
			b.stock(400, 9, 0)
			b.stock(500, 7, 0)
			b.add(t, "a", 299, false)
		}, []string{"stock 500: a1 300, left 199 keep"}, "7 is less than 9"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			b := newBench()
			tt.make(t, b)
			if got := text(b.list(t).Bars); !reflect.DeepEqual(got, tt.want) {
				t.Errorf("Build: bars\n%s\nwant\n%s\n(%s)", strings.Join(got, "\n"), strings.Join(tt.want, "\n"), tt.source)
			}
		})
	}
}

func TestStockTooShort(t *testing.T) {
	b := newBench()
	b.stock(500, 7.4, 0)
	b.plan.Build = 3
	b.add(t, "long", 549, false)
	b.add(t, "short", 99, false)
	l := b.list(t)
	got := told(l, check.StockTooShort)
	if len(got) != 1 || got[0].Measure != 50 || got[0].Unit != "mm" || got[0].Runs[0] != "long" || got[0].Severity != check.Error {
		t.Fatalf("findings %+v", got)
	}
	for _, word := range []string{"long", "550.0 mm", "500.0 mm", "50.0 mm", "petg-16-12"} {
		if !strings.Contains(got[0].What, word) {
			t.Errorf("%q lacks %q", got[0].What, word)
		}
	}
	if want := []string{"stock 500: short1 100 short2 100 short3 100, left 197 keep"}; !reflect.DeepEqual(text(l.Bars), want) {
		t.Errorf("bars %v, want %v", text(l.Bars), want)
	}
}

func TestStockTooFew(t *testing.T) {
	b := newBench()
	b.stock(500, 7.4, 1)
	b.add(t, "a", 299, false)
	b.add(t, "b", 289, false)
	b.add(t, "c", 199, false)
	l := b.list(t)
	got := told(l, check.StockTooFew)
	if len(got) != 1 || got[0].Measure != 1 || !reflect.DeepEqual(got[0].Runs, []string{"a"}) || !strings.Contains(got[0].What, "1 piece uncut, 300.0 mm") {
		t.Fatalf("findings %+v", got)
	}
	if want := []string{"stock 500: b1 290 c1 200, left 8"}; !reflect.DeepEqual(text(l.Bars), want) {
		t.Errorf("bars %v, want %v", text(l.Bars), want)
	}
	if p := l.Proof[0]; p.Proven || p.Cost != 7.4 {
		t.Errorf("proof %+v of a plan that leaves a piece uncut", p)
	}
}

// One bar of 500 holds 331 and 120 with their kerfs; a spare of 120 beside them
// would need 573. What a machine needs is cut, though it is the longest.
func TestNeededBeforeSpares(t *testing.T) {
	tests := []struct {
		name     string
		most     int
		straight int
		want     []string
		uncut    float64
		runs     []string
	}{
		{"the spare stays", 1, 1, []string{"stock 500: bent1 331 low1 120, left 47"}, 1, []string{"low"}},
		{"some spares stay", 2, 6, []string{
			"stock 500: bent1 331 low1 120, left 47", "stock 500: low0* 120 low0* 120 low0* 120 low0* 120, left 16",
		}, 2, []string{"low"}},
	}
	for _, tt := range tests {
		b := newBench()
		b.stock(500, 7.4, tt.most)
		b.plan.Spares.Straight = tt.straight
		b.add(t, "bent", 300, true)
		b.add(t, "low", 119, false)
		l := b.list(t)
		if got := text(l.Bars); !reflect.DeepEqual(got, tt.want) {
			t.Errorf("%s: bars %q, want %q", tt.name, got, tt.want)
		}
		got := told(l, check.StockTooFew)
		if len(got) != 1 || got[0].Measure != tt.uncut || !reflect.DeepEqual(got[0].Runs, tt.runs) || !strings.HasPrefix(got[0].What, "The limits") {
			t.Errorf("%s: findings %+v", tt.name, got)
		}
	}
}

// Where limits leave even a needed piece uncut, no spare is cut.
func TestNoSparesWhileANeededPieceLacks(t *testing.T) {
	b := newBench()
	b.stock(500, 7.4, 1)
	b.plan.Spares.Straight = 1
	b.add(t, "long", 449, false)
	b.add(t, "bent", 300, true)
	l := b.list(t)
	if got, want := text(l.Bars), []string{"stock 500: bent1 331, left 168 keep"}; !reflect.DeepEqual(got, want) {
		t.Errorf("bars %q, want %q", got, want)
	}
	if p := l.Proof[0]; p.Uncut != 2 || p.Proven {
		t.Errorf("proof %+v; want the long piece and the spare uncut", p)
	}
}

func TestProofWords(t *testing.T) {
	for want, p := range map[string]cutlist.Proof{
		"38.70, the cheapest possible: proven":               {Cost: 38.7, Bound: 38.7, Priced: true, Proven: true},
		"38.70, within 1.10 of the cheapest possible":        {Cost: 38.7, Bound: 37.6, Priced: true},
		"3 bars to buy, within 1 bar of the fewest possible": {Cost: 3, Bound: 2},
	} {
		if got := p.Words(); got != want {
			t.Errorf("%+v reads %q, want %q", p, got, want)
		}
	}
}

// Each kind of tube is cut from its own stock; the proofs go by name.
func TestTwoKindsOfTube(t *testing.T) {
	b := newBench()
	b.stock(500, 7.4, 0)
	b.add(t, "a", 299, false)
	glass := b.plan.Tubes[0]
	glass.Name = "glass-16-12"
	b.plan.Tubes = append(b.plan.Tubes, glass)
	b.plan.Tube = glass.Name
	b.stock(800, 20, 0)
	b.add(t, "b", 299, false)
	l := b.list(t)
	want := []cutlist.Proof{{Tube: "glass-16-12", Cost: 20, Bound: 20, Priced: true, Proven: true}, {Tube: "petg-16-12", Cost: 7.4, Bound: 7.4, Priced: true, Proven: true}}
	if !reflect.DeepEqual(l.Proof, want) {
		t.Errorf("proof %+v, want %+v", l.Proof, want)
	}
	if len(l.Bars) != 2 || l.Bars[0].Tube != "glass-16-12" || l.Bars[1].Tube != "petg-16-12" {
		t.Errorf("bars %+v", l.Bars)
	}
}

func TestRunWithoutWay(t *testing.T) {
	b := newBench()
	b.stock(500, 7.4, 0)
	b.add(t, "a", 299, false)
	b.sol.Runs[0].Chosen = -1
	b.sol.Runs[0].Problem = errors.New("made up")
	l := b.list(t)
	if len(l.Tubes) != 0 || len(l.Bars) != 0 || len(l.Proof) != 0 {
		t.Errorf("a run without a way gives %+v, %+v, %+v", l.Tubes, l.Bars, l.Proof)
	}
	if got := told(l, check.NoWay); len(got) != 1 {
		t.Errorf("findings %+v; want no-way", l.Findings)
	}
}

func TestEmptyPlan(t *testing.T) {
	l, err := cutlist.Build(context.Background(), route.Defaults(), find.Solution{})
	if err != nil || len(l.Bars)+len(l.Tubes)+len(l.Buy) != 0 || l.Draft {
		t.Errorf("an empty plan gives %+v, %v", l, err)
	}
}

func TestBuildErrors(t *testing.T) {
	b := newBench()
	b.stock(500, 7.4, 0)
	b.add(t, "a", 299, false)
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := cutlist.Build(gone, b.plan, b.sol); !errors.Is(err, context.Canceled) {
		t.Errorf("a cancelled Build gives %v", err)
	}
	b.plan.Build = 20_000
	var many *nest.TooManyError
	if _, err := cutlist.Build(context.Background(), b.plan, b.sol); !errors.As(err, &many) {
		t.Errorf("twenty thousand machines give %v", err)
	}
}

func TestLetters(t *testing.T) {
	b := newBench()
	b.stock(1000, 1, 0)
	for i := range 28 {
		b.add(t, fmt.Sprintf("run-%d", i), 99, false)
	}
	l := b.list(t)
	for i, want := range map[int]string{0: "A", 1: "B", 25: "Z", 26: "AA", 27: "AB"} {
		if got := l.Tubes[i].Letter; got != want {
			t.Errorf("tube %d has letter %s, want %s", i, got, want)
		}
	}
}

// A run without a way keeps its letter for the day it has one.
func TestLettersDoNotShift(t *testing.T) {
	b := newBench()
	b.stock(1000, 1, 0)
	for i := range 3 {
		b.add(t, fmt.Sprintf("run-%d", i), 99, false)
	}
	b.sol.Runs[1].Chosen = -1
	l := b.list(t)
	if len(l.Tubes) != 2 || l.Tubes[0].Letter != "A" || l.Tubes[1].Letter != "C" {
		t.Errorf("tubes %+v, want letters A and C", l.Tubes)
	}
	if got := l.Uncounted(); len(got) != 1 || got[0] != "run-1" {
		t.Errorf("uncounted %q, want run-1 alone", got)
	}
}
