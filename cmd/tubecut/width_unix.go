//go:build unix

package main

import (
	"os"

	"golang.org/x/sys/unix"
)

// terminalColumns asks the terminal; 0: it does not say.
func terminalColumns(f *os.File) int {
	size, err := unix.IoctlGetWinsize(int(f.Fd()), unix.TIOCGWINSZ)
	if err != nil {
		return 0
	}
	return int(size.Col)
}
