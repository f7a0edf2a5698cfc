package planfile

import (
	"gopkg.in/yaml.v3"

	"tubewright/route"
)

var weighKeys = record[route.Weigh]{
	layout: always[route.Weigh](flow),
	keys: []key[route.Weigh]{
		keyOf("bend", "what a bend costs", func(w *route.Weigh) *float64 { return &w.Bend }, count(noLess)),
		keyOf("odd_bend", "what a bend costs on top when its turn is neither 45 nor 90 degrees", func(w *route.Weigh) *float64 { return &w.OddBend }, count(noLess)),
		keyOf("millimetre", "what a millimetre of tube costs", func(w *route.Weigh) *float64 { return &w.Millimetre }, count(noLess)),
		keyOf("fitting", "what a fitting beside the two sockets costs", func(w *route.Weigh) *float64 { return &w.Fitting }, count(noLess)),
		keyOf("price", "what one of your money costs", func(w *route.Weigh) *float64 { return &w.Price }, count(noLess)),
		keyOf("tidy", "what each untidy thing costs: a leg aslant, a bend in an odd plane, a tube almost in line with its neighbour", func(w *route.Weigh) *float64 { return &w.Tidy }, count(noLess)),
		keyOf("miss", "what a lost blank costs: a way that seats at the first try with chance c costs this times 1/c - 1 more, at most ten times this", func(w *route.Weigh) *float64 { return &w.Miss }, count(noLess)),
	},
}

var errorKeys = record[route.Errors]{
	layout: always[route.Errors](flow),
	keys: []key[route.Errors]{
		keyOf("port", "how well you place and measure a port", func(e *route.Errors) *float64 { return &e.Port }, length(noLess)),
		keyOf("cut", "how well you cut to length", func(e *route.Errors) *float64 { return &e.Cut }, length(noLess)),
		keyOf("turn", "how well you bend to an angle, degrees", func(e *route.Errors) *float64 { return &e.Turn }, count(bound{least: 0, most: 180})),
		keyOf("roll", "how well you turn the tube between bends, degrees", func(e *route.Errors) *float64 { return &e.Roll }, count(bound{least: 0, most: 180})),
		keyOf("facing", "how far the facing of a port is off, degrees", func(e *route.Errors) *float64 { return &e.Facing }, count(bound{least: 0, most: 180})),
	},
}

// maxCount is the most of anything a plan counts.
const maxCount = 1_000_000

var stockKeys = record[route.Stock]{
	layout: always[route.Stock](flow),
	keys: []key[route.Stock]{
		keyOf("tube", "which tube", func(k *route.Stock) *string { return &k.Tube }, reference("tube", tubeNames)).needed(),
		keyOf("length", "of one bar", func(k *route.Stock) *float64 { return &k.Length }, length(over)).needed(),
		keyOf("price", "of one bar", func(k *route.Stock) *float64 { return &k.Price }, count(noLess)),
		keyOf("most", "how many there are; left out: as many as you like", func(k *route.Stock) *int { return &k.Most }, whole(1, maxCount)),
	},
}

func stock() codec[[]route.Stock] { return listOf[[]route.Stock](stockKeys.codec(), block) }

func offcuts() codec[[]route.Offcuts] {
	lengths := listOf[[]float64](length(over), flow)
	return register[route.Offcuts]{
		what: "offcuts", name: func(o *route.Offcuts) *string { return &o.Tube }, lay: fit,
		each:  lift(func(o *route.Offcuts) *[]float64 { return &o.Lengths }, lengths),
		known: func(s spot, n *yaml.Node, name string) { s.refersTo(n, "tube", name, tubeNames) },
	}.codec()
}

func onHand() codec[[]route.OnHand] {
	return register[route.OnHand]{
		what: "on hand", name: func(o *route.OnHand) *string { return &o.Item }, lay: fit,
		each:  lift(func(o *route.OnHand) *int { return &o.Count }, whole(0, maxCount)),
		known: func(s spot, n *yaml.Node, name string) { s.refersTo(n, "fitting", name, fittingNames) },
	}.codec()
}

var sawKeys = record[route.Saw]{
	layout: always[route.Saw](flow),
	keys: []key[route.Saw]{
		keyOf("kerf", "lost per cut", func(w *route.Saw) *float64 { return &w.Kerf }, length(noLess)),
		keyOf("square", "added once per piece to square its ends", func(w *route.Saw) *float64 { return &w.Square }, length(noLess)),
	},
}

// mostChance is the highest chance in percent that spares are cut for: to be
// certain no number of them is enough.
const mostChance = 99.9

var spareKeys = record[route.Spares]{
	layout: always[route.Spares](flow),
	check:  countedSpares,
	keys: []key[route.Spares]{
		none(silent(keyOf("bent", "extra blanks of the longest bent tube of each kind", func(p *route.Spares) *int { return &p.Bent }, whole(0, maxCount)), func(p *route.Spares) int { return p.Bent })),
		silent(keyOf("straight", "extra blanks of the longest straight tube of each kind", func(p *route.Spares) *int { return &p.Straight }, whole(0, maxCount)), func(p *route.Spares) int { return p.Straight }),
		beside(keyOf("chance", "percent: as many extra blanks as make the chance to finish all tubes of each kind, but no more than there are tubes; 90 when nothing is said of spares, none when only counts are given", func(p *route.Spares) *float64 { return &p.Chance }, count(bound{least: 0, most: mostChance}))),
	},
}

// countedSpares drops the chance where only counts are given.
func countedSpares(_ spot, _ *yaml.Node, g given, p *route.Spares) {
	if !g.has("chance") && (g.has("bent") || g.has("straight")) {
		p.Chance = 0
	}
}

// silent leaves out a count of nothing beside a chance: alone it would say that
// there is no chance.
func silent(k key[route.Spares], count func(*route.Spares) int) key[route.Spares] {
	write := k.write
	k.write = func(f form, v, base *route.Spares) (*item, bool) {
		if v.Chance > 0 && count(v) == 0 {
			goes := &item{word: "0", holds: func(*yaml.Node) bool { return false }}
			return goes, count(base) == 0
		}
		return write(f, v, base)
	}
	return k
}

// none makes a count of nothing speak where it is what says that there are no
// spares.
func none(k key[route.Spares]) key[route.Spares] {
	write := k.write
	k.write = func(f form, v, base *route.Spares) (*item, bool) {
		it, same := write(f, v, base)
		return it, same && (*v != route.Spares{} || *base == route.Spares{})
	}
	return k
}

// beside makes no chance say nothing new: a count beside it says it.
func beside(k key[route.Spares]) key[route.Spares] {
	write := k.write
	k.write = func(f form, v, base *route.Spares) (*item, bool) {
		it, same := write(f, v, base)
		if counted := v.Bent > 0 || v.Straight > 0; counted || v.Chance == 0 {
			same = v.Chance == 0
		}
		return it, same
	}
	return k
}
