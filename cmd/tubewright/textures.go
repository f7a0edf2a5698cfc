package main

import (
	"time"
	_ "unsafe" // for go:linkname
)

// textureTime is how long Fyne keeps the picture of a text or a widget that is
// no longer shown. Its minute is too long for a window whose numbers change five
// times a second while a part is dragged: half an hour of use grew to 1 GB.
// Below 20 s Fyne would walk through all widgets at every tick while idle.
const textureTime = 20 * time.Second

// Fyne 2.7.1 reads this from FYNE_CACHE before any code of ours runs, and has no
// other way to set it. Should a later Fyne name it otherwise, ours is a variable
// nobody reads, and TestFynesTextureTimeIsReached fails.
//
//go:linkname validDuration fyne.io/fyne/v2/internal/cache.ValidDuration
var validDuration time.Duration

//go:linkname cleanTaskInterval fyne.io/fyne/v2/internal/cache.cleanTaskInterval
var cleanTaskInterval time.Duration

// keepTexturesShortly sets Fyne's time, unless the person has.
func keepTexturesShortly(env string) {
	if env == "" {
		validDuration, cleanTaskInterval = textureTime, textureTime/2
	}
}
