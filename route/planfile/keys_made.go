package planfile

import (
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"
	"gopkg.in/yaml.v3"

	"tubewright/route"
)

var attemptKeys = record[route.Attempt]{
	check: checkAttempt,
	keys: []key[route.Attempt]{
		keyOf("cut", "finished length along the centreline, as it came out", func(a *route.Attempt) *float64 { return &a.Cut }, length(over)),
		keyOf("blank", "sawn for it", func(a *route.Attempt) *float64 { return &a.Blank }, length(over)),
		keyOf("cut_from", "length of the bar it was sawn from", func(a *route.Attempt) *float64 { return &a.CutFrom }, length(over)),
		keyOf("fits", "yes or no: it goes in", func(a *route.Attempt) *bool { return &a.Fits }, yesNo()).needed(),
		keyOf("wrong", "what was wrong with it, such as 2 mm long", func(a *route.Attempt) *string { return &a.Wrong }, label[string]()),
		keyOf("date", "when, as you write it", func(a *route.Attempt) *string { return &a.Date }, dateText()),
		keyOf("radius", "centreline radius of its bends; left out: it has none", func(a *route.Attempt) *float64 { return &a.Radius }, length(noLess)),
		keyOf("corners", "its centreline in the case from stop to stop, both included", func(a *route.Attempt) *[]mgl64.Vec3 { return &a.Corners }, listOf[[]mgl64.Vec3](point, flow)),
		keyOf("start", "fittings from the first port outward, as they were", func(a *route.Attempt) *route.Chain { return &a.Start }, listOf[route.Chain](step(), flow)),
		keyOf("end", "fittings from the last port outward, as they were", func(a *route.Attempt) *route.Chain { return &a.End }, listOf[route.Chain](step(), flow)),
	},
}

func attempts() codec[[]route.Attempt] { return listOf[[]route.Attempt](attemptKeys.codec(), block) }

// yesNo is a truth that people write as yes or no.
func yesNo() codec[bool] {
	words := map[string]bool{"yes": true, "no": false, "true": true, "false": false}
	value := func(n *yaml.Node) (v, ok bool) {
		if n.Kind == yaml.ScalarNode {
			v, ok = words[strings.ToLower(n.Value)]
		}
		return v, ok
	}
	return codec[bool]{
		read: func(s spot, n *yaml.Node, into *bool) {
			v, ok := value(n)
			if !ok {
				s.bad(n, "must be yes or no, but "+says(n), "Write yes or no.")
				return
			}
			*into = v
		},
		write: func(_ form, v, _ bool) *item {
			word := map[bool]string{true: "yes", false: "no"}[v]
			return &item{word: word, holds: func(n *yaml.Node) bool { got, ok := value(n); return ok && got == v }}
		},
		same:  func(a, b bool) bool { return a == b },
		shape: shape{kind: "either", either: []shape{{kind: "choice", words: []string{"yes", "no"}}, {kind: "flag"}}},
	}
}

// dateText is a date as typed: text, or what YAML takes for a date or a number.
func dateText() codec[string] {
	c := label[string]()
	c.read = func(s spot, n *yaml.Node, into *string) {
		loose := []string{"!!str", "!!timestamp", "!!int", "!!float"}
		if n.Kind != yaml.ScalarNode || !slices.Contains(loose, n.ShortTag()) {
			s.bad(n, "must be a date as text, but "+says(n), "Write it as you like: 3 May.")
			return
		}
		if n.Value == "" || s.goodName(n, n.Value) {
			*into = n.Value
		}
	}
	c.write = func(_ form, v, base string) *item {
		if v == "" && base == "" {
			return nil
		}
		it := textItem(v)
		it.holds = func(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Value == v }
		return it
	}
	c.shape = shape{kind: "either", either: []shape{{kind: "text"}, {kind: "number", bound: anyNumber}}}
	return c
}

// checkAttempt asks a tube that fits for how it was made: without that nothing
// could hold it in place.
func checkAttempt(s spot, n *yaml.Node, g given, a *route.Attempt) {
	if a.CutFrom > 0 && a.Blank > a.CutFrom+sameNumber && g.sound("blank", "cut_from") {
		s.in("blank").bad(g.place(n, "blank"), "is longer than the bar it was sawn from: "+figures(a.Blank, s.factor)+" from "+figures(a.CutFrom, s.factor), "Correct one of the two.")
	}
	if !a.Fits || !g.sound("corners", "start", "end", "cut") {
		return
	}
	var lacks []string
	for _, need := range []struct {
		key  string
		lack bool
	}{{"cut", a.Cut == 0}, {"corners", len(a.Corners) < 2}, {"start", len(a.Start) == 0}, {"end", len(a.End) == 0}} {
		if need.lack {
			lacks = append(lacks, need.key)
		}
	}
	if len(lacks) > 0 {
		s.bad(n, "fits, but does not say how it was made: it needs "+and(lacks),
			"Let tubecut made or the window write it, or write fits: no.")
	}
	if len(a.Corners) > 2 && a.Radius == 0 && g.sound("radius") {
		s.bad(n, "has bends but no radius", "Add radius (to the centreline, of the former it was bent on).")
	}
}
