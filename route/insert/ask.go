package insert

import (
	"math"
	"strings"

	"tubewright/bends"
)

// choices are the sockets that may be unscrewed, the fewest first.
var choices = [...][2]bool{{false, false}, {false, true}, {true, false}, {true, true}}

// ask answers for one run with some others in place. Answers are kept.
func (m *machine) ask(i int, in func(int) bool) Result {
	key := m.key(i, in)
	if r, ok := m.known[key]; ok {
		return r
	}
	r := m.answer(i, in)
	m.known[key] = r
	return r
}

// sure is ask, and looks for a proof where no slides are found.
func (m *machine) sure(i int, in func(int) bool) Result {
	r := m.ask(i, in)
	if r.Verdict != Undecided {
		return r
	}
	tasks := make([]*task, 0, len(choices))
	for _, off := range m.choices() {
		tasks = append(tasks, m.task(i, off, in))
	}
	m.judge(tasks, &r)
	r.Words = m.whyWords(i, r)
	return r
}

// choices are those that the options leave.
func (m *machine) choices() [][2]bool {
	if m.opt.Stay {
		return choices[:1]
	}
	return choices[:]
}

// key names a run with the set of the others in place.
func (m *machine) key(i int, in func(int) bool) string {
	var b strings.Builder
	b.WriteString(m.runs[i].name)
	for k := range m.runs {
		b.WriteByte(map[bool]byte{true: '1', false: '0'}[k != i && in(k)])
	}
	return b.String()
}

// answer looks for slides.
func (m *machine) answer(i int, in func(int) bool) Result {
	r := Result{Run: m.runs[i].name, At: middle(m.runs[i].way.Formed), Verdict: Undecided}
	r.Play, r.InLine = m.play(i)
	for _, off := range m.choices() {
		if slides, ok := m.task(i, off, in).search(); ok {
			r.Verdict, r.Off, r.Slides = Possible, off, backward(slides)
			r.Words = m.motionWords(i, r)
			return r
		}
	}
	r.Words = m.whyWords(i, r)
	return r
}

// judge says whether a piece for which no slides were found cannot go in.
func (m *machine) judge(tasks []*task, r *Result) {
	r.Verdict, r.Short = Impossible, math.Inf(1)
	for _, t := range tasks {
		c := t.caged()
		if !c.proven || t.freeTurned() {
			r.Verdict, r.Short, r.Blocker = Undecided, 0, ""
			return
		}
		by, short := c.thin.by, c.thin.depth
		if c.sockets {
			by, short = "the sockets", t.lacking()
		}
		if short < r.Short {
			r.Blocker, r.Short = by, short
		}
	}
}

// middle is the place half-way along a tube.
func middle(f bends.Formed) vec {
	for _, p := range f.Pieces() {
		if p.End >= f.Developed/2 {
			at, _ := p.At(f.Developed / 2)
			return at
		}
	}
	return vec{} // a tube of no length
}

// lacking is how much further an end must come out than the other lets it, mm.
func (t *task) lacking() float64 {
	a, b := &t.joints[0], &t.joints[1]
	if !a.held || !b.held {
		return 0
	}
	if a.way.Dot(b.way) < -opposite {
		return min(a.depth-b.back, b.depth-a.back)
	}
	return max(0, min(a.depth-t.slack[0], b.depth-t.slack[1]))
}

// opposite is the cosine from which two ways count as facing each other: one degree.
const opposite = 0.99985

// play is how far the tube can shift between its stops, where the ports face
// each other.
func (m *machine) play(i int) (float64, bool) {
	w := &m.runs[i].way
	inLine := w.Start.Stop.Dir.Dot(w.End.Stop.Dir) < -opposite
	return w.Ends.SeatGap[0] + w.Ends.SeatGap[1], inLine
}

// backward turns slides out of place into slides into place.
func backward(out []Slide) (in []Slide) {
	for i := len(out) - 1; i >= 0; i-- {
		in = append(in, Slide{out[i].By.Mul(-1), out[i].Long})
	}
	return in
}
