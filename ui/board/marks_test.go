package board

import (
	"testing"

	"tubewright/route/check"
)

// A few notes are marks with a letter; many are dots, so that they hide nothing.
func TestManyNotesAreSmall(t *testing.T) {
	for _, row := range []struct {
		notes, errors int
		aside, radius float32
	}{
		{1, 0, noteAside, 7},
		{manyNotes, 5, noteAside, 7},
		{manyNotes + 1, 0, noteAside / 2, noteDot},
	} {
		s := Scene{Findings: make([]SceneFinding, row.notes)}
		for i := range s.Findings {
			s.Findings[i].Severity = check.Note
		}
		for range row.errors {
			s.Findings = append(s.Findings, SceneFinding{Severity: check.Error})
		}
		p := Painter{scene: &s}
		if aside, radius := p.noteSize(); aside != row.aside || radius != row.radius {
			t.Errorf("%d notes and %d errors: notes stand %v aside with radius %v, want %v and %v", row.notes, row.errors, aside, radius, row.aside, row.radius)
		}
	}
}
