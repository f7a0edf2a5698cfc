package sheet_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"tubewright/assets"
	"tubewright/cutlist"
	"tubewright/cutlist/sheet"
)

// compare is a script for Python, whose csv module is another reader of RFC
// 4180 than ours: it holds the three tables against the JSON answer, prints what
// differs, and ends with "same" when nothing does.
const compare = `
import csv, json, sys
stem = sys.argv[1]
def table(end):
    with open(stem + end, newline='', encoding='utf-8') as f:
        return list(csv.DictReader(f, strict=True))
with open(stem + '.json', encoding='utf-8') as f:
    answer = json.load(f)
faults = []
def same(what, got, want):
    if got != want:
        faults.append('%s is %r, want %r' % (what, got, want))
def number(what, got, want):
    same(what, round(float(got) * 100), round(want * 100))
def rows(what, got, want):
    same('rows of ' + what, len(got), len(want))
    return zip(got, want)
for r, t in rows('cuts', table('-cuts.csv'), answer['tubes']):
    for key in ('letter', 'run', 'tube', 'way'):
        same(key, r[key], t[key])
    same('bends', int(r['bends']), len(t['bends']))
    number('aim', r['aim_mm'], t['cut']['aim'])
    number('shortest', r['shortest_mm'], t['cut']['shortest'])
    number('longest', r['longest_mm'], t['cut']['longest'])
    number('blank', r['blank_mm'], t['blank'])
pieces = []
for n, b in enumerate(answer['bars']):
    for p in b['pieces']:
        pieces.append((str(n + 1), p['run'], p['length'], 'yes' if p.get('spare') else 'no'))
    pieces.append((str(n + 1), '', b['left'], ''))
for r, p in rows('bars', table('-bars.csv'), pieces):
    same('bar', r['bar'], p[0])
    same('run', r['run'], p[1])
    number('length', r['length_mm'], p[2])
    same('spare', r['spare'], p[3])
for r, i in rows('buying', table('-buying.csv'), answer['buy']):
    same('item', r['item'], i['item'])
    same('counts', [int(r[k]) for k in ('need', 'on_hand', 'buy')], [i[k] for k in ('need', 'on_hand', 'buy')])
    number('price', r['price'], i['price'])
print('\n'.join(faults) or 'same')
`

// inPython runs the script on the files written to a folder.
func inPython(t testing.TB, stem string) string {
	t.Helper()
	out, err := exec.Command("python3", "-c", compare, stem).CombinedOutput()
	if err != nil {
		t.Fatalf("python3 is needed to read the tables a second time (bash cmd/test.sh installs it): %v: %s", err, out)
	}
	return string(bytes.TrimSpace(out))
}

// tables writes the three tables and the answer, and gives what their paths
// begin with.
func tables(t testing.TB, l cutlist.List) string {
	t.Helper()
	stem := filepath.Join(t.TempDir(), "plan")
	for end, write := range map[string]csvWriter{"-cuts.csv": sheet.CutsCSV, "-bars.csv": sheet.BarsCSV, "-buying.csv": sheet.BuyCSV} {
		overwrite(t, stem+end, func(w io.Writer) error { return write(w, l) })
	}
	overwrite(t, stem+".json", func(w io.Writer) error {
		data, err := l.JSON()
		return errors.Join(err, json.NewEncoder(w).Encode(json.RawMessage(data)))
	})
	return stem
}

func TestAnotherReaderFindsTheAnswerInTheTables(t *testing.T) {
	lists := map[string]cutlist.List{"stress": stressList(t), "small": list(t, smallPlan())}
	for _, name := range assets.Demos() {
		lists[name] = demo(t, name)
	}
	for name, l := range lists {
		if got := inPython(t, tables(t, l)); got != "same" {
			t.Errorf("%s: %s", name, got)
		}
	}
}

// The comparison must be able to fail.
func TestAnotherReaderSeesAFault(t *testing.T) {
	l := list(t, smallPlan())
	stem := tables(t, l)
	l.Tubes[0].Cut.Aim += 0.01
	overwrite(t, stem+"-cuts.csv", func(w io.Writer) error { return sheet.CutsCSV(w, l) })
	if got := inPython(t, stem); got == "same" {
		t.Error("a length that is 0.01 mm off passes")
	}
}

// Names that are fuzzed come out of Python's reader as they went in, or with
// the apostrophe that makes them harmless.
func TestAnotherReaderSeesNoFormula(t *testing.T) {
	const dump = "import csv,json,sys;print(json.dumps([r[0] for r in csv.reader(open(sys.argv[1],newline='',encoding='utf-8'),strict=True)][1:]))"
	names := []string{"=1+1", "../x", "/etc", "con", "a,b", "\"", "'", "@cmd|' /C x'!A0", "\u202e+2", "ряд; Ω"}
	var l cutlist.List
	for seed := range 300 {
		names = append(names, rapid.String().Example(seed))
	}
	for _, name := range names {
		l.Buy = append(l.Buy, cutlist.Item{Item: name})
	}
	path := filepath.Join(t.TempDir(), "buy.csv")
	overwrite(t, path, func(w io.Writer) error { return sheet.BuyCSV(w, l) })
	out, err := exec.Command("python3", "-c", dump, path).Output()
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	if err := json.Unmarshal(out, &got); err != nil || len(got) != len(names) {
		t.Fatalf("%d cells of %d came back (%v)", len(got), len(names), err)
	}
	for i, cell := range got {
		if runs(cell) {
			t.Errorf("%q came back as %q, which would run", names[i], cell)
		}
	}
}

// overwrite writes a file anew.
func overwrite(t testing.TB, path string, write func(io.Writer) error) {
	t.Helper()
	var out bytes.Buffer
	if err := write(&out); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
}
