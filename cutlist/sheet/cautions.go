package sheet

import "tubewright/cutlist/draw"

// caution is a heading with points to tick.
type caution struct {
	head   string
	points []string
}

// cautionTexts is what the sheets say about safety. [cp] marks what is common
// practice and not from a standard; the limit of the air test is a block
// maker's note on air testing, squareness, deburring and insertion marks are the
// copper tube handbook's.
var cautionTexts = []caution{
	{"Heat and fumes", []string{
		"Heat plastic tube only with good ventilation: overheated plastic gives off fumes. Stop when it bubbles, browns or smells sharp. [cp]",
		"Gloves against hot tube and the nozzle of the heat gun; put the gun down on its stand, away from anything that burns. [cp]",
		"Keep the gun moving and the tube turning; heat the bend and about one diameter on each side. A cord or spring inside keeps the bore round. [cp]",
		"Hold the bend still on the former until it is cool: one to three minutes for thin acrylic. [cp]",
	}},
	{"Saw, dust and glass", []string{
		"Eye protection for every cut. Hold tube in a block or soft jaws, never in the hand. Cut away from yourself.",
		"A mask for fine dust; wipe it up, do not blow it. Glass: cut-proof gloves, never force it, and never bend it over a flame without training. [cp]",
		"Cut square to the axis; deburr the inside and chamfer the outside of each end before it goes near a seal (copper tube handbook, push-connect joints).",
	}},
	{"Joints", []string{
		"Mark the depth of insertion on each end before joining, and see the mark at the collar afterwards (copper tube handbook).",
		"Fittings with O-rings go hand tight and need no thread tape. [cp]",
		"Keep aluminium and copper out of one loop. [cp]",
	}},
	{"Dry fit, before any pressure", []string{
		"Every tube lies in both its sockets without force: it neither pulls a part aside nor springs back when let go. Force now is a leak later. [cp]",
		"Each insertion mark stands at its collar, each collar turns on its thread by hand from the start, and no seal is nicked or rolled. [cp]",
		"Hoses, cables, fans and covers keep clear of tubes and collars; the case closes. [cp]",
		"Every port without a tube has its plug; the drain can be reached and opened with the machine standing. [cp]",
	}},
	{"Air test, before any coolant", []string{
		"Never above 0.5 bar (7.3 psi): the most used limit, and less where a maker says less. Use a pump with a gauge and a way to let air off; wear eye protection.",
		"Wait five minutes after pumping: air that was squeezed is warm. Then read gauge, clock and room thermometer, and again after 15 and 30 minutes. [cp]",
		"A change of the room's temperature moves the needle too: about 5 mbar for each degree at 0.5 bar (gas law, fixed volume: 1513 mbar absolute / 293 K = 5.2 mbar each degree). A fall beyond that is a leak.",
		"Let all air off before you loosen anything.",
	}},
	{"Wet test", []string{
		"Coolant and mains do not meet: unplug the computer from the mains. Power only the pump, from a supply of its own or with nothing else connected.",
		"Paper towels under every joint; run for 24 hours and look often. Dry every drop before anything else is powered. [cp]",
		"Keep the coolant well below the temperature at which the tube softens: for PETG below about 60 °C. [cp]",
	}},
}

// deferral is what stands above all cautions.
const deferral = "Makers' instructions for tube, fittings, pump and tools go first, and so do local codes. Work on mains wiring belongs to people licensed for it. " +
	"Points marked [cp] are common practice, not from a standard."

// cautions is the page of cautions with room for the tests' readings.
func (b *book) cautions() {
	b.page("Cautions and tests", "Cautions and tests")
	b.heading("Before you start", headSize, 20)
	b.para(deferral)
	for _, c := range cautionTexts {
		b.heading(c.head, bodySize+0.4, 14)
		for _, p := range c.points {
			b.item(p, bodySize)
		}
	}
	b.testLog()
	b.putIn()
}

// testRows are the readings the log has room for.
var testRows = [...][2]string{
	{"air, first time", "5"},
	{"", "15"},
	{"", "30"},
	{"air, after mending", "5"},
	{"", "15"},
	{"", "30"},
	{"wet, pump on", "0"},
	{"", "60"},
	{"", "24 h"},
}

// testLog is a table for the readings of the tests, to fill in by hand.
func (b *book) testLog() {
	b.heading("Readings", bodySize+0.4, 60)
	cols := []column{
		{head: "test"},
		{head: "minutes", align: draw.Right},
		{head: "clock", wraps: true},
		{head: "pressure, bar", wraps: true},
		{head: "room, °C", wraps: true},
		{head: "dry at every joint?", wraps: true},
		{head: "by", wraps: true},
	}
	var rows [][]cell
	for _, r := range testRows {
		rows = append(rows, say(r[0], r[1], "", "", "", "", ""))
	}
	b.table(cols, rows)
}
