package planfile

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// lines finds places in a text the way the YAML parser counts them.
type lines struct {
	text  string
	start []int // byte at which each line starts
}

// newLines splits at every line break YAML knows: LF, CR, CR LF, and the
// Unicode ones NEL, LS and PS (YAML 1.1, section 4.2).
func newLines(text string) lines {
	l := lines{text: text, start: []int{0}}
	for i, r := range text {
		if r == '\r' && strings.HasPrefix(text[i+1:], "\n") {
			continue
		}
		if isBreak(r) {
			l.start = append(l.start, i+utf8.RuneLen(r))
		}
	}
	return l
}

func isBreak(r rune) bool {
	return r == '\n' || r == '\r' || r == '\u0085' || r == '\u2028' || r == '\u2029'
}

// line gives a line (1-based) without its break, or "" when there is none.
func (l lines) line(n int) string {
	if n < 1 || n > len(l.start) {
		return ""
	}
	text := l.text[l.start[n-1]:]
	if n < len(l.start) {
		text = l.text[l.start[n-1]:l.start[n]]
	}
	return strings.TrimRightFunc(text, isBreak)
}

// offset gives the byte at a line and column (1-based, in characters).
func (l lines) offset(line, col int) int {
	if line < 1 || line > len(l.start) {
		return len(l.text)
	}
	at := l.start[line-1]
	for i := 1; i < col && at < len(l.text); i++ {
		_, size := utf8.DecodeRuneInString(l.text[at:])
		at += size
	}
	return at
}

// place gives the line and column of a byte.
func (l lines) place(at int) (line, col int) {
	lo, hi := 0, len(l.start)
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; l.start[mid] <= at {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo + 1, utf8.RuneCountInString(l.text[l.start[lo]:at]) + 1
}

const (
	excerptWidth  = 100 // characters of a line shown beneath a problem
	excerptBefore = 60  // of which before the fault at most
)

// excerpt gives a line fit for a terminal: control characters replaced, a long
// line cut to the part around the column.
func (l lines) excerpt(line, col int) string {
	text := []rune(strings.Map(printable, strings.ToValidUTF8(l.line(line), "\uFFFD")))
	from := 0
	if len(text) > excerptWidth && col > excerptBefore {
		from = min(col-excerptBefore, len(text)-excerptWidth)
	}
	to := min(len(text), from+excerptWidth)
	out := strings.TrimRight(string(text[from:to]), " ")
	if from > 0 {
		out = "…" + out
	}
	if to < len(text) {
		out += "…"
	}
	return out
}

func printable(r rune) rune {
	switch {
	case r == '\t':
		return ' '
	case unicode.IsGraphic(r):
		return r
	}
	return '\uFFFD'
}
