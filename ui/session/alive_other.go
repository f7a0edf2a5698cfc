//go:build !unix

package session

import "os"

// alive reports whether a program with this number runs: elsewhere than on
// Unix, finding it says so.
func alive(pid int) bool {
	if pid <= 0 {
		return false
	}
	p, err := os.FindProcess(pid)
	if err != nil {
		return false
	}
	_ = p.Release() // only a handle: nothing is lost when it stays
	return true
}
