package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// figuresGrid is rows of a label and up to three numbers, set right.
type figuresGrid struct {
	widget.BaseWidget
	rows  [][]string
	texts [][]*canvas.Text
}

func newFiguresGrid(rows [][]string) *figuresGrid {
	g := &figuresGrid{rows: rows}
	for _, row := range rows {
		line := make([]*canvas.Text, len(row))
		for i, cell := range row {
			line[i] = newLine(cell, smallSize, ink)
			line[i].Alignment = fyne.TextAlignTrailing
		}
		line[0].Color, line[0].Alignment = paint(soft), fyne.TextAlignLeading
		g.texts = append(g.texts, line)
	}
	g.ExtendBaseWidget(g)
	return g
}

func (g *figuresGrid) rowHeight() float32 {
	return fyne.MeasureText("0", smallSize.px(), fyne.TextStyle{}).Height + 1
}

// HeightFor is the same at every width.
func (g *figuresGrid) HeightFor(float32) float32 { return float32(len(g.rows)) * g.rowHeight() }

// widths gives the columns' widths: numbers as wide as the widest, the label the rest.
func (g *figuresGrid) widths(width float32) []float32 {
	wants := make([]float32, 4)
	for _, row := range g.texts {
		for i, t := range row {
			if i > 0 {
				wants[i] = max(wants[i], t.MinSize().Width)
			}
		}
	}
	return gridColumns(width, 10, wants)
}

func (g *figuresGrid) CreateRenderer() fyne.WidgetRenderer { return &figuresGridRenderer{g} }

type figuresGridRenderer struct{ *figuresGrid }

func (r *figuresGridRenderer) MinSize() fyne.Size { return fyne.NewSize(0, r.HeightFor(0)) }

func (r *figuresGridRenderer) Layout(size fyne.Size) {
	widths, high := r.widths(size.Width), r.rowHeight()
	for y, row := range r.texts {
		x := float32(0)
		for i, t := range row {
			t.Move(fyne.NewPos(x, float32(y)*high))
			t.Resize(fyne.NewSize(widths[i], high))
			x += widths[i] + 10
		}
	}
}

func (r *figuresGridRenderer) Refresh() {}

func (r *figuresGridRenderer) Objects() (all []fyne.CanvasObject) {
	for _, row := range r.texts {
		for _, t := range row {
			all = append(all, t)
		}
	}
	return all
}

func (r *figuresGridRenderer) Destroy() {}
