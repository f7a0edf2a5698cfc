package planfile

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// span is the bytes of a text from one to before another.
type span struct{ from, to int }

// spanOf finds the bytes of a value in the text. It does not know texts over
// several lines, nor values that are not there at all.
func (d document) spanOf(n *yaml.Node) (span, bool) {
	from := d.offset(n.Line, n.Column)
	switch {
	case n.Kind == yaml.ScalarNode:
		return d.wordSpan(n, from)
	case n.Style&yaml.FlowStyle != 0:
		return d.bracketSpan(n, from)
	case len(n.Content) == 0:
		return span{}, false
	}
	to, ok := d.endOf(n)
	return span{from, to}, ok
}

// endOf is where the last value inside a list or mapping ends. A key without a
// value ends after its colon.
func (d document) endOf(n *yaml.Node) (int, bool) {
	last := n.Content[len(n.Content)-1]
	if n.Kind == yaml.MappingNode && isAbsent(last) {
		return d.afterColon(n.Content[len(n.Content)-2])
	}
	s, ok := d.spanOf(last)
	return s.to, ok
}

// isAbsent reports whether a null is not written down.
func isAbsent(n *yaml.Node) bool { return isNull(n) && n.Value == "" }

// afterColon is the byte after the colon of a key.
func (d document) afterColon(key *yaml.Node) (int, bool) {
	s, ok := d.spanOf(key)
	if !ok {
		return 0, false
	}
	rest := strings.TrimLeft(d.text[s.to:], " ")
	return len(d.text) - len(rest) + 1, strings.HasPrefix(rest, ":")
}

func (d document) wordSpan(n *yaml.Node, from int) (span, bool) {
	rest := d.text[from:]
	switch {
	case n.Style&yaml.DoubleQuotedStyle != 0:
		end, ok := closingQuote(rest, '"')
		return span{from, from + end}, ok
	case n.Style&yaml.SingleQuotedStyle != 0:
		end, ok := closingQuote(rest, '\'')
		return span{from, from + end}, ok
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 || n.Value == "":
		return span{}, false
	}
	return span{from, from + len(n.Value)}, strings.HasPrefix(rest, n.Value)
}

// closingQuote is the byte after a quoted text that stands at the start.
func closingQuote(text string, quote byte) (int, bool) {
	for i := 1; i < len(text); i++ {
		switch {
		case text[i] == '\\' && quote == '"':
			i++
		case text[i] == '\'' && quote == '\'' && strings.HasPrefix(text[i+1:], "'"):
			i++ // two are one, inside
		case text[i] == quote:
			return i + 1, len(text) > 1 && text[0] == quote
		}
	}
	return 0, false
}

func (d document) bracketSpan(n *yaml.Node, from int) (span, bool) {
	opening, closing := byte('['), byte(']')
	if n.Kind == yaml.MappingNode {
		opening, closing = '{', '}'
	}
	if from >= len(d.text) || d.text[from] != opening {
		return span{}, false // a pair in a list without brackets of its own
	}
	at, ok := from+1, true
	if len(n.Content) > 0 {
		at, ok = d.endOf(n)
	}
	if !ok {
		return span{}, false
	}
	at = d.skipGaps(at)
	return span{from, at + 1}, at < len(d.text) && d.text[at] == closing
}

// skipGaps passes blanks, line breaks, commas and comments.
func (d document) skipGaps(at int) int {
	for at < len(d.text) {
		switch d.text[at] {
		case '#':
			line, _ := d.place(at)
			at = d.lineEnd(line)
		case ' ', '\t', '\n', '\r', ',':
			at++
		default:
			return at
		}
	}
	return at
}

// lineEnd is the byte at which a line's break stands, or the end of the text.
func (d document) lineEnd(line int) int { return d.start[line-1] + len(d.line(line)) }

// nextLine is the byte at which the line after begins, or the end of the text.
func (d document) nextLine(line int) int {
	if line < len(d.start) {
		return d.start[line]
	}
	return len(d.text)
}

// comments reports whether a stretch of text holds a comment. It may take a #
// inside quotes for one; that errs to the side of saying so.
func comments(text string) bool {
	return strings.HasPrefix(text, "#") || strings.Contains(text, " #") || strings.Contains(text, "\n#") || strings.Contains(text, "\t#")
}
