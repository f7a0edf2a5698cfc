package ui

import (
	"fmt"
	"slices"

	"tubewright/bends/trial"
	"tubewright/route"
	"tubewright/ui/session"
)

// trialModel is the test bends of one tube as they are typed in, and what they say.
type trialModel struct {
	tube  route.Tube
	units route.Units
	hand  route.Errors
	list  []trial.Bend

	fit trial.Fitted
	err error // of the readings; nil with a fit, or while something is not typed yet
}

// newTrialModel is the test bends of a tube as the plan has them.
func newTrialModel(s session.Snapshot, tube string) *trialModel {
	t, _ := s.Plan.FindTube(tube)
	m := &trialModel{tube: t, units: s.Units, hand: s.Plan.Errors, list: slices.Clone(t.TestBends)}
	if len(m.list) == 0 {
		m.list = []trial.Bend{{From: trial.Ends, To: trial.Back}}
	}
	m.work()
	return m
}

// bentTubes lists the tubes of a plan that can be bent: that of a run first,
// then the plan's, then those of the other runs.
func bentTubes(p route.Plan, run string) (names []string) {
	add := func(t route.Tube, ok bool) {
		if ok && t.Radius > 0 && !slices.Contains(names, t.Name) {
			names = append(names, t.Name)
		}
	}
	if r, ok := p.FindRun(run); ok {
		add(p.TubeOf(r))
	}
	add(p.FindTube(p.Tube))
	for _, r := range p.Runs {
		add(p.TubeOf(r))
	}
	return names
}

// Columns of a test bend.
const (
	trialFormer = iota
	trialAfter
	trialLeg1
	trialLeg2
	trialLength
)

// heads names the columns, the first that of the names.
func (m *trialModel) heads() []string {
	u := ", " + string(m.units)
	length := "piece before" + u
	if m.from() == trial.Marks {
		length = "between marks" + u
	}
	return []string{"", "on the former, °", "after letting go, °", "leg 1" + u, "leg 2" + u, length}
}

// from is where the legs are measured from: one choice for all bends.
func (m *trialModel) from() trial.From {
	if len(m.list) > 0 && m.list[0].From == trial.Marks {
		return trial.Marks
	}
	return trial.Ends
}

func (m *trialModel) to() trial.To {
	if len(m.list) > 0 && m.list[0].To == trial.Centre {
		return trial.Centre
	}
	return trial.Back
}

// measureFrom and measureTo say how all legs were measured.
func (m *trialModel) measureFrom(from trial.From) {
	for i := range m.list {
		length := lengthBefore(m.list[i])
		m.list[i].From = from
		setLengthBefore(&m.list[i], length)
	}
	m.work()
}

func (m *trialModel) measureTo(to trial.To) {
	for i := range m.list {
		m.list[i].To = to
	}
	m.work()
}

// lengthBefore is what lay between the points the legs are measured from, mm.
func lengthBefore(b trial.Bend) float64 {
	if b.From == trial.Marks {
		return b.Marks[1] - b.Marks[0]
	}
	return b.Blank
}

func setLengthBefore(b *trial.Bend, length float64) {
	if b.From == trial.Marks {
		b.Blank, b.Marks = 0, [2]float64{0, length}
		return
	}
	b.Blank, b.Marks = length, [2]float64{}
}

// texts is a row as its fields show it; what is not typed yet is empty.
func (m *trialModel) texts(row int) []string {
	b := m.list[row]
	texts := []string{angleText(b.Former), angleText(b.After)}
	for _, mm := range []float64{b.Legs[0], b.Legs[1], lengthBefore(b)} {
		texts = append(texts, lengthText(mm, m.units))
	}
	for i, text := range texts {
		if text == "0" {
			texts[i] = ""
		}
	}
	return texts
}

// add begins a bend, measured as the one before it.
func (m *trialModel) add() {
	m.list = append(m.list, trial.Bend{From: m.from(), To: m.to()})
	m.work()
}

// drop takes the last bend away.
func (m *trialModel) drop() {
	m.list = m.list[:len(m.list)-1]
	m.work()
}

// set takes what was typed in a field; an empty one is not typed yet.
func (m *trialModel) set(row, col int, text string) error {
	value, err := 0.0, error(nil)
	if text != "" {
		value, err = m.parse(col, text)
	}
	if err != nil {
		return err
	}
	b := &m.list[row]
	switch col {
	case trialFormer:
		b.Former = value
	case trialAfter:
		b.After = value
	case trialLeg1, trialLeg2:
		b.Legs[col-trialLeg1] = value
	case trialLength:
		setLengthBefore(b, value)
	}
	m.work()
	return nil
}

func (m *trialModel) parse(col int, text string) (float64, error) {
	if col == trialFormer || col == trialAfter {
		return parseAngle(text)
	}
	return parseLength(text, m.units)
}

// missing is the first bend with a field that is not typed yet; −1: none.
func (m *trialModel) missing() int {
	for i, b := range m.list {
		if b.Former == 0 || b.After == 0 || b.Legs[0] == 0 || b.Legs[1] == 0 || lengthBefore(b) == 0 {
			return i
		}
	}
	return -1
}

// ready reports whether there is a fit to use.
func (m *trialModel) ready() bool { return len(m.list) > 0 && m.missing() < 0 && m.err == nil }

// work fits what is typed, when all of it is.
func (m *trialModel) work() {
	m.fit, m.err = trial.Fitted{}, nil
	if len(m.list) == 0 || m.missing() >= 0 {
		return
	}
	tube := m.tube
	tube.TestBends = m.list
	m.fit, m.err = tube.Tried(m.hand)
}

// words says what the bends say, or what is still missing.
func (m *trialModel) words() (text string, r role) {
	switch i := m.missing(); {
	case len(m.list) == 0:
		return "No test bend yet. Bend one piece to 90° and type what came out; three say much more than one.", soft
	case i >= 0:
		return fmt.Sprintf("Bend %d is not complete: all five numbers are needed.", i+1), soft
	case m.err != nil:
		return sentence(m.err.Error()), bad
	}
	return m.told(), ink
}

// told is the fit in words.
func (m *trialModel) told() string {
	f, u := m.fit, m.units
	gain, opens := f.Gain(90), f.Opens(90)
	return fmt.Sprintf("Radius %s, likely between %s and %s (the plan has %s). A bend of 90° opens by %s, likely %s to %s, and gains %s.",
		u.TextUnit(f.Radius.At), u.Text(f.Radius.Low), u.TextUnit(f.Radius.High), u.TextUnit(m.tube.Radius),
		route.Degrees(opens.At), route.Degrees(max(0, opens.Low)), route.Degrees(opens.High), u.TextUnit(gain.At))
}
