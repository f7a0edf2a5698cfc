package nest

// Certificate is what proves a bound, written so that whole-number arithmetic
// alone can check it, by somebody who does not trust the search.
//
// Bars are weighed, not priced: a bar of stock weighs its price times PerCost,
// plus one (price 1 where no stock has a price); an offcut weighs one. PerCost is
// more than the number of pieces, so than that of bars in any plan. The lightest plan is then the cheapest, with the fewest bars among those.
//
// Kinds of piece are the different lengths of the job, longest first, each with
// its count and the room it takes: its length and one kerf; a bar then has room
// for its length and one kerf. Nothing of kind k is said but by its place k in
// that list; branches append to it.
//
// The tree shows that no plan weighs less than Reached. From there up to Floor
// no plan's weight can lie: for no bought bars that come to just such a price
// have, with all offcuts, room for all pieces and, being so many, such a weight.
// So every plan costs at least Floor / PerCost, rounded down.
type Certificate struct {
	PerCost        int
	Reached, Floor int
	// Filters say which loads need not be looked at in the leaves: see Dual.
	Filters []Dual
	// Tree is nil where Exhausted is set.
	Tree *Proof
	// Exhausted: every way to cut was tried. There is nothing to show for it but
	// to try them again; it is used for small jobs only. The filter, where there is
	// one, says which need not be.
	Exhausted bool
}

// Proof is a node of the tree: a leaf where Leaf is set, else a branch on two
// kinds of piece A and B, which may be the same (Ryan & Foster 1981, for bars
// in demand more than once: da Silva & Schouery 2023).
//
//   - Together: some bar holds an A and a B. One of each is taken away and their
//     union added as a new kind at the end of the list, wanted once and kept apart
//     from all that A or B is.
//   - Apart: no bar holds an A and a B (no bar holds two A, if they are the same).
//
// Where A and B are to be kept apart, or fewer than one A and one B (two A) are
// left, or their union is longer than every bar, the branch Together is nil:
// there is no such plan.
type Proof struct {
	Leaf            *Dual
	A, B            int
	Together, Apart *Proof
}

// Dual proves a bound for the kinds of piece of its node by prices for them. Say
// no load of a bar is dearer than Scale times the bar's weight, plus Over of that
// bar: then a plan weighs at least
//
//	(Σ count·Prices − Σ most·Over) / Scale
//
// Over is 0 for bars without limit (a limit of as many as there are pieces is
// none). It counts along the job's Stock, then its Offcuts. Prices may be below
// 0: a plan holds each piece exactly as often as it is wanted.
//
// A leaf need keep this for a load only if no filter rules the load out. A
// filter is a Dual that holds for every load at the root, and so shows for a
// load by how much, Scale·weight + Over − Σ Prices, a plan that uses it must
// weigh more than the filter's bound: a load that leads to Reached or above is
// ruled out. A union of pieces has the sum of their prices in filters.
type Dual struct {
	Scale  int
	Prices []int
	Over   []int
}

// prove keeps what a bound rests on, if it is the best so far.
func (s *search) prove(bound int, tree *Proof) {
	if bound > s.reached {
		s.reached, s.tree = bound, tree
	}
	s.raise(bound)
}

// leaf writes dual values in the terms of the job.
func (s *search) leaf(d duals) *Proof {
	return &Proof{Leaf: &Dual{Scale: d.unit, Prices: d.values, Over: s.spread(d.over)}}
}

// spread gives each bar of the job what its kind has; bars too short for any
// piece have nothing.
func (t task) spread(over []int) []int {
	wide := make([]int, t.sources)
	for b, kind := range t.bars {
		for _, f := range kind.from {
			wide[f.index+t.firstOf(kind)] = over[b]
		}
	}
	return wide
}

// firstOf is where the list of the kind of bar begins: stock, then offcuts.
func (t task) firstOf(b bar) int {
	if b.offcut {
		return t.stocks
	}
	return 0
}

// certificate of the floor; nil where nothing was proven.
func (s *search) certificate() *Certificate {
	if s.floor <= 0 {
		return nil
	}
	return &Certificate{PerCost: s.scale, Reached: s.reached, Floor: s.floor, Filters: s.filters, Tree: s.tree, Exhausted: s.tree == nil}
}
