package sheet

import (
	"fmt"

	"tubewright/route/insert"
)

// putInLimits is what the search for the order leaves out.
const putInLimits = "Looked at are straight slides of the stiff piece with its loose collars, in through the open side, sockets on their ports or unscrewed and carried on the tube. " +
	"Not looked at: pieces turned or bent aside on their way, parts loosened on their screws, and the length of the sockets' threads. Force nothing: a piece that does not go as told wants another way in."

// putIn is the order in which the tubes go in, where it was asked for.
func (b *book) putIn() {
	list := b.list.PutSteps()
	if len(list) == 0 {
		return
	}
	b.section("Order of putting in")
	b.heading("Order of putting in", bodySize+0.4, 24)
	for i, s := range list {
		name := fmt.Sprintf("%s, %s: ", s.Letter, s.Run)
		if s.Verdict != insert.Possible {
			name = fmt.Sprintf("%s, %s: %s. ", s.Letter, s.Run, s.Verdict)
		}
		text := name + s.Words
		if len(s.First) > 0 {
			text += " For service it comes out only after " + joined(s.First) + "."
		}
		b.numbered(i+1, text, s.Verdict == insert.Impossible)
	}
	b.faint(putInLimits)
}
