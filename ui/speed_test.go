//go:build window

package ui

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// Speed in the real window, seen from outside: a hand moves the pointer, and the
// screen's memory is watched for what comes of it. Run alone on a quiet machine:
//
//	go test -tags window ./ui -run xxx -bench Window -benchtime 1x

const (
	// glance is how often the screen is looked at; it adds so much to a time at most.
	glance = 500 * time.Microsecond
	// eightRuns is the demo with eight runs.
	eightRuns = "conservation-scanner"
	// pointerHigh is how far from its place the pointer's picture may reach, px.
	pointerHigh = 26
)

// hall is a plan of 200 parts and 40 runs, each between two ports in line.
func hall(b *testing.B) string {
	b.Helper()
	var parts, runs strings.Builder
	block := func(name string, x, y, z int, ports string) {
		fmt.Fprintf(&parts, "  %s:\n    at: [%d, %d, %d]\n    solids:\n      - box: {from: [0, 0, 0], to: [40, 40, 40]}\n%s", name, x, y, z, ports)
	}
	for i := range 40 {
		x, y := 20+i%4*290, 10+i/4*56
		block(fmt.Sprintf("from-%d", i), x, y, 100, "    ports:\n      out: {at: [40, 20, 20], facing: +x, thread: G1/4, flow: out}\n")
		block(fmt.Sprintf("to-%d", i), x+200, y, 100, "    ports:\n      in: {at: [0, 20, 20], facing: -x, thread: G1/4, flow: in}\n")
		fmt.Fprintf(&runs, "  run-%d:\n    from: from-%d.out\n    to: to-%d.in\n", i, i, i)
	}
	for i := range 120 {
		block(fmt.Sprintf("block-%d", i), 20+i%12*95, 10+i/12*56, 300, "")
	}
	path := filepath.Join(b.TempDir(), "hall.plan.yaml")
	text := "format: 1\nname: Hall\nunits: mm\ncase:\n  size: [1200, 600, 400]\ntube: petg-16-12\nclear: 4\n\nparts:\n" + parts.String() + "\nruns:\n" + runs.String()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		b.Fatal(err)
	}
	return path
}

// boardOn is where the board stands on the screen.
func (s *stage) boardOn() patch {
	s.t.Helper()
	s.until("the board", func(b Boxes) bool { return atRest(b) && b.Boxes["board"][2] > 0 })
	time.Sleep(time.Second) // until the fine picture stands
	at := s.boxes().Boxes["board"]
	return patch{int(at[0]), int(at[1]), int(at[0] + at[2]), int(at[1] + at[3])}
}

// frames counts the pictures of a patch that come while hand is at work.
func (s *stage) frames(f patch, skip0, skip1 int, hand func()) (gaps []time.Duration) {
	done := make(chan struct{})
	go func() {
		defer close(done)
		hand()
	}()
	last, at := s.screen.mark(f, skip0, skip1), time.Now()
	for {
		select {
		case <-done:
			return gaps
		default:
			time.Sleep(glance)
		}
		if now := s.screen.mark(f, skip0, skip1); now != last {
			gaps = append(gaps, time.Since(at))
			last, at = now, time.Now()
		}
	}
}

// quantile is the value below which a share of the times lies.
func quantile(times []time.Duration, of float64) float64 {
	if len(times) == 0 {
		return math.Inf(1)
	}
	sorted := slices.Clone(times)
	slices.Sort(sorted)
	return float64(sorted[min(len(sorted)-1, int(of*float64(len(sorted))))]) / 1e6
}

// worked is the processor time the program has used.
func (s *stage) worked() time.Duration {
	s.t.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", s.program.Process.Pid))
	if err != nil {
		s.t.Fatal(err)
	}
	_, after, _ := strings.Cut(string(text), ") ")
	var rest [11]string // state to cmajflt, see proc(5)
	var user, system int64
	to := make([]any, 0, len(rest)+2)
	for i := range rest {
		to = append(to, &rest[i])
	}
	if _, err := fmt.Sscan(after, append(to, &user, &system)...); err != nil {
		s.t.Fatal(err)
	}
	const tick = 10 * time.Millisecond // USER_HZ is 100 on all that Go runs on
	return time.Duration(user+system) * tick
}

// report tells how many pictures came in a second, how long one stood, and how
// much processor time each took, which hangs less on what else the machine does.
func report(b *testing.B, gaps []time.Duration, worked time.Duration) {
	b.Helper()
	if len(gaps) < 10 {
		b.Fatalf("only %d pictures came", len(gaps))
	}
	gaps = gaps[1:] // the first counts from before the hand began
	var sum time.Duration
	for _, g := range gaps {
		sum += g
	}
	b.ReportMetric(float64(len(gaps))/sum.Seconds(), "frames/s")
	b.ReportMetric(quantile(gaps, 0.5), "ms-between")
	b.ReportMetric(quantile(gaps, 0.95), "ms-between-p95")
	b.ReportMetric(worked.Seconds()*1000/float64(len(gaps)), "ms-work/frame")
	b.ReportMetric(0, "ns/op")
}

// turning drags along the foot of the board on the turntable.
func turning(b *testing.B, args ...string) {
	s := newStage(b, append([]string{"--look", "4"}, args...)...)
	f := s.boardOn()
	y := f.y1 - 30
	s.do("mousemove %d %d mousedown 1", f.x0+60, y)
	time.Sleep(200 * time.Millisecond)
	var gaps []time.Duration
	before := s.worked()
	for b.Loop() {
		gaps = append(gaps, s.frames(f, y-pointerHigh, y+pointerHigh, func() {
			for i := range 800 {
				s.do("mousemove %d %d", f.x0+60+min(i%600, 600-i%600), y)
				time.Sleep(4 * time.Millisecond)
			}
		})...)
	}
	report(b, gaps, s.worked()-before)
}

func BenchmarkWindowTurning(b *testing.B) {
	b.Run("demo", func(b *testing.B) { turning(b, "--demo", eightRuns) })
	b.Run("hall", func(b *testing.B) { turning(b, hall(b)) })
}

// dragging pulls a part to and fro without a stop.
func dragging(b *testing.B, part string, args ...string) {
	s := newStage(b, args...)
	f := s.boardOn()
	px, py := s.box("on board " + part)
	x, y := int(px), int(py)
	s.do("mousemove %d %d mousedown 1", x, y)
	time.Sleep(200 * time.Millisecond)
	var gaps []time.Duration
	before := s.worked()
	for b.Loop() {
		gaps = append(gaps, s.frames(f, y-pointerHigh, y+pointerHigh, func() {
			for i := range 600 {
				s.do("mousemove %d %d", x+min(i%60, 60-i%60), y)
				time.Sleep(8 * time.Millisecond)
			}
		})...)
	}
	report(b, gaps, s.worked()-before)
}

func BenchmarkWindowDragging(b *testing.B) {
	b.Run("demo", func(b *testing.B) { dragging(b, "front", "--demo", eightRuns) })
	b.Run("hall", func(b *testing.B) { dragging(b, "from-21", hall(b)) })
}

// BenchmarkWindowPointer takes the time from telling the pointer to move to the
// first pixel that changes away from the pointer, while a part of the demo is
// dragged in steps. Between two steps the picture stood still for a moment, so
// that what comes is of this step; the solving of the one before may still run.
func BenchmarkWindowPointer(b *testing.B) {
	s := newStage(b, "--demo", eightRuns)
	f := s.boardOn()
	px, py := s.box("on board front")
	x, y := int(px), int(py)
	s.do("mousemove %d %d mousedown 1", x, y)
	s.do("mousemove %d %d", x+30, y)
	var times []time.Duration
	step := 0
	for b.Loop() {
		for range 120 {
			s.still(f, y)
			step++
			times = append(times, s.answers(f, x+30*(step%2)+(step%7), y))
		}
	}
	b.ReportMetric(quantile(times, 0.5), "ms-median")
	b.ReportMetric(quantile(times, 0.95), "ms-p95")
	b.ReportMetric(quantile(times, 1), "ms-longest")
	b.ReportMetric(0, "ns/op")
}

// still waits until the picture has not changed for three frames.
func (s *stage) still(f patch, y int) {
	const calm = 50 * time.Millisecond
	last, since := s.screen.mark(f, y-pointerHigh, y+pointerHigh), time.Now()
	for time.Since(since) < calm {
		time.Sleep(glance)
		if now := s.screen.mark(f, y-pointerHigh, y+pointerHigh); now != last {
			last, since = now, time.Now()
		}
	}
}

// answers moves the pointer and gives the time until the picture changed.
func (s *stage) answers(f patch, x, y int) time.Duration {
	s.t.Helper()
	was, begun := s.screen.mark(f, y-pointerHigh, y+pointerHigh), time.Now()
	s.do("mousemove %d %d", x, y)
	for time.Since(begun) < patience {
		time.Sleep(glance)
		if s.screen.mark(f, y-pointerHigh, y+pointerHigh) != was {
			return time.Since(begun)
		}
	}
	s.t.Fatalf("nothing followed the pointer to %d, %d", x, y)
	return 0
}

// BenchmarkWindowStart takes the time from the start of the program to the first
// picture that is the one at rest, but for one pixel in a hundred.
func BenchmarkWindowStart(b *testing.B) {
	if _, err := program(); err != nil {
		b.Fatal(err)
	}
	var whole, settled []time.Duration
	for b.Loop() {
		s := newEmptyStage(b)
		begun := time.Now()
		s.launch("--size", "1280x800", "--demo", eightRuns)
		at, seen := s.watched(begun)
		whole = append(whole, firstLast(at, seen, func(t smallScreen) []byte { return t.rest }))
		settled = append(settled, firstLast(at, seen, func(t smallScreen) []byte { return append(slices.Clone(t.rest), t.findings...) }))
		s.kill()
	}
	b.ReportMetric(quantile(whole, 0.5), "ms-median")
	b.ReportMetric(quantile(whole, 1), "ms-longest")
	b.ReportMetric(quantile(settled, 0.5), "ms-median-with-putting-in")
	b.ReportMetric(0, "ns/op")
}

// watched looks at the screen for a while.
func (s *stage) watched(begun time.Time) (at []time.Duration, seen []smallScreen) {
	const watch, pause = 4 * time.Second, 10 * time.Millisecond
	for time.Since(begun) < watch {
		at = append(at, time.Since(begun))
		seen = append(seen, s.screen.thumb())
		time.Sleep(pause)
	}
	return at, seen
}

// firstLast tells when the screen first showed what it shows at the end.
func firstLast(at []time.Duration, seen []smallScreen, of func(smallScreen) []byte) time.Duration {
	last := of(seen[len(seen)-1])
	for i, one := range seen {
		if unlike(of(one), last) < 0.01 {
			return at[i]
		}
	}
	return at[len(at)-1]
}

// smallScreen is one pixel in eight each way: of the list of findings, where those of
// putting in come a second after the rest, and of everything else.
type smallScreen struct{ findings, rest []byte }

func (s *screen) thumb() (t smallScreen) {
	for y := 0; y < 800; y += 8 {
		for x := 0; x < 1280; x += 8 {
			if p := s.row(x, x+1, y); x > 964 && y > 380 && y < 620 {
				t.findings = append(t.findings, p...)
			} else {
				t.rest = append(t.rest, p...)
			}
		}
	}
	return t
}

// unlike is the share of pixels that differ plainly.
func unlike(a, b []byte) float64 {
	n := 0
	for i := 0; i < len(a); i += 4 {
		for k := range 3 {
			if far(uint32(a[i+k])<<8, uint32(b[i+k])<<8) {
				n++
				break
			}
		}
	}
	return float64(n) / float64(len(a)/4)
}
