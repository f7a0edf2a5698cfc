package planfile_test

import (
	"fmt"
	"math"

	"github.com/go-gl/mathgl/mgl64"
	"pgregory.net/rapid"

	"tubewright/bends"
	"tubewright/bends/trial"
	"tubewright/route"
	"tubewright/route/planfile"
)

// maker draws random plans that a file can hold.
type maker struct {
	t      *rapid.T
	factor float64
}

// size is a length above 0: mostly one a person would write, sometimes any.
func (m maker) size() float64 {
	if rapid.IntRange(0, 5).Draw(m.t, "any") == 0 {
		return rapid.Float64Range(0.001, 5000).Draw(m.t, "size")
	}
	return float64(rapid.IntRange(1, 99999).Draw(m.t, "size")) / 100 * m.factor
}

// most is a length that may be 0.
func (m maker) most() float64 {
	if rapid.Bool().Draw(m.t, "none") {
		return 0
	}
	return m.size()
}

func (m maker) spot() mgl64.Vec3 {
	sign := float64(rapid.SampledFrom([]int{-1, 1}).Draw(m.t, "sign"))
	return mgl64.Vec3{m.most(), sign * m.most(), m.most()}
}

func (m maker) number() float64 {
	return float64(rapid.IntRange(0, 1000).Draw(m.t, "number")) / 8
}

func (m maker) known() route.KnownFrom {
	return rapid.SampledFrom([]route.KnownFrom{"", route.Typical, route.Drawing, route.Measured}).Draw(m.t, "known")
}

func (m maker) thread() string {
	return rapid.SampledFrom([]string{"", "G1/4", "G3/8", "M10 x 1", "1/4\" taper", "yes", "12", "a: b", "# no", "it's", `back\slash`, "[x]", "ø 14 °"}).Draw(m.t, "thread")
}

// name is one no two of which are the same.
func (m maker) name(i int) string {
	return rapid.SampledFrom([]string{"a", "pump", "on", "7", "1e3", "längs", "two words", "x:y", "null", "~"}).Draw(m.t, "name") + fmt.Sprint("-", i)
}

func list[T any](m maker, most int, one func(i int) T) []T {
	var out []T
	for i := range rapid.IntRange(0, most).Draw(m.t, "n") {
		out = append(out, one(i))
	}
	return out
}

func (m maker) plan() route.Plan {
	p := route.Defaults()
	p.Catalogue = planfile.Shelf()
	p.Units = rapid.SampledFrom([]route.Units{route.Millimetres, route.Inches}).Draw(m.t, "units")
	m.factor = p.Units.Factor()
	p.Name = m.name(0)
	p.Case = mgl64.Vec3{m.size(), m.size(), m.size()}
	p.Clear = m.most()
	p.Tubes = append(list(m, 2, m.tube), m.changedTube()...)
	p.Tube = rapid.SampledFrom([]string{"petg-16-12", "glass-16-12"}).Draw(m.t, "tube")
	p.Fittings = append(list(m, 5, m.fitting), m.changedFitting()...)
	p.Parts = list(m, 4, m.part)
	p.Runs = m.runs(p)
	m.bench(&p)
	return p
}

func (m maker) tube(i int) route.Tube {
	id := m.size()
	return route.Tube{
		Name: m.name(i), Material: rapid.SampledFrom([]string{"petg", "brass", "my own"}).Draw(m.t, "material"), KnownFrom: m.known(),
		Tube: bends.Tube{
			ID: id, OD: id + 1, Radius: m.most(), LeastRadius: m.most(), StraightBetween: m.most(), StraightEnd: m.most(), Trim: m.most(),
			Springback: bends.Springback{Degrees: m.number() / 2, Percent: m.number() / 2},
		},
	}
}

// changedTube is a catalogue entry with some keys changed.
func (m maker) changedTube() []route.Tube {
	if rapid.Bool().Draw(m.t, "changed tube") {
		return nil
	}
	tube, _ := route.Plan{Catalogue: planfile.Shelf()}.FindTube("petg-16-12")
	tube.Radius, tube.KnownFrom = m.most(), m.known()
	tube.TestBends = list(m, 3, m.testBend)
	return []route.Tube{tube}
}

// testBend is one of two test bends of a tube of 16 mm on a former of about 32,
// the same from the marks and from the ends.
func (m maker) testBend(i int) trial.Bend {
	b := trial.Bend{Blank: 300, Marks: [2]float64{40, 240}, Former: 93, After: 90, Legs: [2]float64{115, 115}, From: trial.Marks, To: trial.Back}
	if i%2 == 1 {
		b = trial.Bend{Blank: 200, Former: 93, After: 90, Legs: [2]float64{107, 107}, To: trial.Centre}
	}
	return b
}

func (m maker) changedFitting() []route.Fitting {
	if rapid.Bool().Draw(m.t, "changed fitting") {
		return nil
	}
	fit, _ := route.Plan{Catalogue: planfile.Shelf()}.FindFitting("elbow-90-fixed")
	fit.Thread, fit.KnownFrom, fit.Rolls = m.thread(), m.known(), list(m, 3, func(i int) float64 { return float64(i * 45) })
	return []route.Fitting{fit}
}

func (m maker) fitting(i int) route.Fitting {
	f := route.Fitting{Name: m.name(i), Thread: m.thread(), Body: m.size(), Price: m.number(), KnownFrom: m.known()}
	f.Kind = rapid.SampledFrom([]route.FittingKind{route.Socket, route.Extender, route.Offset, route.Elbow, route.Tee, route.Valve, route.Coupler, route.Plug}).Draw(m.t, "kind")
	f.Length, f.Bore = m.size(), m.size()
	switch f.Kind {
	case route.Socket:
		least := m.size()
		f.OD, f.Stop, f.SeatGap = m.size(), m.most(), m.most()
		f.Insertion, f.Collar = route.Insertion{Full: least + 1, Least: least}, route.Collar{OD: m.size(), Length: m.size()}
		f.Give = route.Give{Sideways: m.most(), Degrees: m.number() / 2}
	case route.Offset:
		f.Sideways, f.Rotary = m.size(), rapid.Bool().Draw(m.t, "rotary")
	case route.Elbow:
		f.Turn, f.Legs = 1+m.number(), [2]float64{m.size(), m.size()}
		f.Rolls = list(m, 3, func(i int) float64 { return float64(i*45) - 60 })
	case route.Tee:
		f.Side = m.size()
	case route.Coupler:
		f.OD = m.size()
	case route.Extender, route.Valve, route.Plug:
	}
	return f
}

func (m maker) part(i int) route.Part {
	k := route.Part{Name: m.name(i), At: m.spot(), KnownFrom: m.known(), Volume: m.number()}
	k.Turn = mgl64.Vec3{m.number(), -m.number(), 0}
	if rapid.Bool().Draw(m.t, "of a kind") {
		k.Kind = "pump-reservoir"
		k.Passages = list(m, 1, func(int) [2]string { return [2]string{"in", "out"} })
	}
	k.Solids, k.Ports = list(m, 3, m.solid), list(m, 3, m.port)
	if len(k.Solids) == 0 && k.Kind == "" && rapid.Bool().Draw(m.t, "stack") {
		k.Stack = m.stack()
	}
	k.Metals = list(m, 2, func(int) string { return rapid.SampledFrom([]string{"copper", "no"}).Draw(m.t, "metal") })
	return k
}

func (m maker) solid(int) route.Solid {
	from := m.spot()
	to := from.Add(mgl64.Vec3{m.size(), m.size(), m.size()})
	if rapid.Bool().Draw(m.t, "box") {
		return route.Solid{Box: true, From: from, To: to}
	}
	return route.Solid{From: from, To: to, Radius: m.size()}
}

func (m maker) port(i int) route.Port {
	facing := mgl64.Vec3{1, 0, 0}
	if rapid.Bool().Draw(m.t, "askew") {
		s, c := math.Sincos(rapid.Float64Range(0, 6).Draw(m.t, "angle"))
		facing = mgl64.Vec3{s * 0.6, c * 0.6, 0.8}
	}
	return route.Port{
		Name: m.name(i), At: m.spot(), Facing: facing, Thread: m.thread(), KnownFrom: m.known(),
		Flow: rapid.SampledFrom([]route.Flow{"", route.In, route.Out, route.Any}).Draw(m.t, "flow"),
	}
}

func (m maker) runs(p route.Plan) []route.Run {
	var refs []route.PortRef
	for _, k := range p.Parts {
		for _, q := range p.Whole(k).Ports {
			refs = append(refs, route.PortRef{Part: k.Name, Port: q.Name})
		}
	}
	if len(refs) == 0 {
		return nil
	}
	return list(m, 4, func(i int) route.Run {
		return route.Run{
			Name: m.name(i), From: rapid.SampledFrom(refs).Draw(m.t, "from"), To: rapid.SampledFrom(refs).Draw(m.t, "to"),
			Tube: rapid.SampledFrom([]string{"", "acrylic-14-10"}).Draw(m.t, "tube"),
			Via:  list(m, 3, func(i int) mgl64.Vec3 { return m.spot().Add(mgl64.Vec3{0, 0, 10000 * float64(i)}) }),
			Way:  rapid.SampledFrom([]route.WayKind{"", route.Auto, route.Straight, route.Bent, route.Drawn}).Draw(m.t, "way"),
			Pick: m.thread(), Start: m.chain(p), End: m.chain(p), Made: list(m, 2, func(int) route.Attempt { return m.attempt(p) }),
		}
	})
}

func (m maker) chain(p route.Plan) route.Chain {
	return list(m, 3, func(int) route.Step {
		step := route.Step{Fitting: rapid.SampledFrom(p.AllFittings()).Draw(m.t, "fitting").Name, Rolled: rapid.Bool().Draw(m.t, "rolled")}
		if step.Rolled {
			step.Roll = m.number() - 60
		}
		return step
	})
}

func (m maker) bench(p *route.Plan) {
	p.Weigh.Bend, p.Saw.Kerf, p.KeepOver = m.number(), m.most(), m.most()
	p.Errors.Cut, p.Errors.Facing, p.Weigh.Miss = rapid.Float64Range(0.2, 3).Draw(m.t, "cut"), m.number()/2, m.number()
	p.Spares.Chance = rapid.SampledFrom([]float64{0, 50, 90}).Draw(m.t, "chance")
	p.Spares.Bent, p.Build = rapid.IntRange(0, 3).Draw(m.t, "spares"), rapid.IntRange(1, 3).Draw(m.t, "build")
	p.Stock = list(m, 4, func(i int) route.Stock {
		return route.Stock{Tube: p.Tube, Length: m.size(), Price: m.number(), Most: i}
	})
	p.Offcuts = list(m, 1, func(int) route.Offcuts {
		return route.Offcuts{Tube: p.Tube, Lengths: list(m, 3, func(int) float64 { return m.size() })}
	})
	p.OnHand = list(m, 1, func(i int) route.OnHand { return route.OnHand{Item: "plug", Count: i} })
	p.Pictures = list(m, 2, m.picture)
}

func (m maker) picture(i int) route.Picture {
	at := m.spot()
	return route.Picture{
		File: fmt.Sprint(i) + rapid.SampledFrom([]string{" open case.jpg", "/photos/a.PNG", " it's.png", " längs.jpeg"}).Draw(m.t, "file"),
		Look: rapid.SampledFrom([]route.PictureLook{route.UnderSide, route.UnderAbove, route.UnderFront}).Draw(m.t, "look"),
		At:   [2]float64{at[0], at[1]}, Scale: m.size(), Fade: rapid.Float64Range(0, 1).Draw(m.t, "fade"), Locked: rapid.Bool().Draw(m.t, "locked"),
	}
}

func anyPlan(t *rapid.T) route.Plan { return maker{t: t, factor: 1}.plan() }

func (m maker) stack() route.Stack {
	return route.Stack{
		Fan: m.size(), Fans: rapid.IntRange(1, 4).Draw(m.t, "fans"), Thickness: m.size(), FanThickness: m.size(), KeepOut: m.most(),
		Sides: rapid.SampledFrom([]route.Sides{"", route.NearSide, route.FarSide, route.BothSides, route.NoSide}).Draw(m.t, "sides"),
		Ports: rapid.SampledFrom([]route.Face{"", route.NearFace, route.FarFace, route.EndFace}).Draw(m.t, "face"),
	}
}

func (m maker) attempt(p route.Plan) route.Attempt {
	a := route.Attempt{
		Cut: m.most(), Wrong: rapid.SampledFrom([]string{"", "2 mm long", "yes", "a: b"}).Draw(m.t, "wrong"),
		Date: rapid.SampledFrom([]string{"", "3 May", "2031-05-03", "7", "no"}).Draw(m.t, "date"),
	}
	if rapid.Bool().Draw(m.t, "stock known") {
		a.Blank = m.size()
		a.CutFrom = a.Blank + m.most()
	}
	if rapid.Bool().Draw(m.t, "fits") {
		a.Fits, a.Cut, a.Radius = true, m.size(), m.size()
		a.Corners = []mgl64.Vec3{m.spot(), m.spot(), m.spot()}
		a.Start, a.End = append(m.chain(p), route.Step{Fitting: "socket-16"}), route.Chain{{Fitting: "socket-16"}}
	}
	return a
}
