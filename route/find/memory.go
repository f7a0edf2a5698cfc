package find

import (
	"context"
	"reflect"
	"slices"
	"sync"

	"tubewright/route"
)

// Memory solves plans one after another and remembers what it searched, for a
// window in which a person tries things, takes them back and tries again. Its
// answers are those of Solve, byte for byte: what it remembers is used again
// only where everything that the search rests on is the same: tubes and fittings,
// the weights, the run, and of the parts and of the room that the ports of other
// runs need, what it asked of them. After an edit of one run the others are not
// searched again, after a part was moved those runs are that its new place makes
// a difference to, and a plan that was solved before is not searched at all.
//
// The zero value remembers nothing yet. Solves of one Memory wait for each other.
type Memory struct {
	mu    sync.Mutex
	pasts []*past // the latest last
}

const (
	// mostPasts bounds the arrangements of parts that are remembered: a few steps
	// back and forth.
	mostPasts = 8
	// mostAsked bounds the searches of one run that are remembered.
	mostAsked = 64
	// mostVariants bounds, for each run of a plan, the ways it was drawn or tied
	// that are remembered of one arrangement.
	mostVariants = 4
	// mostKept bounds what is kept of all the places searches looked at: some
	// thirty megabytes (looked counts by the size of a box of space).
	mostKept = 1 << 19
)

// past is what is known of one arrangement of parts.
type past struct {
	scene *scene
	runs  []pastRun
}

// pastRun is what is known of a run among what other runs' ports need.
type pastRun struct {
	run      route.Run
	reserved []solid
	asked    []asked
	home     *hunt
	homeless bool
}

// Solve is [Solve] with a memory.
func (m *Memory) Solve(ctx context.Context, plan route.Plan) (Solution, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	sc := newScene(plan)
	if n := len(m.pasts); n > 0 {
		sc.borrow(m.pasts[n-1].scene)
	}
	t := newTable(sc)
	for _, p := range m.pasts {
		if moved, ok := movedFrom(p, t.scene); ok {
			t.moves = append(t.moves, moved)
		}
	}
	t.past = m.pastOf(t.scene)
	sol, err := t.solve(ctx)
	if err == nil { // a solve that was stopped leaves the memory as it was
		t.remember()
		m.keep(t.past)
	}
	return sol, err
}

// pastOf gives what is known of a scene's parts, a new past if need be.
func (m *Memory) pastOf(sc *scene) *past {
	if n := slices.IndexFunc(m.pasts, func(p *past) bool { return p.scene.sameAs(sc) }); n >= 0 {
		return m.pasts[n]
	}
	return &past{scene: sc}
}

// keep makes a past the latest; the oldest are forgotten when there are too many
// or they hold too much.
func (m *Memory) keep(p *past) {
	m.pasts = append(slices.DeleteFunc(m.pasts, func(q *past) bool { return q == p }), p)
	for len(m.pasts) > mostPasts || len(m.pasts) > 1 && m.looks() > mostKept {
		m.pasts = slices.Delete(m.pasts, 0, 1)
	}
}

// looks counts what is kept of the places searches looked at, each once.
func (m *Memory) looks() (sum int) {
	seen := map[*looked]bool{nil: true}
	for _, p := range m.pasts {
		for _, r := range p.runs {
			for _, a := range r.asked {
				if !seen[a.looked] {
					seen[a.looked] = true
					sum += a.looked.count
				}
			}
		}
	}
	return sum
}

// sameAs reports whether a search finds the same in two scenes.
func (sc *scene) sameAs(other *scene) bool {
	return sc.sameBut(other) && reflect.DeepEqual(sc.placed, other.placed)
}

// sameBut reports whether two scenes are the same but for where their parts stand.
func (sc *scene) sameBut(other *scene) bool {
	p, q := &sc.plan, &other.plan
	return p.Case == q.Case && p.Clear == q.Clear && p.Weigh == q.Weigh && p.Errors == q.Errors && p.Units == q.Units && p.Tube == q.Tube && p.Saw == q.Saw &&
		p.Catalogue == q.Catalogue && reflect.DeepEqual(p.Tubes, q.Tubes) && slices.Equal(p.Stock, q.Stock) &&
		reflect.DeepEqual(p.Offcuts, q.Offcuts) && reflect.DeepEqual(sc.fittings, other.fittings)
}

// recall takes up what is known of a run.
func (t *table) recall(ctx context.Context, i int, reserved []solid) {
	if t.past == nil {
		return
	}
	if n := t.past.find(t.plan.Runs[i], reserved); n >= 0 {
		r := &t.past.runs[n]
		t.rows[i].asked, t.rows[i].home = slices.Clone(r.asked), r.home
		t.rows[i].homeless = r.homeless
		return
	}
	t.carry(ctx, i, reserved)
}

func (p *past) find(run route.Run, reserved []solid) int {
	return slices.IndexFunc(p.runs, func(r pastRun) bool { return sameRun(r.run, run) && slices.Equal(r.reserved, reserved) })
}

// sameRun reports whether two runs are the same but for the way that is picked.
func sameRun(r, s route.Run) bool {
	r.Pick, s.Pick = "", ""
	return reflect.DeepEqual(r, s)
}

// remember keeps what was searched.
func (t *table) remember() {
	for i := range t.rows {
		r := &t.rows[i]
		known := pastRun{run: t.plan.Runs[i], reserved: r.reserved, asked: r.asked, home: r.home, homeless: r.homeless}
		known.run.Pick = ""
		known.asked = latest(known.asked)
		if n := t.past.find(known.run, known.reserved); n >= 0 {
			t.past.runs = slices.Delete(t.past.runs, n, n+1)
		}
		t.past.runs = append(t.past.runs, known) // the latest last
	}
	if n := len(t.past.runs) - mostVariants*len(t.rows); n > 0 {
		t.past.runs = slices.Delete(t.past.runs, 0, n)
	}
}

// latest keeps the searches for the list and the last of the others.
func latest(all []asked) []asked {
	drop := len(all) - mostAsked
	return slices.DeleteFunc(all, func(a asked) bool { drop--; return drop >= 0 && a.looked == nil })
}
