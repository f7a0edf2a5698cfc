package ui

import (
	"fmt"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/route/survey"
	"tubewright/ui/session"
)

// surveyModel is the survey sheet as it is typed back in.
type surveyModel struct {
	plan   route.Plan
	units  route.Units
	groups []survey.Group
	typed  map[route.PortRef]*surveyTexts
}

// surveyTexts is what was typed for one port; empty is not typed.
type surveyTexts struct {
	distance [3]string
	facing   string
	thread   string
}

// Columns of a port behind its three distances.
const (
	surveyFacing = 3 + iota
	surveyThread
)

func newSurveyModel(s session.Snapshot) *surveyModel {
	return &surveyModel{plan: s.Plan, units: s.Units, groups: survey.Groups(s.Plan), typed: map[route.PortRef]*surveyTexts{}}
}

// heads names the columns of a part: its walls are the same for all its ports.
func (m *surveyModel) heads(group int) []string {
	heads := []string{"port"}
	for axis, wall := range m.groups[group].Rows[0].From {
		heads = append(heads, fmt.Sprintf("%s from the %s, %s", [...]string{"x", "y", "z"}[axis], wall, m.units))
	}
	return append(heads, "facing", "thread")
}

// name is how a port is called on its part's drawing and in the plan.
func (m *surveyModel) name(group, row int) string {
	r := m.groups[group].Rows[row]
	return r.Letter + "  " + r.Ref.Port
}

// plans is what the plan has for a port: what an empty field stands for.
func (m *surveyModel) plans(group, row int) []string {
	r := m.groups[group].Rows[row]
	var texts []string
	for _, d := range r.Plan {
		texts = append(texts, lengthText(d, m.units))
	}
	return append(texts, r.Facing, r.Thread)
}

// texts is what was typed for a port.
func (m *surveyModel) texts(group, row int) []string {
	t := m.typed[m.groups[group].Rows[row].Ref]
	if t == nil {
		t = &surveyTexts{}
	}
	return append(t.distance[:], t.facing, t.thread)
}

// set notes what was typed. The error says what is wrong with it; it is kept all
// the same, to be mended.
func (m *surveyModel) set(group, row, col int, text string) error {
	ref, text := m.groups[group].Rows[row].Ref, strings.TrimSpace(text)
	t := m.typed[ref]
	if t == nil {
		t = &surveyTexts{}
		m.typed[ref] = t
	}
	switch {
	case col == surveyFacing:
		t.facing = text
		_, err := facingOf(text)
		return err
	case col == surveyThread:
		t.thread = text
		return nil
	}
	t.distance[col] = text
	if text == "" {
		return nil
	}
	_, err := parseLength(text, m.units)
	return err
}

// facingOf reads a facing; an empty one is the plan's.
func facingOf(text string) (mgl64.Vec3, error) {
	if text == "" {
		return mgl64.Vec3{}, nil
	}
	return survey.ParseFacing(text)
}

// readings are the ports that were typed, in the sheet's order. The error is
// about the first that is not whole.
func (m *surveyModel) readings() (all []survey.Reading, err error) {
	for _, g := range m.groups {
		for _, row := range g.Rows {
			t := m.typed[row.Ref]
			if t == nil || *t == (surveyTexts{}) {
				continue
			}
			r, err := m.reading(row, t)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", row.Ref, err)
			}
			all = append(all, r)
		}
	}
	return all, nil
}

func (m *surveyModel) reading(row survey.Row, t *surveyTexts) (r survey.Reading, err error) {
	r = survey.Reading{Ref: row.Ref, From: row.From, Thread: t.thread}
	for axis, text := range t.distance {
		if text == "" {
			return r, fmt.Errorf("the distance from the %s is missing; all three are needed", row.From[axis])
		}
		if r.Distance[axis], err = parseLength(text, m.units); err != nil {
			return r, err
		}
	}
	r.Facing, err = facingOf(t.facing)
	return r, err
}
