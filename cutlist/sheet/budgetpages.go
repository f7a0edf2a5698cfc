package sheet

import "strings"

// budgetNumbers is what the tubes' errors come to in full, and the spares.
func (b *book) budgetNumbers() {
	cols := []column{
		{head: ""},
		figure("aside"), figure("askew"), figure("length"), figure("aside, eased"), figure("askew, eased"), figure("seats"),
		{head: "hangs most on: share, seats were it halved", wraps: true},
	}
	var rows [][]cell
	for _, t := range b.list.Tubes {
		u, worst := t.Budget, t.Budget.Worst()
		var parts []string
		for _, p := range u.Largest {
			parts = append(parts, p.What+": "+exact(p.Share)+", "+exact(p.ChanceIfHalved))
		}
		row := say("", exact(u.AsBent.Aside()), exact(u.AsBent.Askew()), exact(u.AsBent.Length), exact(worst.Aside()), exact(worst.Askew()), exact(u.Chance), strings.Join(parts, " · "))
		row[0].letter = t.Letter
		rows = append(rows, row)
	}
	b.tableOf("Errors: standard deviations at the far socket in mm and degrees, and the chance to seat", cols, rows)
	for _, s := range b.list.Spares {
		b.faint(s.Tube + ": all get done, " + exact(s.Chance) + ": " + s.Why + ".")
	}
}
