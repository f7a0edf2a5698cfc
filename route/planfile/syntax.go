package planfile

import (
	"errors"
	"regexp"
	"strconv"
	"strings"
)

var yamlError = regexp.MustCompile(`^yaml: (?:line (\d+): )?((?s:.*))$`)

// plainWords says what the YAML parser means.
var plainWords = []struct{ parser, what, fix string }{
	{"did not find expected key", "the indentation does not fit the lines above", "Indent keys that belong together by the same number of spaces."},
	{"did not find expected '-' indicator", "the indentation does not fit the list above", "Indent the dashes of a list by the same number of spaces."},
	{"did not find expected ','", "a bracket is not closed, or a comma is missing", "Close every [ and { that this line or one before it opens, and put commas in between."},
	{"did not find expected node content", "a value is missing between brackets or commas", "Give the value, or take the comma away."},
	{"mapping values are not allowed", "a colon stands where no key can be", "Begin each key on a line of its own, or put text that holds a colon in quotes."},
	{"found unexpected end of stream", "a quote is not closed", "Close the quote that this line opens."},
	{"could not find expected ':'", "a key has no colon after it", "Write key: value, with a space after the colon."},
	{"found character that cannot start any token", "a value starts with a sign that YAML keeps for itself", "Put the value in quotes."},
	{"found unknown escape character", "a backslash in double quotes stands before a letter that means nothing", "Write the backslash twice, or use single quotes."},
	{"control characters are not allowed", "the text holds a character that cannot be printed", "Take the character away."},
}

// syntax tells what the YAML parser found, in plain words and at the line that
// brings the fault in: the parser names the start of what it was reading, which
// may lie far above.
func (d document) syntax(err error) Problem {
	var two *secondDocument
	if errors.As(err, &two) {
		return d.at(max(1, two.line), 1, "a second document starts here", "A plan is one document: keep one and put the other into a file of its own.")
	}
	said, told := err.Error(), "1"
	if m := yamlError.FindStringSubmatch(said); m != nil {
		told, said = m[1], m[2]
	}
	line := d.faultLine(told)
	for _, n := range []int{line, line + 1, line - 1} {
		if tab := tabInIndent(d.line(n)); tab > 0 {
			return d.at(n, tab, "a tab stands in the indentation", "Indent with spaces: YAML does not allow tabs there.")
		}
	}
	for _, w := range plainWords {
		if strings.HasPrefix(said, w.parser) {
			return d.at(line, 1, "this is not YAML: "+w.what, w.fix)
		}
	}
	return d.at(line, 1, "this is not YAML: "+said,
		"Look at this line and the one before for a missing colon, bracket, quote or space, or wrong indentation.")
}

// tabInIndent gives the column of a tab before the first other character, or 0.
func tabInIndent(line string) int {
	indent := line[:len(line)-len(strings.TrimLeft(line, " \t"))]
	return strings.IndexByte(indent, '\t') + 1
}

const (
	// openLines is over how many lines a bracket may stay open in a sound file
	// and still not be taken for the fault.
	openLines = 15
	// searchBytes is how much text is parsed over and over in search of a fault
	// before the parser's word is taken: well under a second's worth.
	searchBytes = 4 << 20
)

// faultLine gives the line after the longest beginning of the text that is YAML
// by itself, else the one the parser told. A beginning that ends inside a
// bracket is none though nothing is wrong yet, so each time a good one is looked
// for a little further on.
func (d document) faultLine(told string) int {
	good, bad, left := 0, len(d.start), searchBytes
	for good+1 < bad {
		mid := (good + bad) / 2
		if further := d.goodWithin(mid, min(bad, mid+openLines), &left); further > 0 {
			good = further
		} else {
			bad = mid
		}
	}
	if line, err := strconv.Atoi(told); left <= 0 && err == nil {
		return min(max(1, line), len(d.start))
	}
	return good + 1
}

// goodWithin gives a number of lines, from the first to before the last given,
// that are YAML by themselves, or 0. It stops when no more bytes are left.
func (d document) goodWithin(from, before int, left *int) int {
	for n := from; n < before && *left > 0; n++ {
		text := d.text[:d.nextLine(n)]
		*left -= len(text)
		if _, err := decodeOne(text); err == nil {
			return n
		}
	}
	return 0
}
