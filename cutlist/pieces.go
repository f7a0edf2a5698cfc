package cutlist

import (
	"cmp"
	"maps"
	"slices"

	"tubewright/cutlist/nest"
)

// piecesOf lists what to saw of one kind of tube: every machine's tubes in turn,
// then the spares. Tubes without a length to cut, and those that are there, are
// left out.
func (l List) piecesOf(kind string) []Piece {
	var list []Piece
	for machine := 1; machine <= max(1, l.Plan.Build); machine++ {
		for _, t := range l.Tubes {
			if t.Way.Tube.Name == kind && hundredths(t.Cut.Blank) > 0 && machine > t.Made {
				list = append(list, Piece{Run: t.Run, Machine: machine, Length: whole(hundredths(t.Cut.Blank))})
			}
		}
	}
	spare, _ := l.spareFor(kind)
	list = append(list, l.spares(kind, true, spare.Bent)...)
	return append(list, l.spares(kind, false, spare.Straight)...)
}

// spares gives n blanks of the longest bent or straight tube of a kind.
func (l List) spares(kind string, bent bool, n int) []Piece {
	longest := Piece{Spare: true}
	for _, t := range l.Tubes {
		if t.Way.Tube.Name == kind && t.Made < max(1, l.Plan.Build) && bent == (len(t.Way.Formed.Bends) > 0) && t.Cut.Blank > longest.Length {
			longest.Run, longest.Length = t.Run, whole(hundredths(t.Cut.Blank))
		}
	}
	if longest.Length == 0 {
		return nil
	}
	return slices.Repeat([]Piece{longest}, max(0, n))
}

// job is the pieces as package nest takes them.
func (l List) job(pieces []Piece, stock, offcuts []nest.Bar) nest.Job {
	job := nest.Job{
		Stock: stock, Offcuts: offcuts,
		Kerf: hundredths(l.Plan.Saw.Kerf), KeepOver: hundredths(l.Plan.KeepOver),
	}
	counts := map[int]int{}
	for _, p := range pieces {
		counts[hundredths(p.Length)]++
	}
	for _, length := range slices.Sorted(maps.Keys(counts)) {
		job.Pieces = append(job.Pieces, nest.Piece{Length: length, Count: counts[length]})
	}
	return job
}

// dealt hands the pieces out to the bars of a result, equal lengths in the
// order of the pieces, and gives the bars in sawing order and what stays uncut.
func (l List) dealt(kind string, job nest.Job, r nest.Result, pieces []Piece) ([]Bar, []Piece) {
	queue := slices.Clone(pieces)
	slices.SortStableFunc(queue, func(a, b Piece) int { return cmp.Compare(b.Length, a.Length) })
	var bars []Bar
	for _, p := range r.Patterns {
		for range p.Count {
			bar := l.bar(kind, job, p)
			for _, length := range p.Pieces {
				i := slices.IndexFunc(queue, func(q Piece) bool { return hundredths(q.Length) == length })
				bar.Pieces = append(bar.Pieces, queue[i])
				queue = slices.Delete(queue, i, i+1)
			}
			bars = append(bars, bar)
		}
	}
	return bars, queue
}

func (l List) bar(kind string, job nest.Job, p nest.Pattern) Bar {
	b := Bar{
		Tube: kind, Length: whole(job.Length(p)), From: "offcut", Left: whole(p.Left),
		Keep: p.Left > 0 && p.Left >= job.KeepOver,
	}
	if !p.Offcut {
		b.From, b.Price = "stock", whole(job.Stock[p.Bar].Price)
	}
	return b
}
