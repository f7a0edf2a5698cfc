package ui

import "strings"

// wrapText breaks a text into lines no wider than width, at spaces where it
// can; a word that is wider alone is broken where it must be. It always gives
// at least one line.
func wrapText(text string, width float32, measure func(string) float32) []string {
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		lines = append(lines, wrapParagraph(strings.Fields(paragraph), width, measure)...)
	}
	return lines
}

func wrapParagraph(words []string, width float32, measure func(string) float32) []string {
	var lines []string
	line := ""
	for _, word := range words {
		if try := strings.TrimSpace(line + " " + word); line == "" || measure(try) <= width {
			line = try
		} else {
			lines, line = append(lines, line), word
		}
		for measure(line) > width {
			head, tail := breakWord(line, width, measure)
			if tail == "" {
				break
			}
			lines, line = append(lines, head), tail
		}
	}
	return append(lines, line)
}

// breakWord gives the longest head that fits, at least one letter, and the rest. It
// breaks behind a hyphen where there is one.
func breakWord(word string, width float32, measure func(string) float32) (head, tail string) {
	end := 0
	for i := range word {
		if i > 0 && measure(word[:i]) > width && end > 0 {
			break
		}
		end = i
	}
	if end == 0 {
		return word, ""
	}
	if hyphen := strings.LastIndex(word[:end], "-"); hyphen > 0 {
		end = hyphen + 1
	}
	return word[:end], word[end:]
}

// shorten gives text, or as much of it as fits with an ellipsis behind.
func shorten(text string, width float32, measure func(string) float32) string {
	if measure(text) <= width {
		return text
	}
	runes := []rune(text)
	for n := len(runes) - 1; n > 0; n-- {
		if try := strings.TrimRight(string(runes[:n]), " ") + "…"; measure(try) <= width {
			return try
		}
	}
	return "…"
}
