//go:build unix

package session

import (
	"errors"
	"os"
	"syscall"
)

// alive reports whether a program with this number runs. Signal 0 only asks; a
// program of another user answers that it may not be signalled.
func alive(pid int) bool {
	if pid <= 0 {
		return false
	}
	p, err := os.FindProcess(pid)
	if err != nil {
		return false
	}
	err = p.Signal(syscall.Signal(0))
	return err == nil || errors.Is(err, syscall.EPERM)
}
