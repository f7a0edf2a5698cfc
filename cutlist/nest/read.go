package nest

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

const (
	// mostBytes of an order are read: far more lines than lengths can be nested.
	mostBytes = 1 << 20
	// mostNoted problems are kept before they are put in order.
	mostNoted = 10_000
	// mostShown characters of a line are shown with its problem.
	mostShown = 60
)

// Setting is a line of an order said elsewhere, such as on a command line:
// stock and offcuts join those of the order, the others go before its own.
type Setting struct {
	Flag  string // what it is called there: "--stock"
	Key   string // stock, offcut, kerf, keep or units
	Value string // its values, with colons between
}

// ReadOrder takes an order from text, a line at a time:
//
//	units: in            # mm or in; left out: any unit, two decimals
//	stock: 500 7.40      # a bar to buy: length, price, most of them
//	stock: 1000 - 4      # - where there is no price
//	offcut: 310 2        # a bar on hand: length, how many
//	kerf: 1              # lost per cut
//	keep: 120            # a remnant shorter than this is waste
//	120.5,3              # a piece: length, how many
//
// The first line that is no setting may be a length alone: a bar to buy. Numbers are plain
// decimals. Empty lines and what follows a # do not count. Errors of the text
// are [Problems], all at once; name is what they call it.
func ReadOrder(name string, r io.Reader, said ...Setting) (Order, error) {
	text, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	if err != nil {
		return Order{}, fmt.Errorf("reading %s: %w", name, err)
	}
	d := reader{file: name, at: map[string]place{}}
	if len(text) > mostBytes {
		d.tell(TooLarge, span{}, fmt.Sprintf("longer than %d bytes", mostBytes), "Split it into several orders.")
		return Order{}, d.problems
	}
	d.all(linesOf(text), said)
	d.whole()
	if d.problems != nil {
		return Order{}, d.problems.told()
	}
	return d.order, nil
}

// Read is ReadOrder for the plain form: the job alone.
func Read(name string, r io.Reader) (Job, error) {
	o, err := ReadOrder(name, r)
	return o.Job, err
}

// linesOf gives the lines that say something, without their comments.
func linesOf(text []byte) (lines []span) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	n := 0
	for line := range strings.Lines(string(text)) {
		n++
		line = strings.TrimRight(line, "\r\n")
		content, _, _ := strings.Cut(line, "#")
		if s := (span{content, place{n, 1, line, ""}}).trim(); s.text != "" {
			lines = append(lines, s)
		}
	}
	return lines
}

// place is where something is said.
type place struct {
	line, col int
	text      string // of the line, or all of a flag
	flag      string
}

func (p place) String() string {
	if p.flag != "" {
		return p.flag + " " + p.text
	}
	return fmt.Sprintf("line %d", p.line)
}

// span is a part of a line.
type span struct {
	text string
	place
}

func (s span) trim() span {
	left := strings.TrimLeft(s.text, " \t")
	s.col += utf8.RuneCountInString(s.text[:len(s.text)-len(left)])
	s.text = strings.TrimRight(left, " \t")
	return s
}

// cut splits at the first sep; without one all is before.
func (s span) cut(sep string) (before, after span, ok bool) {
	first, second, ok := strings.Cut(s.text, sep)
	before, after = s, s
	before.text, after.text = first, second
	if after.col += utf8.RuneCountInString(first); ok {
		after.col++
	}
	return before.trim(), after.trim(), ok
}

// split gives the parts between separators; sep " " stands for any blanks.
func (s span) split(sep string) (parts []span) {
	s.text = strings.ReplaceAll(s.text, "\t", " ")
	for ok := true; ok; {
		var part span
		if part, s, ok = s.cut(sep); sep != " " || part.text != "" {
			parts = append(parts, part)
		}
	}
	return parts
}

type reader struct {
	file             string
	order            Order
	per              int
	at, overruled    map[string]place // where each setting stands; those of a command line
	stockAt, pieceAt []span
	pieces           int
	flooded          bool // too many pieces was told
	unread           bool // the length of a bar could not be read
	bars             bool // a line of stock or offcuts was seen, good or bad
	begun            bool // the first line was seen
	problems         Problems
}

func (d *reader) tell(code Code, s span, what, fix string) {
	p := Problem{code, d.file, s.line, s.col, shown(s.place.text), what, fix, false}
	if s.flag != "" {
		p.File, p.Col, p.flag = s.flag, 0, true
	}
	if len(d.problems) == mostNoted {
		return
	}
	d.problems = append(d.problems, p)
}

// shown is a line fit to print.
func shown(text string) string {
	text = strings.Map(func(r rune) rune {
		if r < ' ' || r == utf8.RuneError || r == 0x7f {
			return '?'
		}
		return r
	}, text)
	if runes := []rune(text); len(runes) > mostShown {
		text = string(runes[:mostShown]) + "..."
	}
	return text
}
