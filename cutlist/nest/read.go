package nest

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Problem is one thing wrong in a file of pieces, told to whoever wrote it.
type Problem struct {
	File string
	Line int    // counts from 1; 0: the file as a whole
	Text string // of the line
	What string // one clause, with the numbers
	Fix  string // one sentence: what to change
}

func (p Problem) String() string {
	if p.Line == 0 {
		return fmt.Sprintf("%s: %s\n\t%s", p.File, p.What, p.Fix)
	}
	return fmt.Sprintf("%s:%d: %s\n\t%5d | %s\n\t%s", p.File, p.Line, p.What, p.Line, p.Text, p.Fix)
}

// Problems are all that is wrong in a file, in its order.
type Problems []Problem

func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i, q := range p {
		lines[i] = q.String()
	}
	return strings.Join(lines, "\n")
}

const (
	// mostBytes of a file are read: far more lines than lengths can be nested.
	mostBytes = 1 << 20
	// mostProblems are told: with more the file is of another kind.
	mostProblems = 20
	// mostShown characters of a line are shown with its problem.
	mostShown = 60
)

// Read takes a job from text: the length of the bars on the first line, then on
// each line the length of a piece, a comma and how many are wanted. Lengths are
// above 0 with up to two decimals, in any unit. Empty lines and what follows a #
// do not count. A kerf is not part of it. Errors of the text are Problems, all
// at once; name is what they call the file.
func Read(name string, r io.Reader) (Job, error) {
	d := reader{file: name}
	lines := bufio.NewScanner(io.LimitReader(r, mostBytes+1))
	lines.Buffer(nil, mostBytes+1)
	size := 0
	for n := 1; lines.Scan(); n++ {
		if size += len(lines.Bytes()) + 1; size > mostBytes {
			break
		}
		d.line(n, strings.TrimPrefix(lines.Text(), "\ufeff"))
	}
	if err := lines.Err(); err != nil && !errors.Is(err, bufio.ErrTooLong) {
		return Job{}, fmt.Errorf("reading %s: %w", name, err)
	}
	if size > mostBytes || lines.Err() != nil {
		d.tell(0, "", fmt.Sprintf("longer than %d bytes", mostBytes), "Split it into several jobs.")
	} else {
		d.whole()
	}
	if d.problems != nil {
		return Job{}, d.problems[:min(len(d.problems), mostProblems)]
	}
	return d.job, nil
}

type reader struct {
	file     string
	job      Job
	problems Problems
	bar      bool // the bar's line was seen, good or bad
}

func (d *reader) tell(line int, text, what, fix string) {
	if len(text) > mostShown {
		text = strings.ToValidUTF8(text[:mostShown], "") + "..."
	}
	d.problems = append(d.problems, Problem{d.file, line, text, what, fix})
}

func (d *reader) line(n int, text string) {
	content, _, _ := strings.Cut(text, "#")
	if content = strings.TrimSpace(content); content == "" {
		return
	}
	if !d.bar {
		d.bar = true
		d.barLine(n, text, content)
		return
	}
	d.pieceLine(n, text, content)
}

func (d *reader) barLine(n int, text, content string) {
	length, err := parseHundredths(content)
	if err != nil {
		d.tell(n, text, "bar length "+err.Error(), "Write the length of the bars alone on the first line, such as 500.")
		return
	}
	d.job.Stock = []Bar{{Length: length}}
}

const pieceForm = "Write the length of a piece, a comma and how many are wanted, such as 120.5,3."

func (d *reader) pieceLine(n int, text, content string) {
	first, second, ok := strings.Cut(content, ",")
	if !ok || strings.Contains(second, ",") {
		d.tell(n, text, fmt.Sprintf("%d values; expected 2", 1+strings.Count(content, ",")), pieceForm)
		return
	}
	length, err := parseHundredths(strings.TrimSpace(first))
	if err != nil {
		d.tell(n, text, "length "+err.Error(), pieceForm)
	}
	count, bad := parseCount(strings.TrimSpace(second))
	if bad != nil {
		d.tell(n, text, "count "+bad.Error(), pieceForm)
	}
	if err == nil && bad == nil {
		d.addPiece(n, text, Piece{length, count})
	}
}

func (d *reader) addPiece(n int, text string, p Piece) {
	if d.job.Stock != nil && p.Length > d.job.Stock[0].Length {
		d.tell(n, text, fmt.Sprintf("a piece of %s is longer than the bar of %s", Decimal(p.Length), Decimal(d.job.Stock[0].Length)),
			"Take a longer bar, or divide the piece.")
	}
	d.job.Pieces = append(d.job.Pieces, p)
}

// whole looks at what only the whole file shows.
func (d *reader) whole() {
	if !d.bar {
		d.tell(0, "", "there is nothing in it", "Write the length of the bars on the first line and a piece on each line after it.")
	} else if len(d.job.Pieces) == 0 && d.problems == nil {
		d.tell(0, "", "there are no pieces in it", pieceForm)
	}
}

// parseHundredths reads a plain decimal number exactly: no exponent, no sign.
func parseHundredths(text string) (int, error) {
	units, part, _ := strings.Cut(text, ".")
	switch {
	case text == "" || !allDigits(units+part) || units+part == "":
		return 0, fmt.Errorf("%q is not a number above 0", text)
	case len(strings.TrimRight(part, "0")) > 2:
		return 0, fmt.Errorf("%s is finer than 0.01", text)
	}
	part = (strings.TrimRight(part, "0") + "00")[:2]
	n, err := strconv.Atoi(units + part)
	if err != nil || n > maxLength {
		return 0, fmt.Errorf("%s is above %s", text, Decimal(maxLength))
	}
	if n == 0 {
		return 0, errors.New("is 0; it must be above 0")
	}
	return n, nil
}

func parseCount(text string) (int, error) {
	if text == "" || !allDigits(text) {
		return 0, fmt.Errorf("%q is not a whole number above 0", text)
	}
	n, err := strconv.Atoi(text)
	if err != nil || n > maxPieces {
		return 0, fmt.Errorf("%s is above %d, the most that can be nested at once", text, maxPieces)
	}
	if n == 0 {
		return 0, errors.New("is 0; it must be above 0")
	}
	return n, nil
}

func allDigits(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return r < '0' || r > '9' }) < 0
}
