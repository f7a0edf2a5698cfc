package ui

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

func TestShortcutsInMenusCanBeRead(t *testing.T) {
	for _, dark := range []bool{false, true} {
		look := NewTheme(dark)
		r, g, b, a := look.Color(theme.ColorNameForeground, theme.VariantLight).RGBA()
		a = uint32(float32(a) * 0.95) // as Fyne 2.7.1 does in widget/menu_item.go
		got := color.NRGBA{R: uint8(r), G: uint8(g), B: uint8(b), A: uint8(a)}
		if want := look.colour[ink]; got != want {
			t.Errorf("dark %v: a shortcut is written in %v, want the ink %v", dark, got, want)
		}
	}
}

// Fyne 2.7.1 clears with each channel over 255 · 255, in internal/painter/gl/painter.go.
func TestAClearedWindowHasThePanelsColour(t *testing.T) {
	for _, dark := range []bool{false, true} {
		look := NewTheme(dark)
		r, g, b, _ := look.Color(theme.ColorNameBackground, theme.VariantLight).RGBA()
		level := func(v uint32) uint8 { return uint8(float64(v)/(255*255)*255 + 0.5) }
		if got, want := (color.NRGBA{R: level(r), G: level(g), B: level(b), A: 255}), look.colour[face]; got != want {
			t.Errorf("dark %v: cleared with %v, want %v", dark, got, want)
		}
	}
}

func TestEveryColourAndSizeIsAnswered(t *testing.T) {
	for _, dark := range []bool{false, true} {
		look := NewTheme(dark)
		for name := range themeRoles {
			if look.Color(name, theme.VariantDark) != look.Color(name, theme.VariantLight) {
				t.Errorf("%s follows the system's variant, and must not", name)
			}
		}
		if look.Color("no such name", 0) == nil || look.Size(theme.SizeNameSeparatorThickness) == 0 || look.Dark() != dark {
			t.Error("what is not ours is not Fyne's own")
		}
		if look.Size(theme.SizeNameText) != float32(textSize) || look.Font(fyne.TextStyle{Bold: true}) == nil || look.Icon(theme.IconNameCancel) == nil {
			t.Error("size of text, font or icon is missing")
		}
	}
}
