// Package demoplan reads the demo plans for tests.
package demoplan

import (
	"testing"

	"tubewright/assets"
	"tubewright/route"
	"tubewright/route/planfile"
)

// Read reads a demo plan; a test that names one there is not fails.
func Read(tb testing.TB, name string) route.Plan {
	tb.Helper()
	text, ok := assets.Demo(name)
	if !ok {
		tb.Fatalf("there is no demo %q", name)
	}
	plan, _, err := planfile.Read(name, text)
	if err != nil {
		tb.Fatal(err)
	}
	return plan
}
