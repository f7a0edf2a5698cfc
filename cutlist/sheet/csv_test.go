package sheet_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tubewright/cutlist"
	"tubewright/cutlist/sheet"
)

type csvWriter func(io.Writer, cutlist.List) error

// read gives a table read back, its heads as keys.
func read(t interface{ Fatal(...any) }, write csvWriter, l cutlist.List) (rows []map[string]string, raw string) {
	var out bytes.Buffer
	if err := write(&out, l); err != nil {
		t.Fatal(err)
	}
	all, err := csv.NewReader(bytes.NewReader(out.Bytes())).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range all[1:] {
		one := map[string]string{}
		for i, head := range all[0] {
			one[head] = row[i]
		}
		rows = append(rows, one)
	}
	return rows, out.String()
}

func TestCutsCSVHoldsTheTubes(t *testing.T) {
	l := stressList(t)
	rows, raw := read(t, sheet.CutsCSV, l)
	if len(rows) != len(l.Tubes) {
		t.Fatalf("%d rows, want %d", len(rows), len(l.Tubes))
	}
	for i, tube := range l.Tubes {
		got := rows[i]
		want := map[string]string{
			"letter": tube.Letter, "run": tube.Run, "tube": "petg-16-12", "way": tube.Way.Name, "bends": strconv.Itoa(i % 13),
			"aim_mm": fmt.Sprintf("%.2f", tube.Cut.Aim), "shortest_mm": fmt.Sprintf("%.2f", tube.Cut.Shortest),
			"longest_mm": fmt.Sprintf("%.2f", tube.Cut.Longest), "blank_mm": fmt.Sprintf("%.2f", tube.Cut.Blank), "start": "socket-16", "end": "socket-16",
		}
		for key, value := range want {
			if got[key] != value {
				t.Errorf("row %d: %s is %q, want %q", i, key, got[key], value)
			}
		}
	}
	if n := strings.Count(raw, "\r\n"); n != len(rows)+1 || strings.Count(raw, "\n") != n {
		t.Errorf("%d lines end in CRLF of %d", n, strings.Count(raw, "\n"))
	}
}

func TestBarsCSVHoldsThePieces(t *testing.T) {
	l := list(t, smallPlan())
	rows, _ := read(t, sheet.BarsCSV, l)
	n := 0
	for i, b := range l.Bars {
		at := 0.0
		for _, p := range b.Pieces {
			at += p.Length
			got := rows[n]
			if got["bar"] != strconv.Itoa(i+1) || got["run"] != p.Run || got["length_mm"] != fmt.Sprintf("%.2f", p.Length) || got["saw_at_mm"] != fmt.Sprintf("%.2f", at) {
				t.Errorf("row %d is %v, want piece %+v sawn at %.2f", n, got, p, at)
			}
			at += l.Plan.Saw.Kerf
			n++
		}
		if got := rows[n]; got["piece"] != "left" || got["length_mm"] != fmt.Sprintf("%.2f", b.Left) || got["keep"] != map[bool]string{true: "yes", false: "no"}[b.Keep] {
			t.Errorf("row %d is %v, want %.2f left of bar %d", n, got, b.Left, i+1)
		}
		n++
	}
	if n != len(rows) {
		t.Errorf("%d rows, want %d", len(rows), n)
	}
}

func TestBuyCSVHoldsTheList(t *testing.T) {
	l := stressList(t)
	rows, _ := read(t, sheet.BuyCSV, l)
	for i, it := range l.Buy {
		got := rows[i]
		if got["item"] != it.Item || got["need"] != strconv.Itoa(it.Need) || got["on_hand"] != strconv.Itoa(it.OnHand) ||
			got["buy"] != strconv.Itoa(it.Buy) || got["price"] != fmt.Sprintf("%.2f", it.Price) || got["note"] != it.Note {
			t.Errorf("row %d is %v, want %+v", i, got, it)
		}
	}
}

func TestCSVRunsNothingInASpreadsheet(t *testing.T) {
	tests := []struct{ name, want string }{
		{`=HYPERLINK("x")`, `'=HYPERLINK("x")`},
		{"+1+1", "'+1+1"},
		{"-2+3", "'-2+3"},
		{"@SUM(A1)", "'@SUM(A1)"},
		{"  =1", "'  =1"},
		{"\t=1", "' =1"},
		{"＝1", "'＝1"},
		{"-15.5", "-15.5"}, // a number stays one
		{"pump, left \"quoted\"", "pump, left \"quoted\""},
		{"two\r\nlines", "two  lines"},
		{"a\x00b\xff", "ab\ufffd"},
		{"", ""},
	}
	for _, tt := range tests {
		rows, _ := read(t, sheet.BuyCSV, cutlist.List{Buy: []cutlist.Item{{Item: tt.name}}})
		if got := rows[0]["item"]; got != tt.want {
			t.Errorf("%q is written %q, want %q", tt.name, got, tt.want)
		}
	}
}

// Whatever a name holds, a row stays a row and no cell starts a formula.
func TestCSVSurvivesAnyName(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name, note := rapid.String().Draw(t, "name"), rapid.StringMatching(`[=+@\-, "\n\r\t;']{0,6}[a-z]*`).Draw(t, "note")
		rows, _ := read(t, sheet.BuyCSV, cutlist.List{Buy: []cutlist.Item{{Item: name, Note: note, Need: 3}}})
		if len(rows) != 1 || rows[0]["need"] != "3" {
			t.Fatalf("%q, %q: rows %v", name, note, rows)
		}
		for _, cell := range rows[0] {
			if runs(cell) {
				t.Fatalf("the cell %q would run", cell)
			}
		}
	})
}

type fullDisk struct{}

var errFull = errors.New("disk full")

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

func TestFailedWritesAreTold(t *testing.T) {
	l := stressList(t)
	for name, write := range map[string]csvWriter{
		"cuts": sheet.CutsCSV, "bars": sheet.BarsCSV, "buy": sheet.BuyCSV,
		"pdf": func(w io.Writer, _ cutlist.List) error { return sheet.PDF(w, cutlist.List{}, sheet.Options{}) },
	} {
		if err := write(fullDisk{}, l); !errors.Is(err, errFull) {
			t.Errorf("%s: got %v, want %v", name, err, errFull)
		}
	}
}

// runs reports whether a spreadsheet would take a cell for a formula.
func runs(cell string) bool {
	first := strings.TrimLeft(cell, " ")
	_, err := strconv.ParseFloat(cell, 64)
	return err != nil && first != "" && strings.ContainsAny(first[:1], "=+-@")
}
