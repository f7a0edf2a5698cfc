package main

import (
	"io"
	"os"
	"strconv"
)

const (
	// usualWidth is what a text is laid out for where nobody says otherwise.
	usualWidth = 80
	// leastWidth and mostWidth: beyond them lines are not read but lost.
	leastWidth, mostWidth = 40, 240
)

// textWidth is how many columns a text may take: those of the terminal, or of
// COLUMNS where the shell hands that on; into a file always the same.
func textWidth(w io.Writer) int {
	if !isTerminal(w) {
		return usualWidth
	}
	columns := terminalColumns(w.(*os.File))
	if n, err := strconv.Atoi(os.Getenv("COLUMNS")); err == nil && columns == 0 {
		columns = n
	}
	if columns <= 0 {
		return usualWidth
	}
	return min(max(columns, leastWidth), mostWidth)
}
