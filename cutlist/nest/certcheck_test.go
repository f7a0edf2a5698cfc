package nest_test

import (
	"errors"
	"fmt"
	"math/big"
	"slices"

	"tubewright/cutlist/nest"
)

// certChecker accepts or refuses the certificate of a bound. It shares no code
// with the search, computes in whole numbers only, and trusts nothing but the
// job. What a certificate says is described at [nest.Certificate].
type certChecker struct {
	bars    []certBar
	filters []filter
	reached int
	perCost int
	work    int // steps left; a check that would take more is refused
}

// certBar is a kind of bar as the certificate weighs it.
type certBar struct {
	room, weight, most int
	limited            bool
}

// filter rules a load out whose prices come to no more than most, along bars.
type filter struct {
	most []int
}

// certKind is a kind of piece in a node of the tree.
type certKind struct {
	count, room int
	worth       []int        // along filters: the most a piece of it may be priced
	apart       map[int]bool // kinds it may not share a bar with
}

const (
	// mostCertPrice keeps the sum of a load's prices inside 64 bits: a load holds
	// at most 2^14 pieces.
	mostCertPrice = 1 << 48
	// certWork is a few seconds at most.
	certWork = 400_000_000
)

// checkCertificate refuses a bound that its certificate does not prove; the
// error says why.
func checkCertificate(job nest.Job, bound int, c *nest.Certificate) error {
	switch {
	case bound == 0:
		return nil // nothing costs less than nothing
	case c == nil:
		return errors.New("no certificate")
	case bound > c.Floor/max(1, c.PerCost):
		return fmt.Errorf("bound %d above floor %d", bound, c.Floor)
	case c.Exhausted && c.Tree == nil:
		return tryAgain(job, bound, c)
	}
	k := &certChecker{bars: certBars(job, c.PerCost), perCost: c.PerCost, reached: c.Reached, work: certWork}
	kinds := certKinds(job)
	for i := range c.Filters {
		if err := k.addFilter(&c.Filters[i], kinds); err != nil {
			return fmt.Errorf("filter %d: %w", i, err)
		}
	}
	if c.Reached > 0 || c.Tree != nil {
		if err := k.node(c.Tree, kinds); err != nil {
			return err
		}
	}
	return k.climb(job, bound)
}

var errUntried = errors.New("said to be exhausted, too large to be tried again")

// errTooLarge says that a certificate is neither accepted nor refused.
var errTooLarge = errors.New("beyond what is checked")

func certBars(job nest.Job, perCost int) (list []certBar) {
	for _, b := range job.Stock {
		price := b.Price
		if !job.Priced() {
			price = 1
		}
		list = append(list, certBar{b.Length + job.Kerf, price*perCost + 1, b.Most, b.Most > 0})
	}
	for _, b := range job.Offcuts {
		list = append(list, certBar{b.Length + job.Kerf, 1, max(1, b.Most), true})
	}
	return list
}

func certKinds(job nest.Job) []certKind {
	counts := map[int]int{}
	for _, p := range job.Pieces {
		counts[p.Length] += p.Count
	}
	var list []certKind
	for length, n := range counts {
		list = append(list, certKind{count: n, room: length + job.Kerf, apart: map[int]bool{}})
	}
	slices.SortFunc(list, func(a, b certKind) int { return b.room - a.room })
	return list
}

// proves gives the bound of a dual, as weight times scale: Σ count·price − Σ most·over.
func (k *certChecker) proves(d *nest.Dual, kinds []certKind) (*big.Int, error) {
	if d.Scale <= 0 || len(d.Prices) != len(kinds) || len(d.Over) != len(k.bars) {
		return nil, fmt.Errorf("scale %d, %d prices for %d kinds, %d for %d bars", d.Scale, len(d.Prices), len(kinds), len(d.Over), len(k.bars))
	}
	sum := new(big.Int)
	for i, p := range d.Prices {
		if p > mostCertPrice || p < -mostCertPrice {
			return nil, errTooLarge
		}
		sum.Add(sum, product(p, kinds[i].count))
	}
	for i, over := range d.Over {
		if over < 0 || over > 0 && !k.bars[i].limited || over > mostCertPrice {
			return nil, fmt.Errorf("bar %d: over %d", i, over)
		}
		sum.Sub(sum, product(over, k.bars[i].most))
	}
	return sum, nil
}

func product(a, b int) *big.Int {
	return new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
}

// allows is the most a load of a bar may be worth under a dual.
func (k *certChecker) allows(d *nest.Dual, bar int) (int, error) {
	most := new(big.Int).Add(product(d.Scale, k.bars[bar].weight), big.NewInt(int64(d.Over[bar])))
	if !most.IsInt64() {
		return 0, errTooLarge
	}
	return int(most.Int64()), nil
}

// addFilter checks a filter at the root and keeps which loads it rules out:
// those with Σ prices ≤ allowed + sum − (reached − 1)·scale − 1.
func (k *certChecker) addFilter(d *nest.Dual, kinds []certKind) error {
	sum, err := k.proves(d, kinds)
	if err != nil {
		return err
	}
	if err := k.holds(d, kinds, nil); err != nil {
		return err
	}
	rest := sum.Sub(sum, product(k.reached-1, d.Scale))
	f := filter{}
	for b := range k.bars {
		allowed, err := k.allows(d, b)
		if err != nil {
			return err
		}
		most := new(big.Int).Add(rest, big.NewInt(int64(allowed-1)))
		if !most.IsInt64() {
			return errTooLarge
		}
		f.most = append(f.most, int(most.Int64()))
	}
	k.filters = append(k.filters, f)
	for i := range kinds {
		kinds[i].worth = append(kinds[i].worth, d.Prices[i])
	}
	return nil
}

// holds checks that no load is worth more than a dual allows, but for those the
// filters rule out.
func (k *certChecker) holds(d *nest.Dual, kinds []certKind, filters []filter) error {
	for b := range k.bars {
		allowed, err := k.allows(d, b)
		if err != nil {
			return err
		}
		l := newLoader(k, kinds, d.Prices, filters, b, allowed)
		if l.some(0, k.bars[b].room, 0) {
			return fmt.Errorf("bar %d: a load is worth more than %d", b, allowed)
		}
		if k.work < 0 {
			return errTooLarge
		}
	}
	return nil
}

func (k *certChecker) node(p *nest.Proof, kinds []certKind) error {
	switch {
	case p == nil:
		return errors.New("a branch without a proof")
	case p.Leaf != nil:
		return k.leaf(p.Leaf, kinds)
	case p.A < 0 || p.B < 0 || p.A >= len(kinds) || p.B >= len(kinds):
		return fmt.Errorf("a branch on kinds %d and %d of %d", p.A, p.B, len(kinds))
	}
	if union, can := k.together(p.A, p.B, kinds); can {
		if err := k.node(p.Together, union); err != nil {
			return err
		}
	} else if p.Together != nil {
		return errors.New("a proof for a branch that cannot be")
	}
	apart := copyKinds(kinds)
	apart[p.A].apart[p.B], apart[p.B].apart[p.A] = true, true
	return k.node(p.Apart, apart)
}

func (k *certChecker) leaf(d *nest.Dual, kinds []certKind) error {
	sum, err := k.proves(d, kinds)
	if err != nil {
		return err
	}
	if least := product(k.reached-1, d.Scale); sum.Cmp(least) <= 0 {
		return fmt.Errorf("a leaf proves %v / %d; below %d", sum, d.Scale, k.reached)
	}
	return k.holds(d, kinds, k.filters)
}

// together gives the kinds when an a and a b are one piece; false: they cannot be.
func (k *certChecker) together(a, b int, kinds []certKind) ([]certKind, bool) {
	list := copyKinds(kinds)
	list[a].count--
	list[b].count--
	room := list[a].room + list[b].room
	fits := slices.ContainsFunc(k.bars, func(c certBar) bool { return room <= c.room })
	if list[a].count < 0 || list[b].count < 0 || list[a].apart[b] || !fits {
		return nil, false
	}
	u := certKind{count: 1, room: room, apart: map[int]bool{}}
	for f := range list[a].apart {
		u.apart[f] = true
	}
	for f := range list[b].apart {
		u.apart[f] = true
	}
	for i := range k.filters {
		u.worth = append(u.worth, list[a].worth[i]+list[b].worth[i])
	}
	for f := range u.apart {
		list[f].apart[len(list)] = true
	}
	return append(list, u), true
}

func copyKinds(kinds []certKind) []certKind {
	list := slices.Clone(kinds)
	for i, c := range kinds {
		list[i].worth, list[i].apart = slices.Clone(c.worth), map[int]bool{}
		for f := range c.apart {
			list[i].apart[f] = true
		}
	}
	return list
}

// climb goes from the weight reached up to the bound: a plan costs no less than
// the bound if every cost below it is too light, or no bars come to it, or those
// that do have, with all offcuts, less room than the pieces take.
func (k *certChecker) climb(job nest.Job, bound int) error {
	pieces, need := 0, 0
	for _, p := range job.Pieces {
		pieces += p.Count
		need += p.Count * (p.Length + job.Kerf)
	}
	if pieces >= k.perCost {
		return errors.New("more pieces than a bar weighs")
	}
	for _, b := range k.bars[len(job.Stock):] {
		need -= b.most * b.room
	}
	lightest := max(0, (k.reached-pieces+k.perCost-1)/k.perCost) // the least cost that reaches so far
	if lightest >= bound {
		return nil
	}
	if bound > mostCosts {
		return errTooLarge
	}
	rooms := k.sums(job, bound, func(b certBar) int { return b.room })
	bars := k.sums(job, bound, func(certBar) int { return 1 })
	free := 0
	for _, b := range k.bars[len(job.Stock):] {
		free += b.most
	}
	for cost := lightest; cost < bound; cost++ {
		heaviest := cost*k.perCost + min(pieces, bars[cost]+free)
		if rooms[cost] >= max(0, need) && heaviest >= k.reached {
			return fmt.Errorf("a plan may cost %d, the bound is %d", cost, bound)
		}
	}
	return nil
}

// mostCosts are gone through one by one.
const mostCosts = 1 << 24

// sums gives for each cost below a bound the most that bought bars of just that
// cost have in all of what each has; below 0: none come to it.
func (k *certChecker) sums(job nest.Job, bound int, of func(certBar) int) []int {
	most := make([]int, bound)
	for cost := range most {
		most[cost] = -1
		if cost == 0 {
			most[cost] = 0
		}
		for i := range job.Stock {
			price := k.bars[i].weight / k.perCost
			if price <= cost && most[cost-price] >= 0 {
				most[cost] = max(most[cost], most[cost-price]+of(k.bars[i]))
			}
		}
	}
	return most
}
