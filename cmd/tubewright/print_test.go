package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tubewright/cutlist/sheet"
)

// fakePrinter is a print command that writes down what it was asked, or fails.
func fakePrinter(t *testing.T, script string) func(string) (string, error) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "lp")
	if err := os.WriteFile(path, []byte("#!/bin/sh\n"+script), 0o700); err != nil { //nolint:gosec // it must run
		t.Fatal(err)
	}
	return func(name string) (string, error) {
		if name != printCommand {
			return "", errors.New("not found")
		}
		return path, nil
	}
}

func TestPrinterAsksForFullSize(t *testing.T) {
	told := filepath.Join(t.TempDir(), "told")
	send := printer(fakePrinter(t, "echo \"$@\" > "+told))
	for paper, want := range map[sheet.Paper]string{
		sheet.A4:     "-o media=iso_a4_210x297mm -o print-scaling=none x.pdf",
		sheet.Letter: "-o media=na_letter_8.5x11in -o print-scaling=none x.pdf",
	} {
		if err := send("x.pdf", paper); err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(told); err != nil || strings.TrimSpace(string(got)) != want {
			t.Errorf("%v asks %q, want %q (%v)", paper, got, want, err)
		}
	}
}

func TestPrinterTellsWhatWentWrong(t *testing.T) {
	send := printer(fakePrinter(t, "echo no default destination >&2; exit 1"))
	if err := send("x.pdf", sheet.A4); err == nil || !strings.Contains(err.Error(), "no default destination") {
		t.Errorf("got %v, want what the print command said", err)
	}
	if printer(func(string) (string, error) { return "", errors.New("not found") }) != nil {
		t.Error("a system without a print command has a printer")
	}
}
