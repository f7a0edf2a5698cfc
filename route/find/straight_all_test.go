package find_test

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// search goes through every pair of chains, those of fewer fittings first, until
// no more of them can beat the best that fits.
func (j *joint) search() {
	j.best = math.Inf(1)
	sockets, each := math.Inf(1), math.Inf(1)
	for i := range j.plan.Fittings {
		if f := &j.plan.Fittings[i]; f.Kind == route.Socket {
			sockets = min(sockets, 2*f.Price)
		} else {
			each = min(each, f.Price)
		}
	}
	j.leastSockets = j.weigh.Price * sockets
	least := j.leastSockets + j.weigh.Millimetre*refereeTube.StraightEnd
	for n := range 7 {
		if (j.weigh.Fitting+j.weigh.Price*each)*float64(n)+least >= j.best {
			return
		}
		for first := max(0, n-3); first <= min(3, n); first++ {
			j.everyPair(j.chains[first], j.chains[n-first], least)
		}
	}
}

func (j *joint) everyPair(starts, ends [][]*route.Fitting, least float64) {
	for _, a := range starts {
		for _, b := range ends {
			if p, ok := newPair(a, b); ok && p.cost(j.weigh)+least < j.best {
				j.tryPair(&p)
			}
		}
	}
}

// tryPair looks at one pair of chains at every roll.
func (j *joint) tryPair(p *pairOf) {
	aims := j.directions(p)
	if len(aims) == 0 {
		return
	}
	t := j.trial(p)
	elbows := t.of(route.Elbow)
	for _, aim := range aims {
		for i, l := range elbows {
			l.roll = aim[i]
		}
		t.setOffsets(t.of(route.Offset), p, aim)
	}
}

// of lists the links of a kind, those of the first end first.
func (t *trial) of(kind route.FittingKind) (list []*link) {
	for e := range t.links {
		for i := range t.links[e] {
			if l := &t.links[e][i]; l.fit.Kind == kind {
				list = append(list, l)
			}
		}
	}
	return list
}

// directions gives the rolls of a pair's elbows that let its ends face each
// other; offsets and extenders have no say in it.
func (j *joint) directions(p *pairOf) [][]float64 {
	key := ""
	bare := pairOf{}
	for e, chain := range p.chains {
		for _, f := range chain {
			if f.Kind == route.Elbow {
				key += f.Name + " "
				bare.chains[e] = append(bare.chains[e], f)
			}
		}
		key += "|"
	}
	got, known := j.aims[key]
	if !known {
		got = j.aimAll(&bare)
		j.aims[key] = got
	}
	return got
}

// aimAll steps the rolls of the elbows, and polishes those that come near.
func (j *joint) aimAll(p *pairOf) (aims [][]float64) {
	t := j.trial(p)
	elbows := t.of(route.Elbow)
	_, degrees := j.most()
	if !reachable(elbows, askewness(j.ports[0].Dir, j.ports[1].Dir), degrees) {
		return nil
	}
	var set func(i int)
	set = func(i int) {
		if i < len(elbows) {
			for _, r := range steps(elbows[i].fit) {
				elbows[i].roll = r
				set(i + 1)
			}
			return
		}
		p, q := t.ends(t.links[0], t.links[1])
		if askewness(p.Dir, q.Dir) > degrees+float64(t.turns)*rollStep/2 {
			return
		}
		was := rollsOf(elbows)
		t.polish(t.turns, false)
		p, q = t.ends(t.links[0], t.links[1])
		if askewness(p.Dir, q.Dir) <= degrees+trulyWithin {
			aims = addAim(aims, rollsOf(elbows))
		}
		for i, l := range elbows {
			l.roll = was[i]
		}
	}
	set(0)
	return aims
}

// reachable reports whether elbows can turn one way into another: turns add up
// to no more and take off no more than on a sphere.
func reachable(elbows []*link, apart, degrees float64) bool {
	least, most := 0.0, 0.0
	for _, l := range elbows {
		least, most = math.Abs(least-l.fit.Turn), most+l.fit.Turn
	}
	return apart >= least-degrees && apart <= min(most, 360-most)+degrees
}

// steps are the rolls a fitting is tried at.
func steps(f *route.Fitting) (list []float64) {
	if !f.Rotary {
		return f.Rolls
	}
	for r := 0.0; r < 360; r += rollStep {
		list = append(list, r)
	}
	return list
}

func rollsOf(links []*link) (list []float64) {
	for _, l := range links {
		list = append(list, l.roll)
	}
	return list
}

func addAim(aims [][]float64, aim []float64) [][]float64 {
	for _, have := range aims {
		same := true
		for i := range have {
			same = same && math.Abs(math.Remainder(have[i]-aim[i], 360)) < 0.01
		}
		if same {
			return aims
		}
	}
	return append(aims, aim)
}

// loose reports whether the elbows of a pair may turn together and still face
// each other, which they do where the ports stand along one line.
func (t *trial) loose() bool {
	if t.turns < 2 {
		return false
	}
	_, degrees := t.most()
	apart := askewness(t.ports[0].Dir, t.ports[1].Dir)
	return apart <= degrees+trulyWithin || apart >= 180-degrees-trulyWithin
}

// setOffsets steps the rolls of the offsets and polishes what comes near; a
// pair that is loose is polished with its elbows, and may have one offset.
func (t *trial) setOffsets(offsets []*link, pair *pairOf, aim []float64) {
	sideways, _ := t.most()
	loose := t.loose()
	if loose && len(offsets) > 1 {
		return
	}
	p, q := t.ends(t.links[0], t.links[1])
	within, reach := sideways+lineWithin, 0.0
	for _, l := range offsets {
		reach += l.fit.Sideways
		within += l.fit.Sideways * rollStep / 2 * math.Pi / 180
	}
	spare := 0.0
	if loose {
		swing := (q.At.Sub(p.At).Len() + 100) * rollStep / 2 * math.Pi / 180
		spare = swing
	}
	spare += q.At.Sub(p.At).Len() * askewness(p.Dir, q.Dir) * math.Pi / 180
	within += spare
	mid := t.middle(offsets)
	if mid.Len() > reach+within {
		return
	}
	swings := t.swings(offsets)
	var set func(i int, left mgl64.Vec3)
	set = func(i int, left mgl64.Vec3) {
		if i < len(offsets) {
			for n, r := range steps(offsets[i].fit) {
				offsets[i].roll = r
				set(i+1, left.Add(swings[i][n]))
			}
		} else if left.Len() <= within {
			t.settleTrial(offsets, loose, pair, aim)
		}
	}
	set(0, mid)
}

// polishMoves is more than polishing from the nearest step moves an end, with the
// depth of both stops, mm.
const polishMoves = 40

// settleTrial polishes a trial that comes near and weighs it.
func (t *trial) settleTrial(offsets []*link, loose bool, pair *pairOf, aim []float64) {
	was := rollsOf(offsets)
	p, q := t.ends(t.links[0], t.links[1])
	if pair.cost(t.weigh)+t.leastSockets+t.weigh.Millimetre*(q.At.Sub(p.At).Len()-polishMoves) >= t.best {
		return
	}
	if loose {
		t.polish(len(t.free), true)
	} else {
		t.polishOffsets()
	}
	t.weighIn(pair)
	for i, l := range offsets {
		l.roll = was[i]
	}
	for i, l := range t.of(route.Elbow) {
		l.roll = aim[i]
	}
}

// swings gives how each offset moves what stands aside at each of its steps,
// from the middle of where it swings: turning an offset turns no way out, so
// several just add up.
func (t *trial) swings(offsets []*link) (list [][]mgl64.Vec3) {
	for _, l := range offsets {
		var at []mgl64.Vec3
		for _, r := range steps(l.fit) {
			l.roll = r
			here := t.middle(nil)
			l.roll = r + 180
			at = append(at, here.Sub(t.middle(nil)).Mul(0.5))
		}
		list = append(list, at)
	}
	return list
}

// middle is what stands aside on the mean over opposite rolls of the offsets.
func (t *trial) middle(offsets []*link) mgl64.Vec3 {
	if len(offsets) == 0 {
		p, q := t.ends(t.links[0], t.links[1])
		a, _ := beside(p, q)
		return a
	}
	offsets[0].roll = 0
	sum := t.middle(offsets[1:])
	offsets[0].roll = 180
	return sum.Add(t.middle(offsets[1:])).Mul(0.5)
}

// polishOffsets polishes only the offsets: the elbows are true already.
func (t *trial) polishOffsets() {
	u := trial{joint: t.joint, links: t.links, free: t.free[t.turns:]}
	u.polish(len(u.free), true)
}

// weighIn takes the trial with every pair of sockets that holds it.
func (t *trial) weighIn(pair *pairOf) {
	p, q := t.ends(t.links[0], t.links[1])
	for _, s := range t.sockets {
		for _, r := range t.sockets {
			a, b := p.Ahead(s.Stop), q.Ahead(r.Stop)
			long := b.Sub(a).Len()
			cost := pair.cost(t.weigh) + t.weigh.Price*(s.Price+r.Price) + t.weigh.Millimetre*long
			end, other := p, q
			end.At, other.At = a, b
			if cost < t.best && long >= refereeTube.StraightEnd && fitted(end, other, s, r) && t.keepsOut(s, r) {
				t.best, t.with = cost, fmt.Sprint(t.named(0, s), t.named(1, r))
			}
		}
	}
}

func (t *trial) named(end int, s *route.Fitting) (list []string) {
	for _, l := range t.links[end] {
		list = append(list, fmt.Sprintf("%s@%.2f", l.fit.Name, l.roll))
	}
	return append(list, s.Name)
}

// keepsOut reports whether the fittings of one end keep out of those of the other.
func (t *trial) keepsOut(s, r *route.Fitting) bool {
	a := layChain(t.plan, t.plan.Runs[0].From, bodiesOf(t.links[0], s))
	b := layChain(t.plan, t.plan.Runs[0].To, bodiesOf(t.links[1], r))
	b.centre, b.reach = mgl64.Vec3{}, math.Inf(1)
	for _, p := range netOf(a.bodies) {
		if b.nearest(p, 1) < 0 {
			return false
		}
	}
	return true
}

func bodiesOf(links []link, socket *route.Fitting) (list []route.Body) {
	for _, l := range links {
		list = append(list, route.Body{Fitting: *l.fit, Roll: l.roll})
	}
	return append(list, route.Body{Fitting: *socket})
}
