package find

import (
	"math"
	"slices"

	"tubewright/route"
)

// build is a chain put together in the search: its fittings with every roll
// settled, and the frame it ends in.
type build struct {
	steps []buildStep
	few   [mostFittings + 1]buildStep // room for them
	root  route.Frame                 // of the port
	frame route.Frame
	price float64
	tally tally
	rank  int // order among equal costs
	// verdict is what its bodies run into, worked out once it is asked for.
	verdict          *hit
	judged, measured bool
	// among is the hunt that has asked last whether it is clear of other runs, and
	// crowded the answer.
	among   *hunt
	crowded bool
	limbs   []limb // of its bodies, once they are asked for
	of      []int  // of each limb its body
}

type buildStep struct {
	fit  *route.Fitting
	roll float64
}

// ray is where the tube of a chain that ends in a socket goes.
func (b *build) ray() ray { return ray{b.frame.At, b.frame.Dir} }

// socket is the last fitting.
func (b *build) socket() *route.Fitting { return b.steps[len(b.steps)-1].fit }

// extra counts the fittings other than the socket.
func (b *build) extra() int { return len(b.steps) - 1 }

// mouth is how far along the tube from its stop the collar reaches, mm.
func (b *build) mouth() float64 { return max(0, b.socket().Collar.Length-b.socket().Stop) }

// with gives the chain with one more fitting.
func (b *build) with(fit *route.Fitting, roll float64) *build {
	next := &build{root: b.root, frame: b.frame, price: b.price, tally: b.tally, rank: b.rank}
	next.steps = append(next.few[:0], b.steps...)
	return next.add(fit, roll)
}

// add puts one more fitting on a chain that nobody else has.
func (b *build) add(fit *route.Fitting, roll float64) *build {
	if b.steps == nil {
		b.steps = b.few[:0]
	}
	b.steps = append(b.steps, buildStep{fit, roll})
	b.frame, b.price, b.tally = b.frame.Past(fit, roll), b.price+fit.Price, b.tally.and(fit.Kind)
	return b
}

// chain is the build as plans write it.
func (b *build) chain() route.Chain {
	chain := make(route.Chain, len(b.steps))
	for i, s := range b.steps {
		chain[i] = route.Step{Fitting: s.fit.Name, Roll: s.roll, Rolled: turns(s.fit)}
	}
	return chain
}

// turns reports whether a fitting's roll says anything.
func turns(f *route.Fitting) bool {
	return f.Kind == route.Offset || f.Kind == route.Elbow || f.Kind == route.Tee
}

// side is one end of a run: its port and what may stand on it.
type side struct {
	port   route.PlacedPort
	part   int            // index of the part among the placed ones
	given  []givenStep    // nil: the chain is chosen here
	socket *route.Fitting // nil with a given chain
	// sockets are all that fit the tube and the port, of which socket is the first.
	sockets kits
	kit     map[kindOf]kits           // fittings whose thread goes with the port
	lifts   *[mostFittings + 1][]lift // see liftsUpTo
	plain   *build                    // the given chain or the socket alone, free rolls at their first choice
}

type (
	kindOf = route.FittingKind
	kits   = []*route.Fitting
)

type givenStep struct {
	fit    *route.Fitting
	roll   float64
	rolled bool
}

// bare is the port with nothing on it.
func (s *side) bare() *build { return &build{root: s.port.Frame, frame: s.port.Frame} }

// closed ends a chain that nobody else has with the side's socket.
func (s *side) closed(b *build) *build { return b.add(s.socket, 0) }

// mostPerKind bounds how many fittings of one kind a search looks at, so that a
// long catalogue cannot make it slow; the cheapest of equal ones stay.
const mostPerKind = 12

// kitFor sorts out the fittings a port may carry, in a fixed order: those that
// do the same are one, the cheapest of them.
func (sc *scene) kitFor(thread string) *rack {
	if r, ok := sc.racks[thread]; ok {
		return r
	}
	kit := map[kindOf]kits{}
	for i := range sc.fittings {
		f := &sc.fittings[i]
		if !route.SameThread(f.Thread, thread) || !joins(f) {
			continue
		}
		list := kit[f.Kind]
		if j := slices.IndexFunc(list, func(g *route.Fitting) bool { return sameJob(f, g) }); j >= 0 {
			if f.Price < list[j].Price {
				list[j] = f
			}
		} else if len(list) < mostPerKind {
			kit[f.Kind] = append(list, f)
		}
	}
	r := &rack{kit: kit}
	for most := range r.lifts {
		r.lifts[most] = sumsOf(kit[route.Extender], most)
	}
	sc.racks[thread] = r
	return r
}

// rack is the fittings that a thread takes, and what extenders among them add up
// to, by how many there are at most.
type rack struct {
	kit   map[kindOf]kits
	lifts [mostFittings + 1][]lift
}

// least is the price of the cheapest fitting of a kind in the kit; infinite when
// there is none.
func (s *side) least(kind kindOf) float64 {
	price := math.Inf(1)
	for _, f := range s.kit[kind] {
		price = min(price, f.Price)
	}
	return price
}

// joins reports whether the search may choose a fitting of itself.
func joins(f *route.Fitting) bool {
	switch f.Kind {
	case route.Extender:
		return f.Length > 0
	case route.Offset:
		return f.Sideways > 0
	case route.Elbow:
		return f.Turn > 0 && f.Turn < 180
	case route.Socket, route.Tee, route.Valve, route.Coupler, route.Plug:
	}
	return false
}

// sameJob reports whether two fittings of one kind move the way alike and are
// as thick, so that only the price tells them apart.
func sameJob(f, g *route.Fitting) bool {
	return f.Length == g.Length && f.Sideways == g.Sideways && f.Turn == g.Turn &&
		f.Legs == g.Legs && f.Rotary == g.Rotary && f.Body == g.Body && slices.Equal(f.Rolls, g.Rolls)
}

// rebuilt is the chain of a way that was found, to search on from.
func (h *hunt) rebuilt(s *side, laid *route.Laid) *build {
	b := s.bare()
	for i := range laid.Bodies {
		fit, ok := h.fitting(laid.Bodies[i].Fitting.Name)
		if !ok {
			panic("find: a way stands on a fitting that the plan does not have")
		}
		b = b.with(fit, laid.Bodies[i].Roll)
	}
	return b
}
