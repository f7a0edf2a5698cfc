package find

import (
	"slices"
	"strings"

	"tubewright/route"
)

// naming is what a way is named after: its fittings and its bends.
type naming struct {
	kit   tally
	form  bendForm
	bends uint8
}

// tally is how many fittings of each kind there are besides sockets.
type tally [len(kitKinds)]uint8

// kitKinds are the kinds of fitting that names count, in their order.
var kitKinds = [...]kindOf{route.Offset, route.Elbow, route.Extender, route.Tee, route.Valve, route.Coupler}

// bendForm is what kind of bends a way has.
type bendForm uint8

const (
	anyBends bendForm = iota
	squareBends
	offsetBend45
	anyOffsetBend
	halfBends // right angles and halves of them
)

// namingOf is the naming of a way of a shape between two chains.
func namingOf(sh shape, start, end *build) naming {
	n := naming{kit: start.tally, form: formOf(sh, start, end), bends: uint8(len(sh.turns))}
	for k := range n.kit {
		n.kit[k] += end.tally[k]
	}
	return n
}

func formOf(sh shape, start, end *build) bendForm {
	n := len(sh.turns)
	switch {
	case n < 2:
		return anyBends
	case allTurn(sh.turns, 90):
		return squareBends
	case n == 2 && isTurn(sh.turns[0], sh.turns[1]) && start.frame.Dir.Add(end.frame.Dir).Len() < nearParallel:
		if isTurn(sh.turns[0], 45) {
			return offsetBend45
		}
		return anyOffsetBend
	}
	if n > 2 && slanted(sh.turns) {
		return halfBends
	}
	return anyBends
}

// and is the tally with one more fitting.
func (t tally) and(kind kindOf) tally {
	if k := slices.Index(kitKinds[:], kind); k >= 0 {
		t[k]++
	}
	return t
}

// words is the name.
func (n naming) words() string {
	kit := n.kitWords()
	switch {
	case n.bends == 0 && len(kit) == 0:
		return "straight"
	case n.bends == 0:
		return "straight, " + strings.Join(kit, ", ")
	case len(kit) == 0:
		return n.bendWords()
	}
	return strings.Join(kit, ", ") + " and " + n.bendWords()
}

// kitWords counts the fittings besides sockets, by kind.
func (n naming) kitWords() []string {
	var words []string
	for k, kind := range kitKinds {
		if n.kit[k] > 0 {
			words = append(words, counted(int(n.kit[k]), string(kind)))
		}
	}
	return words
}

// bendWords names the bends: "one bend", "offset bend 45" ("offset bend" of any
// other turn), "three square bends".
func (n naming) bendWords() string {
	bends := int(n.bends)
	switch {
	case bends == 1:
		return "one bend"
	case n.form == squareBends:
		return counted(bends, "square bend")
	case n.form == offsetBend45:
		return "offset bend 45"
	case n.form == anyOffsetBend:
		return "offset bend"
	case n.form == halfBends:
		return counted(bends, "bend") + legsAt45
	}
	return counted(bends, "bend")
}

// legsAt45 is in the name of a way with slanting legs.
const legsAt45 = " with legs at 45"
