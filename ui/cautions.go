package ui

import "fyne.io/fyne/v2"

// cautions are the window's short words of safety; the printed sheets carry
// them in full, with their sources and room for the tests' readings.
var cautions = [][2]string{
	{"First of all", "Makers' instructions for tube, fittings, pump and tools go first, and so do local codes. Work on mains wiring belongs to people licensed for it."},
	{"Heat and fumes", "Heat plastic tube only with good ventilation, and stop when it bubbles, browns or smells sharp. Gloves against hot tube; put the heat gun down where nothing can burn."},
	{"Saw, dust and glass", "Eye protection for every cut, a mask for fine dust. Hold tube in a block, cut away from yourself. Glass: cut-proof gloves, and never force it."},
	{"Pressure", "Test with air before any coolant, with a gauge and a way to let air off, never above 0.5 bar and less where a maker says less. Let all air off before you loosen anything."},
	{"Coolant and mains", "Unplug the computer for the wet test and power only the pump, from a supply of its own. Paper towels under every joint, 24 hours, and dry every drop before anything else is powered."},
	{"Numbers", "A plan is only as good as its numbers. While it is a draft, measure before you cut."},
}

func (w *Window) tellCautions() {
	var rows []fyne.CanvasObject
	for _, c := range cautions {
		rows = append(rows, newColumn(0, 1, newHeading(c[0]), newFlow(c[1], textSize, ink)))
	}
	w.read("Cautions", rows...)
}
