package nest_test

import (
	"bufio"
	"fmt"
	"io"
	"slices"

	"tubewright/cutlist/nest"
)

// model writes a problem with one kind of bar as an integer program in LP
// format, by itself and in the two usual ways; the smaller one is taken:
//
//   - arc flow (J. M. Valério de Carvalho, Annals of Operations Research 86
//     (1999), from memory): a bar is a path from 0 to its length, an arc a piece;
//   - assignment: how many of each length go into each of as many bars as first
//     fit takes.
type model struct {
	bar    int
	pieces []nest.Piece // longest first
	arcs   []arc
	ends   []int // places where arcs begin or end, in order
	bars   int   // by first fit
}

type arc struct{ from, to, piece int } // piece below 0: waste

// mostArcs is where the other model is smaller for certain.
const mostArcs = 400_000

func modelOf(job nest.Job) *model {
	m := &model{bar: job.Stock[0].Length, pieces: slices.Clone(job.Pieces)}
	slices.SortFunc(m.pieces, func(a, b nest.Piece) int { return b.Length - a.Length })
	m.bars = m.firstFit()
	m.setArcs()
	if assigned := m.bars * (1 + len(m.pieces)); assigned < len(m.arcs) {
		m.arcs = nil
	}
	return m
}

func (m *model) name() string {
	if m.arcs != nil {
		return "arc flow"
	}
	return "assignment"
}

func (m *model) firstFit() int {
	var room []int
	for _, p := range m.pieces {
		for range p.Count {
			i := slices.IndexFunc(room, func(r int) bool { return r >= p.Length })
			if i < 0 {
				i, room = len(room), append(room, m.bar)
			}
			room[i] -= p.Length
		}
	}
	return len(room)
}

// setArcs follows the pieces, longest first, from every place that longer ones reach.
func (m *model) setArcs() {
	at := map[int]bool{0: true}
	for i, p := range m.pieces {
		starts := keysOf(at)
		done := map[int]bool{}
		for _, s := range starts {
			for k := 0; k < p.Count && s+p.Length <= m.bar && !done[s]; k++ {
				m.arcs, done[s] = append(m.arcs, arc{s, s + p.Length, i}), true
				s += p.Length
				at[s] = true
			}
		}
		if len(m.arcs) > mostArcs {
			return
		}
	}
	at[m.bar] = true
	m.ends = keysOf(at)
	for i := range m.ends[1:] {
		m.arcs = append(m.arcs, arc{m.ends[i], m.ends[i+1], -1})
	}
}

func keysOf(set map[int]bool) (list []int) {
	for k := range set {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}

// lpWriter writes sums of few terms a line, as readers of the format want.
type lpWriter struct {
	*bufio.Writer
	terms int
}

func (w *lpWriter) term(times int, name string, numbers ...any) {
	if w.terms++; w.terms%8 == 0 {
		_ = w.WriteByte('\n') // a failed write is told by Flush
	}
	sign := "+"
	if times < 0 {
		sign, times = "-", -times
	}
	_, _ = fmt.Fprintf(w, " %s %d "+name, append([]any{sign, times}, numbers...)...)
}

func (w *lpWriter) line(text string, numbers ...any) { _, _ = fmt.Fprintf(w, text+"\n", numbers...) }

func (m *model) write(out io.Writer) error {
	w := &lpWriter{Writer: bufio.NewWriter(out)}
	if m.arcs != nil {
		m.writeFlow(w)
	} else {
		m.writeAssignment(w)
	}
	w.line("End")
	return w.Flush()
}

func (m *model) writeFlow(w *lpWriter) {
	w.line("Minimize\n obj: z\nSubject To")
	in, out, of := map[int][]int{}, map[int][]int{}, make([][]int, len(m.pieces))
	for k, a := range m.arcs {
		out[a.from], in[a.to] = append(out[a.from], k), append(in[a.to], k)
		if a.piece >= 0 {
			of[a.piece] = append(of[a.piece], k)
		}
	}
	for _, at := range m.ends {
		_, _ = fmt.Fprintf(w, " n%d:", at)
		for _, k := range in[at] {
			w.term(1, "x%d", k)
		}
		for _, k := range out[at] {
			w.term(-1, "x%d", k)
		}
		switch at {
		case 0:
			w.term(1, "z")
		case m.bar:
			w.term(-1, "z")
		}
		w.line(" = 0")
	}
	for i, list := range of {
		_, _ = fmt.Fprintf(w, " d%d:", i)
		for _, k := range list {
			w.term(1, "x%d", k)
		}
		w.line(" >= %d", m.pieces[i].Count)
	}
	w.line("Generals\n z")
	for k := range m.arcs {
		w.line(" x%d", k)
	}
}

func (m *model) writeAssignment(w *lpWriter) {
	_, _ = fmt.Fprint(w, "Minimize\n obj:")
	for j := range m.bars {
		w.term(1, "y%d", j)
	}
	w.line("\nSubject To")
	for i, p := range m.pieces {
		_, _ = fmt.Fprintf(w, " d%d:", i)
		for j := range m.bars {
			w.term(1, "x%d_%d", i, j)
		}
		w.line(" = %d", p.Count)
	}
	for j := range m.bars {
		_, _ = fmt.Fprintf(w, " c%d:", j)
		for i, p := range m.pieces {
			w.term(p.Length, "x%d_%d", i, j)
		}
		w.term(-m.bar, "y%d", j)
		w.line(" <= 0")
		if j > 0 {
			w.line(" s%d: y%d - y%d >= 0", j, j-1, j)
		}
	}
	w.line("Binaries")
	for j := range m.bars {
		w.line(" y%d", j)
	}
	w.line("Generals")
	for i := range m.pieces {
		for j := range m.bars {
			w.line(" x%d_%d", i, j)
		}
	}
}
