package sheet

import (
	"strings"
	"unicode/utf8"

	"tubewright/cutlist/draw"
)

// ellipsis ends a text that was cut short.
const ellipsis = "…"

// shrunk gives the size, between least and size, at which a text fits a width;
// least when it does not fit at all.
func shrunk(text string, size, least float64, bold bool, width float64) float64 {
	if w := draw.TextWidth(text, size, bold); w > width {
		return max(least, size*width/w)
	}
	return size
}

// shortened gives a text that fits a width, its end cut off when it must be.
func shortened(text string, size float64, bold bool, width float64) string {
	text = draw.Writable(text)
	if draw.TextWidth(text, size, bold) <= width {
		return text
	}
	for text != "" {
		_, n := utf8.DecodeLastRuneInString(text)
		text = text[:len(text)-n]
		if short := strings.TrimRight(text, " ") + ellipsis; draw.TextWidth(short, size, bold) <= width {
			return short
		}
	}
	return ""
}

// wrapped breaks a text into lines that fit a width: between words, after the
// marks that join parts of a name, and inside a word only when it is longer
// than a line. At most most lines are given; the last then ends in an ellipsis.
func wrapped(text string, size float64, bold bool, width float64, most int) []string {
	var lines []string
	line := ""
	for _, word := range words(draw.Writable(text)) {
		for draw.TextWidth(strings.TrimRight(line+word, " "), size, bold) > width {
			if line == "" {
				line, word = split(word, size, bold, width)
			}
			lines, line = append(lines, strings.TrimRight(line, " ")), ""
		}
		line += word
	}
	if line = strings.TrimRight(line, " "); line != "" || len(lines) == 0 {
		lines = append(lines, line)
	}
	if len(lines) > most {
		lines = lines[:most]
		lines[most-1] = shortened(lines[most-1]+ellipsis+ellipsis, size, bold, width)
	}
	return lines
}

// words cuts a text where a line may break: after spaces and after - _ . / ,
// between letters.
func words(text string) []string {
	var out []string
	from := 0
	for i, r := range text {
		if strings.ContainsRune(" -_./", r) && i > from {
			n := i + utf8.RuneLen(r)
			if r == ' ' || breaksAfter(text, i, n) {
				out, from = append(out, text[from:n]), n
			}
		}
	}
	return append(out, text[from:])
}

// breaksAfter reports whether a line may break after the mark at i to n: not
// inside a number, and not before a space.
func breaksAfter(text string, i, n int) bool {
	if n >= len(text) || text[n] == ' ' {
		return false
	}
	digit := func(b byte) bool { return b >= '0' && b <= '9' }
	return !digit(text[i-1]) || !digit(text[n])
}

// split cuts a word that is longer than a line; at least one letter goes first.
func split(word string, size float64, bold bool, width float64) (head, tail string) {
	for i := range word {
		if i > 0 && draw.TextWidth(word[:i], size, bold) > width {
			_, n := utf8.DecodeLastRuneInString(word[:i])
			if i == n {
				n = 0
			}
			return word[:i-n], word[i-n:]
		}
	}
	_, n := utf8.DecodeLastRuneInString(word)
	if n == len(word) {
		return word, ""
	}
	return word[:len(word)-n], word[len(word)-n:]
}
