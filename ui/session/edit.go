package session

import (
	"errors"
	"fmt"

	"tubewright/route"
)

// ErrNoPlan says that nothing is open.
var ErrNoPlan = errors.New("no plan is open")

// MissingError says that the plan has nothing of that name.
type MissingError struct{ What, Name string } // "part", "pump"

func (e *MissingError) Error() string { return fmt.Sprintf("the plan has no %s %q", e.What, e.Name) }

// Edit makes one undoable change, called by name in the undo and redo lines:
// "Move pump". change gets a copy of the plan that it may write to.
func (s *Session) Edit(name string, change func(route.Plan) route.Plan) error {
	return s.edit(name, "", change)
}

// edit is Edit with a key: edits in a row that carry one key are one step of undo.
func (s *Session) edit(name, key string, change func(route.Plan) route.Plan) error {
	if !s.history.open() {
		return ErrNoPlan
	}
	next := change(s.history.plan().Clone())
	if err := sound(next); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	s.history.add(name, key, next)
	s.changed()
	s.note()
	return nil
}

// BeginDrag makes the edits that follow one step until EndDrag or DropDrag.
func (s *Session) BeginDrag(name string) {
	if s.history.open() {
		s.history.beginDrag(name)
	}
}

// EndDrag keeps what was dragged as one step of undo.
func (s *Session) EndDrag() {
	if s.history.drag == nil {
		return
	}
	s.history.endDrag()
	if s.answer.solved != s.version || s.answer.listed != s.version {
		s.solve()
	}
	s.fit()
	s.note()
	s.publish()
}

// DropDrag takes back what was dragged so far, as if it had never begun.
func (s *Session) DropDrag() {
	if s.history.dropDrag() {
		s.changed()
	}
}

// Dragging reports whether a drag is under way.
func (s *Session) Dragging() bool { return s.history.drag != nil }

// Undo takes the last edit back.
func (s *Session) Undo() { s.step((*history).undo) }

// Redo does again what was taken back last.
func (s *Session) Redo() { s.step((*history).redo) }

func (s *Session) step(way func(*history) bool) {
	if s.history.drag != nil {
		s.DropDrag()
		return
	}
	if way(&s.history) {
		s.changed()
		s.note()
	}
}
