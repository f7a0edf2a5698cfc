package session

import "tubewright/route"

// state is a plan in the history and the edit that made it.
type state struct {
	id   int // unlike any other of the session
	name string
	plan route.Plan
	key  string // edits in a row with one key are one step; empty: always its own
}

// history is every plan since the file was opened. Its zero value holds none.
type history struct {
	past   []state // the last is shown
	future []state // undone, the last was undone last
	nextID int
	saved  int // id of the state the file holds; 0: none
	drag   *drag
}

// drag is a change by the pointer that has not been dropped yet.
type drag struct {
	name string
	from state   // what was shown when it began
	redo []state // what could be done again then
}

func newHistory(plan route.Plan) history {
	return history{past: []state{{id: 1, plan: plan}}, nextID: 2, saved: 1}
}

func (h *history) open() bool { return len(h.past) > 0 }

func (h *history) top() state {
	if !h.open() {
		return state{}
	}
	return h.past[len(h.past)-1]
}

func (h *history) plan() route.Plan { return h.top().plan }

func (h *history) dirty() bool { return h.open() && h.top().id != h.saved }

func (h *history) undoName() string {
	if len(h.past) < 2 {
		return ""
	}
	return h.top().name
}

func (h *history) redoName() string {
	if len(h.future) == 0 {
		return ""
	}
	return h.future[len(h.future)-1].name
}

// add shows a new plan. It takes the place of the one before when both carry
// one key, or when a drag is under way and has already made its step.
func (h *history) add(name, key string, plan route.Plan) {
	next := state{id: h.nextID, name: name, plan: plan, key: key}
	h.nextID++
	h.future = nil
	if h.merges(key) {
		h.past[len(h.past)-1] = next
		return
	}
	h.past = append(h.past, next)
}

func (h *history) merges(key string) bool {
	top := h.top()
	if h.drag != nil {
		return top.id != h.drag.from.id
	}
	return key != "" && key == top.key && top.id != h.saved
}

// undo goes one step back and reports whether there was one.
func (h *history) undo() bool {
	if len(h.past) < 2 {
		return false
	}
	h.future = append(h.future, h.top())
	h.past = h.past[:len(h.past)-1]
	h.part()
	return true
}

func (h *history) redo() bool {
	if len(h.future) == 0 {
		return false
	}
	h.past = append(h.past, h.future[len(h.future)-1])
	h.future = h.future[:len(h.future)-1]
	h.part()
	return true
}

// part keeps the next edit from merging into what is shown.
func (h *history) part() { h.past[len(h.past)-1].key = "" }

func (h *history) beginDrag(name string) {
	h.drag = &drag{name: name, from: h.top(), redo: h.future}
}

// endDrag keeps what was dragged, as one step.
func (h *history) endDrag() { h.drag = nil }

// dropDrag goes back to where the drag began and reports whether that changed the plan.
func (h *history) dropDrag() bool {
	if h.drag == nil {
		return false
	}
	moved := h.top().id != h.drag.from.id
	if moved {
		h.past = h.past[:len(h.past)-1]
		h.future = h.drag.redo
	}
	h.drag = nil
	return moved
}

// keep says that the file now holds what is shown.
func (h *history) keep() {
	h.saved = h.top().id
	h.part()
}
