package find

import "tubewright/bends"

// tested remembers what came of trying an idea by itself: among the parts, in
// the case, and against its own chains. That does not hang on other runs, so it
// holds for every search of a hunt's run.
type tested struct {
	done, sound bool
	formed      bends.Formed
	tube        []limb
}

// sound reports whether an idea can be formed and is clear of all but other runs.
func (h *hunt) sound(i *idea) bool {
	if t := i.test; !t.done {
		sound := h.trial(i)
		if h.halt.stopped() {
			return false
		}
		t.done, t.sound = true, sound
	}
	return i.test.sound
}

// trial forms an idea and looks at what it runs into by itself.
func (h *hunt) trial(i *idea) bool {
	if h.judge(h.a, i.start) != nil && i.start.verdict != nil || h.judge(h.b, i.end) != nil && i.end.verdict != nil {
		return false
	}
	t := i.test
	var err error
	if t.formed, err = bends.Form(h.tube.Tube, bends.Path{Corners: i.path()}); err != nil {
		return false
	}
	tube := newFormedTube(i, t.formed)
	if h.tubeHits(tube) != nil {
		return false
	}
	t.tube = tube.room()
	return true
}

// stands reports whether an idea is sound and clear of other runs.
func (h *hunt) stands(i *idea) bool {
	return h.sound(i) && !h.crowdedChain(i.start) && !h.crowdedChain(i.end) && !h.crowded(i.test.tube)
}
