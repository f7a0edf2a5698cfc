package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"tubewright/cutlist/sheet"
	"tubewright/ui/board"
)

// badge is a tube's letter on its colour.
type badge struct {
	widget.BaseWidget
	disc *canvas.Circle
	text *canvas.Text
}

// badgeSize is across the disc.
const badgeSize float32 = 22

func newBadge(letter string) *badge {
	b := &badge{disc: canvas.NewCircle(nothing), text: newBold("", smallSize, ink)}
	b.text.Alignment = fyne.TextAlignCenter
	b.ExtendBaseWidget(b)
	b.show(letter)
	return b
}

// show changes the letter; none leaves an empty ring.
func (b *badge) show(letter string) {
	b.disc.StrokeWidth, b.disc.StrokeColor, b.disc.FillColor = 1, paint(soft), color.Transparent
	b.text.Text, b.text.Color = letter, paint(soft)
	if letter != "" {
		c := sheet.ColourOf(letter)
		fill := color.NRGBA{R: c.R, G: c.G, B: c.B, A: 255}
		b.disc.StrokeWidth, b.disc.FillColor, b.text.Color = 0, fill, inkOn(fill)
	}
	b.disc.Refresh()
	b.text.Refresh()
}

// inkOn is black or white, whichever stands out more from a ground.
func inkOn(c color.NRGBA) color.NRGBA {
	black, white := color.NRGBA{A: 255}, color.NRGBA{R: 255, G: 255, B: 255, A: 255}
	if board.Contrast(opaque(black), opaque(c)) >= board.Contrast(opaque(white), opaque(c)) {
		return black
	}
	return white
}

func (b *badge) CreateRenderer() fyne.WidgetRenderer { return &badgeRenderer{b} }

type badgeRenderer struct{ *badge }

func (r *badgeRenderer) MinSize() fyne.Size { return fyne.NewSquareSize(grown(badgeSize)) }
func (r *badgeRenderer) Layout(fyne.Size) {
	across := grown(badgeSize)
	r.disc.Resize(fyne.NewSquareSize(across))
	high := r.text.MinSize().Height
	box{fyne.NewPos(0, (across-high)/2), fyne.NewSize(across, high)}.put(r.text)
}
func (r *badgeRenderer) Refresh()                     {}
func (r *badgeRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.disc, r.text} }
func (r *badgeRenderer) Destroy()                     {}
