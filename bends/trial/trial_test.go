package trial_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"tubewright/bends"
	"tubewright/bends/trial"
)

// workshop makes test bends of a known tube, by the bench's own arithmetic.
type workshop struct {
	od, radius float64
	back       bends.Springback
	hand       trial.Sigmas // what readings really scatter
}

// bend forms one bend to a turn on the former and reads it. Straights of 60 and
// 70 mm stand beside it.
func (w workshop) bend(r *rand.Rand, former float64, b trial.Bend) trial.Bend {
	kept := (former - w.back.Degrees + r.NormFloat64()*w.hand.Turn) / (1 + w.back.Percent/100)
	half := math.Tan(kept / 2 * math.Pi / 180)
	length := 60 + 70 + w.radius*kept*math.Pi/180
	near := w.radius * half
	if b.To != trial.Centre {
		near += w.od / 2 * half
	}
	read := func(x float64) float64 { return x + r.NormFloat64()*w.hand.Length }
	b.Former, b.After = former, kept+r.NormFloat64()*w.hand.Angle
	b.Legs = [2]float64{read(60 + near), read(70 + near)}
	if b.From == trial.Marks {
		b.Marks = [2]float64{25, 25 + read(length)}
	} else {
		b.Blank = read(length)
	}
	return b
}

var (
	fromEnds  = trial.Bend{}
	fromMarks = trial.Bend{From: trial.Marks}
	toCentre  = trial.Bend{From: trial.Marks, To: trial.Centre}
)

// usual is 16 mm tube on a 32 mm former that opens by 1 degree and 1.5 percent:
// the figures of the plan format's example.
var usual = workshop{od: 16, radius: 32, back: bends.Springback{Degrees: 1, Percent: 1.5}}

func TestExactReadingsGiveTheTubeBack(t *testing.T) {
	for _, tt := range []struct {
		name    string
		w       workshop
		formers []float64
		as      trial.Bend
		split   bends.Springback
		told    bool
	}{
		{"one bend, its split known", usual, []float64{92.35}, fromEnds, usual.back, false},
		{"one bend between marks", usual, []float64{60}, fromMarks, usual.back, false},
		{"three turns", usual, []float64{45, 90, 120}, toCentre, bends.Springback{}, true},
		{"no springback", workshop{od: 12, radius: 20}, []float64{90, 45}, fromMarks, bends.Springback{}, true},
		{"percent only, one turn", workshop{od: 15, radius: 60, back: bends.Springback{Percent: 3}}, []float64{90, 92}, fromEnds, bends.Springback{}, false},
		{"fixed only, one turn", workshop{od: 15, radius: 60, back: bends.Springback{Degrees: 2}}, []float64{90}, fromEnds, bends.Springback{Degrees: 1}, false},
		{"nearly folded", usual, []float64{170, 20}, fromEnds, bends.Springback{}, true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(1, 2))
			var list []trial.Bend
			for _, f := range tt.formers {
				list = append(list, tt.w.bend(r, f, tt.as))
			}
			f, err := trial.Fit(tt.w.od, list, trial.Options{Split: tt.split})
			if err != nil {
				t.Fatal(err)
			}
			near(t, "radius", f.Radius.At, tt.w.radius)
			near(t, "degrees", f.Springback.Degrees, tt.w.back.Degrees)
			near(t, "percent", f.Springback.Percent, tt.w.back.Percent)
			near(t, "opens at 90", f.Opens(90).At, tt.w.back.FormTo(90)-90)
			near(t, "gain at 90", f.Gain(90).At, tt.w.radius*(2-math.Pi/2))
			for _, b := range f.Bends {
				near(t, "begins", b.Begins, 60)
				near(t, "alone", b.Radius, tt.w.radius)
				near(t, "off", b.Off, 0)
			}
			if f.Told != tt.told || f.Told != (len(f.Unsure) == 0) {
				t.Errorf("told apart %v, unsure of %q; want %v", f.Told, f.Unsure, tt.told)
			}
		})
	}
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-6) {
		t.Errorf("%s = %.9g, want %.9g", what, got, want)
	}
}

// The worked example of the package's own page.
func TestWorkedByHand(t *testing.T) {
	b := trial.Bend{Marks: [2]float64{40, 240}, Former: 93, After: 90, Legs: [2]float64{115, 115}, From: trial.Marks}
	f, err := trial.Fit(16, []trial.Bend{b}, trial.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what              string
		got, want, within float64
		source            string
	}{
		{"radius", f.Radius.At, 32.62, 0.005, "14/(2 − π/2)"},
		{"its standard deviation", f.Radius.Sigma, 2.25, 0.005, "√(2.018² + 0.989²)"},
		{"its 95 % interval", f.Radius.High - f.Radius.At, 2.247 * 1.96, 0.005, "1.96 standard deviations of a normal"},
		{"opens at 90", f.Opens(90).At, 3, 1e-9, "93 − 90"},
		{"known to", f.Opens(90).Sigma, math.Hypot(1.5, 0.5*93/90), 1e-6, "the turn of 1.5 and the reading of 0.5 degrees, which also moves 1/30 of itself"},
		{"opens at 45", f.Opens(45).At, 1.5, 1e-9, "all counts as percents"},
		{"known to", f.Opens(45).Sigma, math.Hypot(math.Hypot(1.5, 0.5*93/90)/2, 3*math.Sqrt(1./12)/2), 1e-6, "half of it, and the guess of the split over half the turn"},
		{"gain", f.Gain(90).At, 14, 1e-9, "2·107 − 200"},
		{"begins", f.Bends[0].Begins, 107 - 14/(2-math.Pi/2), 1e-9, "leg less setback"},
	} {
		if !(math.Abs(c.got-c.want) <= c.within) {
			t.Errorf("%s = %.6g, want %g: %s", c.what, c.got, c.want, c.source)
		}
	}
	if len(f.Unsure) != 2 || f.Freedom != 0 || f.Told {
		t.Errorf("one bend: unsure of %q with freedom %d; want two sentences and 0", f.Unsure, f.Freedom)
	}
}

// 95 % intervals must hold the truth in 93 to 97 of 100 of a thousand workshops.
func TestIntervalsHoldTheTruth(t *testing.T) {
	w := usual
	w.hand = trial.Sigmas{Length: 0.4, Angle: 0.4, Turn: 1.2} // the assumed, all by 0.8
	for _, tt := range []struct {
		name    string
		formers []float64
		as      trial.Bend
		o       trial.Options
	}{
		{"one bend, stated", []float64{92}, fromEnds, trial.Options{Sigmas: w.hand, Split: w.back}},
		{"three alike, stated", []float64{92, 92, 92}, fromMarks, trial.Options{Sigmas: w.hand, Split: w.back}},
		{"four turns, stated", []float64{50, 75, 100, 125}, toCentre, trial.Options{Sigmas: w.hand}},
		{"three alike, not stated", []float64{92, 92, 92}, fromEnds, trial.Options{}},
		{"four turns, not stated", []float64{50, 75, 100, 125}, fromMarks, trial.Options{}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			held := map[string]int{}
			for seed := range uint64(1000) {
				r := rand.New(rand.NewPCG(seed, 1))
				var list []trial.Bend
				for _, f := range tt.formers {
					list = append(list, w.bend(r, f, tt.as))
				}
				f, err := trial.Fit(w.od, list, tt.o)
				if err != nil {
					t.Fatalf("seed %d: %v", seed, err)
				}
				count(held, "radius", f.Radius.Holds(w.radius))
				count(held, "springback at 90", f.Opens(90).Holds(w.back.FormTo(90)-90))
			}
			for what, n := range held {
				if n < 930 || n > 970 {
					t.Errorf("%s: %d of 1000 intervals hold the truth; want 930 to 970", what, n)
				}
			}
			t.Log(held)
		})
	}
}

func count(held map[string]int, what string, yes bool) {
	held[what] += 0
	if yes {
		held[what]++
	}
}

// More bends make the radius better known, and the standard deviation it says is
// the one it has.
func TestSigmaIsWhatHappens(t *testing.T) {
	w := usual
	w.hand = trial.Assumed()
	sum, squares, says := 0.0, 0.0, 0.0
	const n = 2000
	for seed := range uint64(n) {
		r := rand.New(rand.NewPCG(seed, 3))
		list := []trial.Bend{w.bend(r, 92, fromEnds), w.bend(r, 92, fromMarks), w.bend(r, 60, fromEnds), w.bend(r, 120, toCentre)}
		f, err := trial.Fit(w.od, list, trial.Options{Sigmas: w.hand})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		sum, squares, says = sum+f.Radius.At, squares+f.Radius.At*f.Radius.At, says+f.Radius.Sigma
	}
	mean := sum / n
	sd := math.Sqrt(squares/n - mean*mean)
	if says /= n; math.Abs(mean-w.radius) > 0.1 || math.Abs(sd/says-1) > 0.05 {
		t.Errorf("2000 workshops: radius %.3f ± %.3f, said ±%.3f; want %g ± the same within 5 %%", mean, sd, says, w.radius)
	}
}

func ExampleFit() {
	f, err := trial.Fit(16, []trial.Bend{{
		Marks: [2]float64{40, 240}, From: trial.Marks, Legs: [2]float64{115, 115}, Former: 93, After: 90,
	}}, trial.Options{})
	fmt.Printf("%.2f mm, 95 times in 100 from %.1f to %.1f; opens %.1f degrees at 90 %v\n",
		f.Radius.At, f.Radius.Low, f.Radius.High, f.Opens(90).At, err)
	// Output: 32.62 mm, 95 times in 100 from 28.2 to 37.0; opens 3.0 degrees at 90 <nil>
}
