package board

import (
	"testing"

	"fyne.io/fyne/v2"
)

func TestKeysOfNoUseArePassedOn(t *testing.T) {
	s := onStage(t)
	var keys []fyne.KeyName
	var runes string
	s.OnKey = func(e *fyne.KeyEvent) { keys = append(keys, e.Name) }
	s.OnRune = func(r rune) { runes += string(r) }
	for _, k := range []fyne.KeyName{fyne.KeyF1, fyne.KeyF, fyne.KeyUp, fyne.KeyF6, fyne.KeyEscape} {
		s.key(k)
	}
	for _, r := range "1f?mP/+" {
		s.TypedRune(r)
	}
	if len(keys) != 2 || keys[0] != fyne.KeyF1 || keys[1] != fyne.KeyF6 {
		t.Errorf("passed on keys %v, want F1 and F6", keys)
	}
	if runes != "?/" {
		t.Errorf("passed on letters %q, want ?/", runes)
	}
}
