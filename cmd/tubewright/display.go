package main

import "runtime"

// noDisplay says why no window can be opened; "" when one can. Fyne would panic.
func noDisplay(env func(string) string) string {
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" || env("DISPLAY") != "" {
		return ""
	}
	why := "there is no display to open a window on"
	if env("WAYLAND_DISPLAY") != "" {
		why = "this build needs an X display, and only Wayland is here: start XWayland"
	}
	return why + " (DISPLAY is not set). tubecut does the same planning without a screen: try tubecut --help"
}
