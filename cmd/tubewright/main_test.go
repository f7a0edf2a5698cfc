package main

import (
	"strings"
	"testing"
)

func TestCommandLine(t *testing.T) {
	t.Setenv("DISPLAY", "")
	t.Setenv("WAYLAND_DISPLAY", "")
	for _, row := range []struct {
		args     string
		code     int
		out, err string // what each says, in part
	}{
		{"--version", 0, "tubewright " + version, ""},
		{"--help", 0, "", "conservation-scanner"},
		{"-h", 0, "", "--demo NAME"},
		{"", 2, "", "tubecut"},
		{"some.plan.yaml", 2, "", "there is no display"},
		{"--demo ferry-bridge", 2, "", "there is no display"},
		{"--demo nothing", 2, "", "there is no demo"},
		{"--demo ferry-bridge some.plan.yaml", 2, "", "exclude each other"},
		{"a b", 2, "", "one plan at a time"},
		{"--look 5", 2, "", "looks 1 to 4"},
		{"--look x", 2, "", "try --help"},
		{"--theme pink", 2, "", "light and dark"},
		{"--size big", 2, "", "is no size"},
		{"--size 12x", 2, "", "is no size"},
		{"--size 0x5", 2, "", "is no size"},
		{"--size 1280x800x3", 2, "", "is no size"},
		{"--sise 3x4", 2, "", "try --help"},
	} {
		var out, problems strings.Builder
		code := run(strings.Fields(row.args), &out, &problems)
		if code != row.code || !strings.Contains(out.String(), row.out) || !strings.Contains(problems.String(), row.err) {
			t.Errorf("tubewright %s: code %d, out %q, problems %q; want code %d, %q, %q",
				row.args, code, out.String(), problems.String(), row.code, row.out, row.err)
		}
	}
}

func TestFlags(t *testing.T) {
	var problems strings.Builder
	o, err := parse(strings.Fields("--look 4 --theme dark --size 1024x700 --boxes b.json x.plan.yaml"), &problems)
	if err != nil || o.look != 4 || o.theme != "dark" || o.width != 1024 || o.height != 700 || o.boxes != "b.json" || o.plan != "x.plan.yaml" {
		t.Errorf("parsed as %+v, %v", o, err)
	}
}

func TestNoDisplay(t *testing.T) {
	for _, row := range []struct{ display, wayland, says string }{
		{":0", "", ""},
		{":0", "wayland-0", ""},
		{"", "", "DISPLAY is not set"},
		{"", "wayland-0", "XWayland"},
	} {
		env := map[string]string{"DISPLAY": row.display, "WAYLAND_DISPLAY": row.wayland}
		got := noDisplay(func(name string) string { return env[name] })
		if (got == "") != (row.says == "") || !strings.Contains(got, row.says) {
			t.Errorf("with DISPLAY %q and WAYLAND_DISPLAY %q: %q, want a word of %q", row.display, row.wayland, got, row.says)
		}
	}
}
