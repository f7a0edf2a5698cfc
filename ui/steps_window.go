package ui

import "slices"

// makeSteps makes the strip of first steps. It is there from the first start
// until it is closed, or all of them had been done at the start before.
func (w *Window) makeSteps() {
	w.steps = newSteps(w.tell, w.closeSteps)
	if w.settings.NoSteps || len(w.settings.Steps) >= len(firstSteps) {
		w.steps.Hide()
	}
}

// showSteps ticks off what has been done; it is asked with every snapshot.
func (w *Window) showSteps() {
	if !w.steps.Visible() {
		return
	}
	w.keepSteps(stepsDone(w.snapshot, w.settings.Steps))
	w.steps.show(w.settings.Steps)
}

// printed ticks off the last step.
func (w *Window) printed() {
	if w.steps.Visible() && !slices.Contains(w.settings.Steps, "print") {
		w.keepSteps(append(slices.Clone(w.settings.Steps), "print"))
		w.steps.show(w.settings.Steps)
	}
}

func (w *Window) keepSteps(done []string) {
	if len(done) != len(w.settings.Steps) {
		w.settings.Steps = done
		w.keepSettings()
	}
}

// closeSteps takes the strip away for good.
func (w *Window) closeSteps() {
	w.settings.NoSteps = true
	w.keepSettings()
	w.steps.Hide()
	w.frame.Layout.Layout(w.frame.Objects, w.frame.Size())
	w.focusBoard()
	w.tell("The Help menu brings the first steps back.")
}

// firstStepsAgain shows the strip anew.
func (w *Window) firstStepsAgain() {
	w.settings.NoSteps, w.settings.Steps = false, nil
	w.keepSettings()
	w.steps.Show()
	w.showSteps()
	w.frame.Layout.Layout(w.frame.Objects, w.frame.Size())
}
