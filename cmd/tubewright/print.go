package main

import (
	"bytes"
	"fmt"
	"os/exec"

	"tubewright/cutlist/sheet"
)

// printCommand is the print command of POSIX systems (IEEE Std 1003.1, lp).
const printCommand = "lp"

// printer gives what sends a PDF to the system's printer, at full size; nil
// where the system has no print command. find is [exec.LookPath].
func printer(find func(string) (string, error)) func(path string, paper sheet.Paper) error {
	lp, err := find(printCommand)
	if err != nil {
		return nil // the window says so when somebody wants to print
	}
	return func(path string, paper sheet.Paper) error {
		var said bytes.Buffer
		cmd := exec.Command(lp, "-o", "media="+media(paper), "-o", "print-scaling=none", path)
		cmd.Stderr = &said
		if err := cmd.Run(); err != nil {
			return fmt.Errorf("%s: %w: %s", printCommand, err, bytes.TrimSpace(said.Bytes()))
		}
		return nil
	}
}

// media is a paper as printers know it (PWG 5101.1, self-describing names).
func media(p sheet.Paper) string {
	if p == sheet.Letter {
		return "na_letter_8.5x11in"
	}
	return "iso_a4_210x297mm"
}
