package find

import (
	"context"

	"tubewright/route"
)

// MostUnlooked is the most work that a solve of a plan does between two looks at its
// context, and from the last one to its end.
func MostUnlooked(plan route.Plan) int {
	t := newTable(newScene(plan))
	m := &meter{Context: context.Background(), table: t}
	if _, err := t.solve(m); err != nil {
		panic(err)
	}
	_ = m.Err()
	return m.most
}

// meter is a context that measures the work between looks at it.
type meter struct {
	context.Context
	table      *table
	last, most int
}

func (m *meter) Err() error {
	work := m.table.halt.work
	m.most, m.last = max(m.most, work-m.last), work
	return nil
}
