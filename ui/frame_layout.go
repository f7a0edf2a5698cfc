package ui

import (
	"math"

	"fyne.io/fyne/v2"
)

// frame is where the parts of the window stand.
type frame struct {
	header, parts, details, board, status, runs, findings, rack, buying box
}

// Sizes of the window's parts, in Fyne's pixels.
const (
	frameGap    float32 = 6
	headerHigh  float32 = 40
	statusHigh  float32 = 22
	leftLeast   float32 = 204
	leftMost    float32 = 264
	rightLeast  float32 = 288
	rightMost   float32 = 400
	bottomLeast float32 = 150
	bottomMost  float32 = 236
	// findingsShare is how much of the right column the findings take at most.
	findingsShare float32 = 0.42
	// detailsHigh shows a part with its numbers and a few ports.
	detailsHigh float32 = 330
	// boardShare of the width is the board's at least, bottomShare of the height the
	// rack's at most when text is large.
	boardShare, bottomShare float32 = 0.36, 0.28
)

// sidesOf is how wide the columns beside the board are. Larger text widens them as
// long as the board keeps its share.
func sidesOf(width float32) (left, right float32) {
	left = between(leftLeast, width*0.17, leftMost)
	right = between(rightLeast, width*0.24, rightMost)
	grow := max(1, min(textScale(), (width*(1-boardShare)-4*frameGap)/(left+right)))
	return even(left * grow), even(right * grow)
}

// between is want, but at least least and at most most.
func between(least, want, most float32) float32 { return max(least, min(want, most)) }

// frameOf shares the window's size among its parts. partsHigh and findingsHigh
// are what these two would like; each gives up the rest of its column.
func frameOf(size fyne.Size, partsHigh, findingsHigh float32) frame {
	left, right := sidesOf(size.Width)
	bottom := even(min(grown(between(bottomLeast, size.Height*0.22, bottomMost)), size.Height*bottomShare))
	top, foot := even(grown(headerHigh)), even(grown(statusHigh))
	middle := max(0, size.Height-top-bottom-2*frameGap)
	wide := max(0, size.Width-2*frameGap)

	f := frame{header: box{fyne.NewPos(frameGap, 0), fyne.NewSize(wide, top)}}
	f.parts, f.details = share(frameGap, top, left, middle, between(110, partsHigh, max(middle*0.5, middle-grown(detailsHigh))))
	rightX := size.Width - frameGap - right
	f.runs, f.findings = share(rightX, top, right, middle, middle-frameGap-between(84, findingsHigh, middle*findingsShare))
	boardX := frameGap + left + frameGap
	boardWide := max(0, rightX-frameGap-boardX)
	f.board = box{fyne.NewPos(boardX, top), fyne.NewSize(boardWide, max(0, middle-foot))}
	f.status = box{fyne.NewPos(boardX, top+middle-foot), fyne.NewSize(boardWide, foot)}

	bottomY := size.Height - bottom - frameGap
	buying := even(min(grown(between(rightLeast+90, size.Width*0.36, 560)), size.Width*0.5))
	f.rack = box{fyne.NewPos(frameGap, bottomY), fyne.NewSize(max(0, wide-buying-frameGap), bottom)}
	f.buying = box{fyne.NewPos(size.Width-frameGap-buying, bottomY), fyne.NewSize(buying, bottom)}
	return f
}

// even is a size in whole pixels of a plain screen: what stands between two of
// them is smeared over both.
func even(v float32) float32 { return float32(math.Floor(float64(v))) }

// share puts two boxes under one another, the upper of the height it is given.
func share(x, y, width, height, upper float32) (top, below box) {
	upper = even(between(0, upper, height))
	top = box{fyne.NewPos(x, y), fyne.NewSize(width, upper)}
	below = box{fyne.NewPos(x, y+upper+frameGap), fyne.NewSize(width, max(0, height-upper-frameGap))}
	return top, below
}

// gapsOf is what lies between the parts of the window, none over another: the
// strip under the header, the margins, the gaps of each column, and what is above
// and below the board, which paints its own ground.
func gapsOf(size fyne.Size, f frame) []box {
	area := func(x0, y0, x1, y1 float32) box {
		return box{fyne.NewPos(x0, y0), fyne.NewSize(max(0, x1-x0), max(0, y1-y0))}
	}
	top, foot := f.parts.at.Y, f.rack.at.Y-frameGap
	left, right := f.parts.at.X+f.parts.size.Width, f.runs.at.X
	boardEnd := f.board.at.Y + f.board.size.Height
	return []box{
		area(0, top-frameGap, size.Width, top),
		area(0, top, frameGap, size.Height),
		area(size.Width-frameGap, top, size.Width, size.Height),
		area(frameGap, f.parts.at.Y+f.parts.size.Height, left, f.details.at.Y),
		area(right, f.runs.at.Y+f.runs.size.Height, size.Width-frameGap, f.findings.at.Y),
		area(left, top, left+frameGap, foot),
		area(right-frameGap, top, right, foot),
		area(left+frameGap, top, right-frameGap, f.board.at.Y),
		area(left+frameGap, boardEnd, right-frameGap, foot),
		area(frameGap, foot, size.Width-frameGap, f.rack.at.Y),
		area(f.rack.at.X+f.rack.size.Width, f.rack.at.Y, f.buying.at.X, size.Height-frameGap),
		area(frameGap, size.Height-frameGap, size.Width-frameGap, size.Height),
	}
}
