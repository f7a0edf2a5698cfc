package survey

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"tubewright/route"
)

// columns of the file, in the order they are written.
var columns = []string{"part", "port", "letter", "x_from", "x", "y_from", "y", "z_from", "z", "facing", "thread"}

// WriteCSV writes the survey to fill in: RFC 4180, a row of heads, one row for
// each port with the faces to measure from; the numbers are left empty. Lengths
// go in the plan's units.
func WriteCSV(w io.Writer, plan route.Plan) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	if err := out.Write(columns); err != nil {
		return fmt.Errorf("writing the survey: %w", err)
	}
	for _, g := range Groups(plan) {
		for _, r := range g.Rows {
			row := []string{harmless(r.Ref.Part), harmless(r.Ref.Port), r.Letter, string(r.From[0]), "", string(r.From[1]), "", string(r.From[2]), "", "", ""}
			if err := out.Write(row); err != nil {
				return fmt.Errorf("writing the survey: %w", err)
			}
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("writing the survey: %w", err)
	}
	return nil
}

// harmless keeps a name from being run as a formula: one that begins like one
// gets an apostrophe, which reading takes off again.
func harmless(name string) string {
	if name != "" && strings.ContainsRune("=+-@'", rune(name[0])) {
		return "'" + name
	}
	return name
}

// A RowError is one thing wrong in a filled-in survey.
type RowError struct {
	Line int // from 1
	What string
	Fix  string
}

func (e *RowError) Error() string { return fmt.Sprintf("line %d: %s", e.Line, e.What) }

// MaxBytes is the longest survey that is read.
const MaxBytes = 1 << 20

// ReadCSV reads a filled-in survey: rows whose numbers are all empty are left
// out. Commas or semicolons part the fields, whichever the first line has;
// between semicolons a number may have a decimal comma. The columns may stand in
// any order; facing, thread, letter and the faces may be missing: the faces are
// then those the survey sheet names. The error joins a *RowError for everything
// that is wrong.
func ReadCSV(r io.Reader, plan route.Plan) ([]Reading, error) {
	text, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("reading the survey: %w", err)
	}
	if len(text) > MaxBytes {
		return nil, &RowError{1, fmt.Sprintf("the file is longer than %d bytes", MaxBytes), "Take the file that was written for the plan."}
	}
	p := newParser(strings.TrimPrefix(string(text), "\ufeff"), plan)
	p.read()
	return p.readings, errors.Join(p.faults...)
}

// parser reads one file.
type parser struct {
	rows     *csv.Reader
	comma    bool // numbers have a decimal comma
	plan     route.Plan
	sheet    map[route.PortRef]Row
	at       map[string]int
	readings []Reading
	faults   []error
	line     int
}

func newParser(text string, plan route.Plan) *parser {
	p := &parser{plan: plan, sheet: map[route.PortRef]Row{}, at: map[string]int{}}
	first, _ := bufio.NewReader(strings.NewReader(text)).ReadString('\n')
	p.rows = csv.NewReader(strings.NewReader(text))
	p.rows.FieldsPerRecord = -1
	p.rows.TrimLeadingSpace = true
	if strings.Count(first, ";") > strings.Count(first, ",") {
		p.rows.Comma, p.comma = ';', true
	}
	for _, g := range Groups(plan) {
		for _, r := range g.Rows {
			p.sheet[r.Ref] = r
		}
	}
	return p
}

func (p *parser) fault(what, fix string, args ...any) {
	p.faults = append(p.faults, &RowError{p.line, fmt.Sprintf(what, args...), fix})
}

func (p *parser) read() {
	p.line = 1
	for first := true; ; first = false {
		row, err := p.rows.Read()
		if errors.Is(err, io.EOF) {
			if first {
				p.fault("the file is empty", "Take the file that was written for the plan.")
			}
			return
		}
		var bad *csv.ParseError
		if errors.As(err, &bad) {
			p.line = bad.Line
			p.fault("%v", "Put quotes around a field that holds one, and double it inside.", bad.Err)
			return
		}
		p.line, _ = p.rows.FieldPos(0)
		if first {
			if !p.heads(row) {
				return
			}
			continue
		}
		p.row(row)
	}
}

// heads finds the columns by their names.
func (p *parser) heads(row []string) bool {
	for i, name := range row {
		p.at[strings.ToLower(strings.TrimSpace(name))] = i
	}
	for _, name := range []string{"part", "port", "x", "y", "z"} {
		if _, ok := p.at[name]; !ok {
			p.fault("there is no column %q", "The first line names the columns: "+strings.Join(columns, ", ")+".", name)
		}
	}
	return len(p.faults) == 0
}

func (p *parser) field(row []string, name string) string {
	i, ok := p.at[name]
	if !ok || i >= len(row) {
		return ""
	}
	return strings.TrimSpace(row[i])
}

func (p *parser) row(row []string) {
	numbers := [3]string{p.field(row, "x"), p.field(row, "y"), p.field(row, "z")}
	if numbers == [3]string{} {
		return
	}
	part, port := strings.TrimPrefix(p.field(row, "part"), "'"), strings.TrimPrefix(p.field(row, "port"), "'")
	r := Reading{Ref: route.PortRef{Part: part, Port: port}, Thread: p.field(row, "thread")}
	sheet, ok := p.sheet[r.Ref]
	if !ok {
		p.fault("the plan has no port %s", "Leave the first two columns as they were written.", r.Ref)
		return
	}
	before := len(p.faults)
	for axis, text := range numbers {
		r.From[axis] = p.wall(p.field(row, axisNames[axis]+"_from"), axis, sheet)
		r.Distance[axis] = p.number(text, axis, r.Ref)
	}
	if text := strings.TrimPrefix(p.field(row, "facing"), "'"); text != "" {
		var err error
		if r.Facing, err = ParseFacing(text); err != nil {
			p.fault("%v", "Leave it empty when the plan has it right.", err)
		}
	}
	if len(p.faults) == before {
		p.readings = append(p.readings, r)
	}
}

func (p *parser) wall(text string, axis int, sheet Row) Wall {
	if text == "" {
		return sheet.From[axis]
	}
	w := Wall(strings.ToLower(text))
	if a, _, ok := w.place(); !ok || a != axis {
		p.fault("%s of %s is not taken from %q", fmt.Sprintf("Write %s or %s.", walls[axis][0], walls[axis][1]), axisNames[axis], sheet.Ref, text)
	}
	return w
}

func (p *parser) number(text string, axis int, ref route.PortRef) float64 {
	if text == "" {
		p.fault("%s has no %s", "Fill in all three distances of a port, or none.", ref, axisNames[axis])
		return 0
	}
	plain := text
	if p.comma {
		plain = strings.Replace(text, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(plain, 64)
	if v *= p.plan.Units.Factor(); err != nil || !(v > -farthest && v < farthest) {
		p.fault("%s of %s is no distance: %q", "Write a number in the plan's units, such as 127.5.", axisNames[axis], ref, text)
		return 0
	}
	return v
}
