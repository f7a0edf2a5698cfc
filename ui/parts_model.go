package ui

import (
	"fmt"
	"strings"

	"tubewright/route"
	"tubewright/route/check"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// partRow is one line of the list of parts.
type partRow struct {
	name  string
	facts string // what it is and how its ports are used
}

// partsOf lists the parts of a plan in its order.
func partsOf(p route.Plan) []partRow {
	rows := make([]partRow, len(p.Parts))
	for i, k := range p.Parts {
		whole := p.Whole(k)
		used := 0
		for _, q := range whole.Ports {
			if runAt(p, route.PortRef{Part: k.Name, Port: q.Name}) != "" {
				used++
			}
		}
		rows[i] = partRow{k.Name, dotted(kindOf(k), portsUsed(used, len(whole.Ports)))}
	}
	return rows
}

// kindOf names the kind of a part where that says more than its name.
func kindOf(k route.Part) string {
	if k.Kind == k.Name {
		return ""
	}
	return k.Kind
}

func portsUsed(used, all int) string {
	if all == 0 {
		return "no ports"
	}
	return fmt.Sprintf("%d of %s", used, count(all, "port"))
}

// runAt names the first run that ends at a port.
func runAt(p route.Plan, ref route.PortRef) string {
	for _, r := range p.Runs {
		if r.From == ref || r.To == ref {
			return r.Name
		}
	}
	return ""
}

// detailModel is what the panel of the selected thing shows.
type detailModel struct {
	title  string
	lines  []string
	fixed  bool       // there is nothing to remove or to fit
	part   string     // the entries are for this part; empty: none are shown
	places [3]float64 // mm
	turns  [3]float64 // degrees
	units  route.Units
	under  underModel // the picture under the look, while nothing is selected
}

// detailOf shows what is selected, or says that nothing is.
func detailOf(s session.Snapshot, at board.Target) detailModel {
	switch at.Kind {
	case board.OnPart:
		if k, ok := s.Plan.FindPart(at.Part); ok {
			return partDetail(s, k)
		}
	case board.OnRun:
		if r, ok := s.Plan.FindRun(at.Run); ok {
			return runDetail(s, r)
		}
	case board.OnPort:
		return portDetail(s, at.Port)
	case board.OnFinding:
		if i := at.Finding; i >= 0 && i < len(s.List.Findings) {
			return findingDetail(s.List.Findings[i], s.Units)
		}
	case board.Nothing:
	}
	return nothingDetail(s)
}

func nothingDetail(s session.Snapshot) detailModel {
	m := detailModel{title: "Nothing is selected", fixed: true}
	switch {
	case !s.Open:
		m.lines = []string{"Open a plan, or look at a demo."}
	case len(s.Plan.Parts) == 0:
		m.lines = []string{"The plan has no parts yet. Add one from the Edit menu."}
	default:
		m.lines = []string{"Click a part, a port or a tube, on the board or in a list."}
	}
	return m
}

func findingDetail(f check.Finding, u route.Units) detailModel {
	m := detailModel{title: codeWords(f.Code), fixed: true, lines: []string{f.What, f.Fix}}
	if text := measureOf(f, u); text != "" {
		m.lines = append(m.lines, "measure: "+text)
	}
	return m
}

// codeWords writes a finding's code as words: "Loop open".
func codeWords(c check.Code) string {
	words := strings.ReplaceAll(string(c), "-", " ")
	if words == "" {
		return "Finding"
	}
	return strings.ToUpper(words[:1]) + words[1:]
}

// partDetail shows a part's numbers and ports.
func partDetail(s session.Snapshot, k route.Part) detailModel {
	m := detailModel{title: k.Name, part: k.Name, units: s.Units, places: k.At, turns: k.Turn}
	whole := s.Plan.Whole(k)
	for _, q := range whole.Ports {
		m.lines = append(m.lines, portLine(s.Plan, k.Name, q))
	}
	return m
}

func portLine(p route.Plan, part string, q route.Port) string {
	use := "free"
	if run := runAt(p, route.PortRef{Part: part, Port: q.Name}); run != "" {
		use = run
	}
	flow := ""
	if q.Flow != route.Any && q.Flow != "" && string(q.Flow) != q.Name {
		flow = "flow " + string(q.Flow)
	}
	known := "typical"
	if q.KnownFrom.Firm() {
		known = string(q.KnownFrom)
	}
	return q.Name + ": " + dotted(q.Thread, flow, use, known)
}

// runDetail shows what a run asks for and what it got.
func runDetail(s session.Snapshot, r route.Run) detailModel {
	m := detailModel{title: r.Name, units: s.Units}
	m.lines = append(m.lines, "from "+r.From.String()+" to "+r.To.String())
	if t, ok := s.Plan.TubeOf(r); ok {
		m.lines = append(m.lines, fmt.Sprintf("tube %s, %s outside, %s inside", t.Name, s.Units.Text(t.OD), s.Units.TextUnit(t.ID)))
	}
	for _, t := range s.List.Tubes {
		if t.Run == r.Name {
			m.lines = append(m.lines, "start: "+chainOf(t.Way.Start), "end: "+chainOf(t.Way.End),
				t.Way.Reason)
		}
	}
	return m
}

// portDetail shows a port where it stands.
func portDetail(s session.Snapshot, ref route.PortRef) detailModel {
	m := detailModel{title: ref.String(), units: s.Units, fixed: true}
	q, ok := s.Plan.FindPort(ref)
	if !ok {
		return m
	}
	at := q.Frame.At
	m.lines = append(m.lines,
		"at "+s.Units.Text(at[0])+", "+s.Units.Text(at[1])+", "+s.Units.TextUnit(at[2]),
		"facing "+facing(q.Frame.Dir), portLine(s.Plan, ref.Part, route.Port{
			Name: ref.Port, Thread: q.Thread, Flow: q.Flow, KnownFrom: q.KnownFrom,
		}))
	return m
}
