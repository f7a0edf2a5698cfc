package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Theme is the look of the window, light or dark. It does not follow the
// system by itself: the person chooses.
type Theme struct {
	dark   bool
	colour palette
	text   float32 // how much larger text is than as it comes; 1: no larger
}

// NewTheme gives the light or the dark look.
func NewTheme(dark bool) *Theme {
	if dark {
		return &Theme{true, darkPalette, 1}
	}
	return &Theme{false, lightPalette, 1}
}

// WithText gives the same look with text of another size, in percent of the size
// it comes with; what is no such size counts as 100.
func (t *Theme) WithText(percent int) *Theme {
	other := *t
	other.text = float32(textPercent(percent)) / 100
	return &other
}

// Dark reports whether it is the dark look.
func (t *Theme) Dark() bool { return t.dark }

// themeRoles says which of our roles serves each of Fyne's names.
var themeRoles = map[fyne.ThemeColorName]role{
	theme.ColorNameButton:              face,
	theme.ColorNameDisabledButton:      ground,
	theme.ColorNameDisabled:            soft,
	theme.ColorNameError:               bad,
	theme.ColorNameForegroundOnPrimary: onTone,
	theme.ColorNameForegroundOnError:   onTone,
	theme.ColorNameForegroundOnSuccess: onTone,
	theme.ColorNameForegroundOnWarning: onTone,
	theme.ColorNameHeaderBackground:    ground,
	theme.ColorNameHyperlink:           accent,
	theme.ColorNameInputBackground:     face,
	theme.ColorNameInputBorder:         edge,
	theme.ColorNameMenuBackground:      face,
	theme.ColorNameOverlayBackground:   face,
	theme.ColorNamePlaceHolder:         soft,
	theme.ColorNamePrimary:             accent,
	theme.ColorNameScrollBar:           soft,
	theme.ColorNameScrollBarBackground: ground,
	theme.ColorNameSeparator:           rule,
	theme.ColorNameSuccess:             fine,
	theme.ColorNameWarning:             careful,
}

// Veils are colours laid over others.
var themeVeils = map[fyne.ThemeColorName]struct {
	role  role
	alpha uint8
}{
	theme.ColorNameFocus:     {accent, 0x68},
	theme.ColorNameHover:     {ink, 0x12},
	theme.ColorNamePressed:   {ink, 0x24},
	theme.ColorNameSelection: {accent, 0x48},
	theme.ColorNameShadow:    {ink, 0x38},
}

// darkShadow lies on the dark window under a question.
var darkShadow = color.NRGBA{A: 0x80}

// menuInk is an ink that is as good as opaque. Fyne 2.7.1 takes the low byte of
// 0.95 of the 16-bit alpha for the shortcuts in a menu: 50 of an opaque ink, too
// faint to read, but 255 of this one.
type menuInk struct{ color.NRGBA }

const menuInkAlpha = 65482

// RGBA gives the colour, with an alpha 0.1 % short of opaque.
func (m menuInk) RGBA() (r, g, b, a uint32) {
	r, g, b, _ = m.NRGBA.RGBA()
	return r, g, b, menuInkAlpha
}

// cleared is the colour Fyne 2.7.1 clears a window with. It takes 255 · 255 for the
// most a channel can have, not 65,535, which comes out lighter by 2 of 255 than the
// same colour painted: every picture on a panel would have a faint ground of its own.
type cleared struct{ color.NRGBA }

const (
	fyneMost = 255 * 255
	trueMost = 65535
)

// RGBA gives channels that Fyne's sum makes what they are.
func (c cleared) RGBA() (r, g, b, a uint32) {
	r, g, b, a = c.NRGBA.RGBA()
	return r * fyneMost / trueMost, g * fyneMost / trueMost, b * fyneMost / trueMost, a
}

// Color is one of our colours for each of Fyne's names, whatever the system's variant.
func (t *Theme) Color(name fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	if name == theme.ColorNameForeground {
		return menuInk{t.colour[ink]}
	}
	if name == theme.ColorNameBackground {
		return cleared{t.colour[face]} // see [grounds]
	}
	if r, ok := themeRoles[name]; ok {
		return t.colour[r]
	}
	if name == theme.ColorNameShadow && t.dark {
		return darkShadow // the ink is light here: it would brighten what lies under
	}
	if v, ok := themeVeils[name]; ok {
		c := t.colour[v.role]
		c.A = v.alpha
		return c
	}
	variant := theme.VariantLight
	if t.dark {
		variant = theme.VariantDark
	}
	return theme.DefaultTheme().Color(name, variant)
}

// Font is Fyne's own, which is embedded and the same everywhere.
func (t *Theme) Font(style fyne.TextStyle) fyne.Resource { return theme.DefaultTheme().Font(style) }

// Icon is Fyne's own.
func (t *Theme) Icon(name fyne.ThemeIconName) fyne.Resource { return theme.DefaultTheme().Icon(name) }

// themeSizes are smaller than Fyne's: this is a desk tool, not a phone.
var themeSizes = map[fyne.ThemeSizeName]float32{
	theme.SizeNamePadding:        4,
	theme.SizeNameInnerPadding:   5,
	theme.SizeNameScrollBar:      10,
	theme.SizeNameScrollBarSmall: 4,
	theme.SizeNameInputRadius:    3,
	theme.SizeNameInputBorder:    1,
}

// Sizes of type.
const (
	textSize  typeSize = 13
	smallSize typeSize = 12
	titleSize typeSize = 16
	largeSize typeSize = 22 // a card's cut length, read at arm's length
)

// themeTypes are the sizes that grow with the text.
var themeTypes = map[fyne.ThemeSizeName]typeSize{
	theme.SizeNameText:           textSize,
	theme.SizeNameCaptionText:    smallSize,
	theme.SizeNameHeadingText:    20,
	theme.SizeNameSubHeadingText: 15,
	theme.SizeNameInlineIcon:     16,
}

// Size is ours where we have one, else Fyne's.
func (t *Theme) Size(name fyne.ThemeSizeName) float32 {
	if s, ok := themeTypes[name]; ok {
		return s.at(t.text)
	}
	if s, ok := themeSizes[name]; ok {
		return s
	}
	return theme.DefaultTheme().Size(name)
}

// paint gives the colour of a role in the app's theme.
func paint(r role) color.NRGBA {
	if app := fyne.CurrentApp(); app != nil {
		if t, ok := app.Settings().Theme().(*Theme); ok {
			return t.colour[r]
		}
	}
	return lightPalette[r]
}

// isDark reports whether the app shows the dark look.
func isDark() bool {
	t, ok := fyne.CurrentApp().Settings().Theme().(*Theme)
	return ok && t.dark
}
