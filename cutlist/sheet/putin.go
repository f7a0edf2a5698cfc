package sheet

import (
	"tubewright/cutlist"
	"tubewright/route/insert"
)

// putIn is the order in which the tubes go in, where it was asked for.
func (b *book) putIn() {
	list := b.list.PutSteps()
	if len(list) == 0 {
		return
	}
	b.section("Order of putting in")
	b.heading("Order of putting in", bodySize+0.4, 24)
	for i, s := range list {
		b.numbered(i+1, s.Text(), s.Verdict == insert.Impossible)
	}
	b.faint(cutlist.PutInLimits)
}
