package main

import (
	"testing"
	"time"
)

// Fyne's own minute must stand in the variable before we change it: else it is
// not Fyne's any more.
func TestFynesTextureTimeIsReached(t *testing.T) {
	if validDuration != time.Minute {
		t.Fatalf("Fyne keeps pictures for %v, want its minute: is the variable still called so?", validDuration)
	}
	defer func(v, c time.Duration) { validDuration, cleanTaskInterval = v, c }(validDuration, cleanTaskInterval)
	keepTexturesShortly("30s")
	if validDuration != time.Minute {
		t.Errorf("set by the person, the time is %v all the same", validDuration)
	}
	keepTexturesShortly("")
	if validDuration != textureTime || cleanTaskInterval != textureTime/2 {
		t.Errorf("the times are %v and %v", validDuration, cleanTaskInterval)
	}
}
