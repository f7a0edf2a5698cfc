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
		_, _, _, a := look.Color(theme.ColorNameForeground, theme.VariantLight).RGBA()
		alpha := float64(uint8(uint32(float32(a)*0.95))) / 255 // as Fyne 2.7.1 does in widget/menu_item.go
		back := look.colour[face]
		mix := func(f, b uint8) uint8 { return uint8(float64(f)*alpha + float64(b)*(1-alpha)) }
		fore := look.colour[ink]
		seen := color.NRGBA{R: mix(fore.R, back.R), G: mix(fore.G, back.G), B: mix(fore.B, back.B), A: 255}
		if got := contrast(seen, back); got < 4.5 {
			t.Errorf("dark %v: a shortcut has contrast %.2f, want at least 4.5", dark, got)
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
		if look.Size(theme.SizeNameText) != textSize || look.Font(fyne.TextStyle{Bold: true}) == nil || look.Icon(theme.IconNameCancel) == nil {
			t.Error("size of text, font or icon is missing")
		}
	}
}
