package board

import (
	"math"
	"math/rand/v2"
	"testing"
)

// sheet is a white frame.
func sheet(w, h int) *frame {
	f := &frame{}
	f.resize(w, h)
	f.clear(0xFFFFFFFF)
	return f
}

// inked is how much black is on a white frame, in whole pixels.
func (f *frame) inked() float64 {
	sum := 0.0
	for _, c := range f.colour {
		sum += 1 - float64(c&255)/255
	}
	return sum
}

func TestLinesHaveTheirLengthAndWidth(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		f := sheet(200, 200)
		angle, long, width := rnd.Float64()*2*math.Pi, 40+50*rnd.Float64(), 1+3*rnd.Float64()
		a := spot{x: 100, y: 100}
		b := spot{x: float32(100 + long*math.Cos(angle)), y: float32(100 + long*math.Sin(angle))}
		f.line(a, b, pen{c: 0xFF000000, width: float32(width), alpha: 1})
		if want := long * width; math.Abs(f.inked()-want) > 0.04*want+1 {
			t.Errorf("a line of %.1f px, %.2f wide, at %.0f° covers %.1f px, want %.1f", long, width, angle*180/math.Pi, f.inked(), want)
		}
	}
}

func TestThinAndFaintLinesAreFainter(t *testing.T) {
	for _, p := range []pen{{width: 0.5, alpha: 1}, {width: 1, alpha: 0.5}} {
		f := sheet(200, 40)
		f.line(spot{x: 20, y: 20.5}, spot{x: 120, y: 20.5}, p)
		if got := f.inked(); math.Abs(got-50) > 3 {
			t.Errorf("%+v: 100 px of line cover %.1f px, want 50", p, got)
		}
	}
}

func TestDashesHalveALine(t *testing.T) {
	f := sheet(200, 40)
	f.line(spot{x: 20, y: 20.5}, spot{x: 140, y: 20.5}, pen{width: 1, alpha: 1, dash: 6})
	if got := f.inked(); math.Abs(got-60) > 3 {
		t.Errorf("120 px in dashes cover %.1f px, want 60", got)
	}
}

func TestHiddenLinesStopAtWhatHidesThem(t *testing.T) {
	f := sheet(200, 40)
	for y := range 40 {
		for x := 100; x < 200; x++ {
			f.depth[y*200+x] = 10
		}
	}
	f.line(spot{x: 20, y: 20.5, z: 0}, spot{x: 180, y: 20.5, z: 0}, pen{width: 1, alpha: 1, hide: true, slack: 0.5})
	if got := f.inked(); math.Abs(got-80) > 1 {
		t.Errorf("%.1f px of line show, want the 80 before the wall", got)
	}
}

func TestRulesAreSharp(t *testing.T) {
	for _, over := range []int{1, 2} {
		f := sheet(60, 60)
		f.rule(spot{x: 10.3, y: 5}, spot{x: 10.3, y: 55}, 0xFF000000, over, 1)
		for x := range 60 {
			if c := f.colour[30*60+x]; c != 0xFFFFFFFF && c != 0xFF000000 {
				t.Errorf("over %d: column %d is grey", over, x)
			}
		}
		if got := f.inked(); got != float64(50*over) {
			t.Errorf("over %d: %g px, want %d", over, got, 50*over)
		}
	}
}

func TestDiscsAndWedgesHaveTheirArea(t *testing.T) {
	f := sheet(100, 100)
	f.disc(50.2, 49.7, 12, 0xFF000000, 1)
	if want := math.Pi * 144; math.Abs(f.inked()-want) > 0.02*want {
		t.Errorf("a disc of 12 px covers %.1f px, want %.1f (π·12²)", f.inked(), want)
	}
	f = sheet(100, 100)
	f.circle(50, 50, 20, 3, 0xFF000000, 1)
	if want := 2 * math.Pi * 20 * 3; math.Abs(f.inked()-want) > 0.03*want {
		t.Errorf("a ring covers %.1f px, want %.1f (2π·20·3)", f.inked(), want)
	}
	f = sheet(100, 100)
	f.wedge([3]spot{{x: 20, y: 20}, {x: 80, y: 30}, {x: 40, y: 90}}, 0xFF000000, 1)
	if want := 0.5 * math.Abs(60*70-10*20); math.Abs(f.inked()-want) > 0.02*want {
		t.Errorf("a wedge covers %.1f px, want %.1f (half the cross product)", f.inked(), want)
	}
}

// TestTrianglesShareNoPixel fills a fan of triangles round a point: each pixel
// of the whole is lit once, whatever the corners.
func TestTrianglesShareNoPixel(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 9))
	var table [256]pixel
	for range 50 {
		f := sheet(120, 120)
		middle := spot{x: 60 + rnd.Float32()*20 - 10, y: 60 + rnd.Float32()*20 - 10}
		lit, n := 0, 7
		for i := range n {
			f.clear(0xFFFFFFFF)
			a, b := onRim(i, n), onRim(i+1, n)
			f.triangle(&middle, &a, &b, &table, 1)
			for _, id := range f.id {
				lit += int(id)
			}
		}
		f.clear(0xFFFFFFFF)
		for i := range n { // all at once, nearer and nearer, so that each would win
			a, b := onRim(i, n), onRim(i+1, n)
			f.triangle(&middle, &a, &b, &table, 1)
		}
		once := 0
		for _, id := range f.id {
			once += int(id)
		}
		if lit != once {
			t.Fatalf("middle %v: %d pixels lit by single triangles, %d by all together", middle, lit, once)
		}
	}
}

func onRim(i, n int) spot {
	s, c := math.Sincos(-2 * math.Pi * float64(i%n) / float64(n))
	return spot{x: float32(60 - 50*c), y: float32(60 + 50*s)}
}

func TestBlendRunsFromOneColourToTheOther(t *testing.T) {
	a, b := pixel(0xFF102030), pixel(0xFFF0E0D0)
	if blend(a, b, 0) != a || blend(a, b, 256) != b {
		t.Errorf("the ends are %x and %x", blend(a, b, 0), blend(a, b, 256))
	}
	if got, want := blend(0xFF000000, 0xFFFFFFFF, 128), pixel(0xFF7F7F7F); got != want {
		t.Errorf("half way is %x, want %x", got, want)
	}
}
