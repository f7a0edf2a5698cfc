package find

import (
	"context"
	"errors"
	"slices"

	"tubewright/route"
)

// option is a way that a run may take.
type option struct {
	way    Way
	key    int64 // its cost in steps of sameCost
	limbs  []limb
	lo, hi vec // bounds of all limbs
	rooms  roomsSeen
}

// mostOptions bounds the ways a run keeps in mind: those listed for it, and
// those found while it made room for others.
const mostOptions = 48

func newOption(w Way) *option {
	o := &option{way: w, key: costKey(w.Cost), limbs: limbsOfWay(w)}
	o.lo, o.hi = o.limbs[0].lo, o.limbs[0].hi
	for _, l := range o.limbs[1:] {
		for k := range o.lo {
			o.lo[k], o.hi[k] = min(o.lo[k], l.lo[k]), max(o.hi[k], l.hi[k])
		}
	}
	return o
}

// row is one run on the table.
type row struct {
	options  []*option // as they were found; their numbers never change
	listed   int       // the first so many are its own list, cheapest first
	chosen   int       // −1: none
	ports    []portNeeds
	fixed    bool // drawn or picked: it stays
	problem  error
	asked    []asked
	home     *hunt   // whose ideas brief searches build on
	reserved []solid // what other runs' ports need
	looked   *looked // where the search in hand looks
	// homeless says that the list was carried over from before a part moved: the
	// home is not there, but can be had.
	homeless bool
	oldest   int  // the option that was replaced last
	homing   bool // the run is being listed: its hunt becomes the home
}

// cost is what the run's chosen way costs; 0 without one.
func (r *row) cost() int64 {
	if r.chosen < 0 {
		return 0
	}
	return r.options[r.chosen].key
}

// free reports whether the run may be given another way.
func (r *row) free() bool { return !r.fixed && len(r.options) > 0 }

// byKey numbers the options from the cheapest on.
func (r *row) byKey() []int {
	order := make([]int, len(r.options))
	for n := range order {
		order[n] = n
	}
	slices.SortStableFunc(order, func(a, b int) int { return compareWays(r.options[a].way, r.options[b].way) })
	return order
}

// take adds a way to what a run may take, and gives its number; −1 when the run
// keeps enough in mind.
func (t *table) take(i int, w Way) int {
	r := &t.rows[i]
	if n := slices.IndexFunc(r.options, func(o *option) bool { return sameTube(o.way, w) }); n >= 0 {
		return n
	}
	if len(r.options) == mostOptions {
		return -1
	}
	r.options = append(r.options, newOption(w))
	return len(r.options) - 1
}

// sameTube reports whether two ways of a run are the same tube between the same
// fittings.
func sameTube(a, b Way) bool {
	return slices.Equal(a.Formed.Corners, b.Formed.Corners) && sameChain(a.Start.Bodies, b.Start.Bodies) && sameChain(a.End.Bodies, b.End.Bodies)
}

// nameAt is the name of an option among those listed: unlike any of theirs.
func (r *row) nameAt(n int) string {
	name := r.options[n].way.Name
	if n >= r.listed && slices.ContainsFunc(r.options[:r.listed], func(o *option) bool { return o.way.Name == name }) {
		name += ", round another run"
	}
	return name
}

// around is what other runs take up: their chosen ways, and for those without
// one what their ports need. Only those runs count that which allows.
func (t *table) around(i int, which func(j int) bool) []solid {
	var list []solid
	for _, j := range t.order {
		if r := &t.rows[j]; j != i && r.chosen >= 0 && which(j) {
			list = append(list, r.options[r.chosen].solids()...)
		}
	}
	return append(list, t.reservedBy(i, func(j int) bool { return t.rows[j].chosen < 0 })...)
}

// search looks for ways of a run and adds them to its options. Finding none is
// no error here.
func (t *table) search(ctx context.Context, i int, q request) error {
	ways, err := t.ask(ctx, i, q)
	if none := (*NoWayError)(nil); errors.As(err, &none) {
		err = nil
	}
	for _, w := range ways {
		t.take(i, w)
	}
	return err
}

// apart is how much two options lack of the gap between them, mm; it looks no
// further once that is enough.
func (t *table) apart(o, p *option, enough float64) float64 {
	if o.beyond(p, t.plan.Clear+margin) {
		return 0
	}
	return t.halt.clash(o.limbs, p.limbs, t.plan.Clear, enough)
}

// near reports whether two runs' options come too near to each other.
func (t *table) near(i, a, j, b int) bool {
	if i > j {
		i, a, j, b = j, b, i, a
	}
	o, p := t.rows[i].options[a], t.rows[j].options[b]
	if o.beyond(p, t.plan.Clear+margin) {
		return false
	}
	pair := &t.nearMemo[i*len(t.rows)+j]
	if *pair == nil {
		*pair = make([]int8, mostOptions*mostOptions)
	}
	known := &(*pair)[a*mostOptions+b]
	if *known == 0 {
		*known = -1
		t.halt.did(1 + len(o.limbs)*len(p.limbs)/16)
		if clashes(o.limbs, p.limbs, t.plan.Clear) {
			*known = 1
		}
	}
	return *known > 0
}

// beyond reports whether the bounds alone keep two options this far apart.
func (o *option) beyond(p *option, need float64) bool {
	for k := range o.lo {
		if o.lo[k]-p.hi[k] >= need || p.lo[k]-o.hi[k] >= need {
			return true
		}
	}
	return false
}

// clashing reports whether a run's chosen way comes too near to another's; two
// fixed runs are not asked, they stay whatever they hit.
func (t *table) clashing(i int) bool {
	return slices.ContainsFunc(t.order, func(j int) bool { return t.collide(i, j) })
}

// collide reports whether two runs' chosen ways come too near to each other and
// one of them can be changed.
func (t *table) collide(i, j int) bool {
	r, s := &t.rows[i], &t.rows[j]
	return i != j && r.chosen >= 0 && s.chosen >= 0 && !(r.fixed && s.fixed) && t.near(i, r.chosen, j, s.chosen)
}

func sameChain(a, b []route.Body) bool {
	return slices.EqualFunc(a, b, func(x, y route.Body) bool { return x.Fitting.Name == y.Fitting.Name && x.Roll == y.Roll })
}
