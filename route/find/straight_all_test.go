package find_test

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// search goes through every pair of chains, the cheapest first, until none can
// beat the best that fits.
func (j *joint) search() {
	j.best = math.Inf(1)
	least := math.Inf(1)
	for _, s := range j.sockets {
		least = min(least, j.weigh.Price*2*s.Price)
	}
	for i := range j.pairs {
		p := &j.pairs[i]
		if p.cost(j.weigh)+least+j.weigh.Millimetre*refereeTube.StraightEnd >= j.best {
			return
		}
		j.tryPair(p)
	}
}

// tryPair looks at one pair of chains at every roll.
func (j *joint) tryPair(p *pairOf) {
	t := j.trial(p)
	elbows := t.of(route.Elbow)
	for _, aim := range j.directions(p) {
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
	reach, within := sideways+lineWithin, sideways+lineWithin
	for _, l := range offsets {
		reach += 2 * l.fit.Sideways
		within += l.fit.Sideways * rollStep / 2 * math.Pi / 180
	}
	if loose {
		swing := (q.At.Sub(p.At).Len() + 100) * rollStep / 2 * math.Pi / 180
		reach, within = reach+swing, within+swing
	}
	if a, _ := beside(p, q); a.Len() > reach+q.At.Sub(p.At).Len()*askewness(p.Dir, q.Dir)*math.Pi/180 {
		return
	}
	elbows := t.of(route.Elbow)
	var set func(i int)
	set = func(i int) {
		if i < len(offsets) {
			for _, r := range steps(offsets[i].fit) {
				offsets[i].roll = r
				set(i + 1)
			}
			return
		}
		p, q := t.ends(t.links[0], t.links[1])
		if a, ahead := beside(p, q); ahead <= 0 || a.Len() > within+ahead*askewness(p.Dir, q.Dir)*math.Pi/180 {
			return
		}
		was := rollsOf(offsets)
		if loose {
			t.polish(len(t.free), true)
		} else {
			t.polishOffsets()
		}
		t.weighIn(pair)
		for i, l := range offsets {
			l.roll = was[i]
		}
		for i, l := range elbows {
			l.roll = aim[i]
		}
	}
	set(0)
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
			if cost < t.best && long >= refereeTube.StraightEnd && fitted(end, other, s, r) && t.free2(s, r) {
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

// free2 reports whether the fittings of one end keep out of those of the other.
func (t *trial) free2(s, r *route.Fitting) bool {
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
