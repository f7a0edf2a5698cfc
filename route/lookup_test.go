package route_test

import (
	"reflect"
	"testing"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
	"tubewright/route"
)

// stocked is a plan with own entries beside and above the catalogue's.
func stocked() route.Plan {
	return route.Plan{
		Tube:     "clear",
		Tubes:    []route.Tube{{Name: "clear", Material: "own"}},
		Fittings: []route.Fitting{{Name: "s-14", Kind: route.Socket, OD: 14, Thread: "G3/8"}, {Name: "s-16", Kind: route.Socket, OD: 16, Price: 9}},
		Parts:    []route.Part{{Name: "pump", Kind: "pump-kind"}},
		Runs:     []route.Run{{Name: "one", Tube: "copper"}, {Name: "two"}, {Name: "three", Tube: "lead"}},
		Catalogue: &route.Catalogue{
			Tubes: []route.Tube{{Name: "clear", Material: "shelf"}, {Name: "copper", Tube: bends.Tube{OD: 14}}},
			Fittings: []route.Fitting{
				{Name: "s-16", Kind: route.Socket, OD: 16, Price: 5},
				{Name: "cap", Kind: route.Plug, OD: 16},
				{Name: "t-16", Kind: route.Socket, OD: 16, Thread: "G1/4"},
			},
			Parts: []route.Part{{Name: "pump-kind", Ports: []route.Port{{Name: "out", Facing: mgl64.Vec3{1, 0, 0}}}}},
		},
	}
}

func TestThePlansOwnComesFirst(t *testing.T) {
	p := stocked()
	if tube, ok := p.FindTube("clear"); !ok || tube.Material != "own" {
		t.Errorf("FindTube = %+v, %v, want the plan's own", tube, ok)
	}
	if f, ok := p.FindFitting("s-16"); !ok || f.Price != 9 {
		t.Errorf("FindFitting = %+v, %v, want the plan's own", f, ok)
	}
	names := ""
	for _, f := range p.AllFittings() {
		names += f.Name + " "
	}
	if names != "s-14 s-16 cap t-16 " {
		t.Errorf("AllFittings = %s, want own first, then what the plan has not changed", names)
	}
	if len(p.Fittings) != 2 {
		t.Errorf("AllFittings made the plan's own %d", len(p.Fittings))
	}
}

func TestFind(t *testing.T) {
	p := stocked()
	if f, ok := p.FindFitting("cap"); !ok || f.Kind != route.Plug {
		t.Errorf("FindFitting(cap) = %v, %v, want the catalogue's", f, ok)
	}
	if k, ok := p.FindKind("pump-kind"); !ok || len(k.Ports) != 1 {
		t.Errorf("FindKind = %v, %v", k, ok)
	}
	if r, ok := p.FindRun("two"); !ok || r.Name != "two" {
		t.Errorf("FindRun = %v, %v", r, ok)
	}
	if q, ok := p.FindPort(route.PortRef{Part: "pump", Port: "out"}); !ok || q.Ref.String() != "pump.out" {
		t.Errorf("FindPort = %v, %v, want a port of the part's kind", q, ok)
	}
	for _, ref := range []route.PortRef{{Part: "pump", Port: "in"}, {Part: "pomp", Port: "out"}, {}} {
		if q, ok := p.FindPort(ref); ok {
			t.Errorf("FindPort(%v) = %v, want nothing", ref, q)
		}
	}
	for name, found := range map[string]func(string) bool{
		"tube":    func(n string) bool { _, ok := p.FindTube(n); return ok },
		"fitting": func(n string) bool { _, ok := p.FindFitting(n); return ok },
		"part":    func(n string) bool { _, ok := p.FindPart(n); return ok },
		"kind":    func(n string) bool { _, ok := p.FindKind(n); return ok },
		"run":     func(n string) bool { _, ok := p.FindRun(n); return ok },
	} {
		if found("nobody") || found("") {
			t.Errorf("there is no %s called nobody, nor one without a name", name)
		}
	}
	if _, ok := (route.Plan{}).FindTube("clear"); ok {
		t.Error("a plan without a catalogue has no tubes")
	}
}

func TestTubeOf(t *testing.T) {
	p := stocked()
	for i, want := range []string{"copper", "clear", ""} {
		if tube, ok := p.TubeOf(p.Runs[i]); tube.Name != want || ok != (want != "") {
			t.Errorf("run %s is of %q, %v, want %q", p.Runs[i].Name, tube.Name, ok, want)
		}
	}
}

func TestSocketFor(t *testing.T) {
	p := stocked()
	tests := []struct {
		od     float64
		thread string
		want   string
	}{
		{16, "", "s-16"},
		{16, "G1/4", "s-16"}, // the plan's own says nothing of its thread, so it goes with any
		{16.04, "G3/8", "s-16"},
		{15.9, "", ""}, // a tenth of a millimetre is another size
		{14, "G3/8", "s-14"},
		{14, "G1/4", ""},
	}
	for _, c := range tests {
		if f, ok := p.SocketFor(c.od, c.thread); f.Name != c.want || ok != (c.want != "") {
			t.Errorf("SocketFor(%v, %q) = %q, %v, want %q", c.od, c.thread, f.Name, ok, c.want)
		}
	}
}

// Nothing that is done to a clone may reach the plan it was made of.
func TestCloneSharesNothing(t *testing.T) {
	full := func() route.Plan {
		p := stocked()
		p.Fittings[0].Rolls = []float64{0, 90}
		p.Parts[0].Solids, p.Parts[0].Ports = []route.Solid{{Radius: 1}}, []route.Port{{Name: "x"}}
		p.Parts[0].Passages, p.Parts[0].Metals = [][2]string{{"x", "y"}}, []string{"brass"}
		p.Runs[0].Via = []mgl64.Vec3{{1, 2, 3}}
		p.Runs[0].Start, p.Runs[0].End = route.Chain{{Fitting: "a"}}, route.Chain{{Fitting: "b"}}
		p.Stock, p.OnHand = []route.Stock{{Length: 500}}, []route.OnHand{{Item: "cap", Count: 2}}
		p.Offcuts = []route.Offcuts{{Tube: "clear", Lengths: []float64{310}}}
		return p
	}
	p := full()
	c := p.Clone()
	if !reflect.DeepEqual(c, p) || c.Catalogue != p.Catalogue {
		t.Fatalf("the clone differs:\n%+v\n%+v", c, p)
	}
	if n := wipe(reflect.ValueOf(&c).Elem()); n < 15 {
		t.Fatalf("wiped %d lists of the clone, want all", n)
	}
	if !reflect.DeepEqual(p, full()) {
		t.Errorf("wiping the clone changed the plan to\n%+v", p)
	}
}

// wipe sets every element of every list to its zero, innermost first, and counts
// the lists. Pointers are left alone: the catalogue is shared.
func wipe(v reflect.Value) (lists int) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			lists += wipe(v.Field(i))
		}
	case reflect.Slice:
		for i := range v.Len() {
			lists += wipe(v.Index(i))
			v.Index(i).SetZero()
		}
		if v.Len() > 0 {
			lists++
		}
	default:
	}
	return lists
}
