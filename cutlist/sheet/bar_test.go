package sheet

import (
	"testing"

	"tubewright/cutlist/draw"
)

func TestWritingOnABarCanBeRead(t *testing.T) {
	for name, th := range map[string]Theme{"light": LightTheme(), "dark": DarkTheme()} {
		for letter := 'A'; letter <= 'G'; letter++ {
			ground := underInk(ColourOf(string(letter)), th)
			if got := draw.Contrast(ground, th.Ink); got < leastContrast {
				t.Errorf("%s: on the piece of %c writing has a contrast of %.2f", name, letter, got)
			}
			if ground == th.Paper {
				t.Errorf("%s: the piece of %c has lost its colour", name, letter)
			}
		}
	}
}
