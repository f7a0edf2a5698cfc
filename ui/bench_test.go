package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tubewright/assets"
	"tubewright/cutlist"
	"tubewright/route/find"
	"tubewright/route/insert"
	"tubewright/ui/session"
)

type bench struct {
	*Window
	t      *testing.T
	works  []func()
	tasks  []func()
	later  []func()
	logged []error
	dir    string // of the settings and of files that are saved
}

func newBench(t *testing.T) *bench {
	t.Helper()
	return newBenchWith(t, nil)
}

// fittingBench is a window that looks how the tubes of a demo go in, with the
// solving not done yet.
func fittingBench(t *testing.T, demo string) *bench {
	t.Helper()
	b := newBenchWith(t, func() session.Insertion { return new(insert.Memory) })
	if err := b.OpenDemo(demo); err != nil {
		t.Fatal(err)
	}
	return b
}

func newBenchWith(t *testing.T, insertion func() session.Insertion) *bench {
	t.Helper()
	b := &bench{t: t, dir: t.TempDir()}
	app := test.NewTempApp(t)
	b.Window = New(app, Options{
		Dir: b.dir, Version: "test", Size: fyne.NewSize(1280, 800),
		Tools: session.Tools{
			Solve: find.Solve, Build: cutlist.Build, Insertion: insertion,
			Go:       func(work func()) { b.works = append(b.works, work) },
			Dispatch: func(task func()) { b.tasks = append(b.tasks, task) },
		},
		After: func(_ time.Duration, task func()) { b.later = append(b.later, task) },
		Demos: assets.Demos(), Demo: assets.Demo,
		Starts: assets.Starts(), Start: assets.Start,
		Log: func(err error) { b.logged = append(b.logged, err) },
	})
	b.Show()
	t.Cleanup(func() {
		if !b.closing {
			b.win.Close()
		}
	})
	return b
}

// settle runs all that was started or sent, until nothing is left.
func (b *bench) settle() { b.until(func() bool { return false }) }

// until runs what was started or sent, until something is so or nothing is left.
func (b *bench) until(so func() bool) {
	for len(b.works)+len(b.tasks)+len(b.later) > 0 && !so() {
		for _, queue := range []*[]func(){&b.tasks, &b.works, &b.later} {
			if len(*queue) > 0 {
				next := (*queue)[0]
				*queue = (*queue)[1:]
				next()
				break
			}
		}
	}
}

const benchFile = "testdata/bench.plan.yaml"

// opened is a window with a copy of the plan that was worked by hand.
func opened(t *testing.T) *bench {
	t.Helper()
	b := newBench(t)
	text, err := os.ReadFile(benchFile)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(b.dir, "bench.plan.yaml")
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := b.Open(path); err != nil {
		t.Fatal(err)
	}
	b.settle()
	return b
}

// pressButton presses a button of the question that is open.
func (b *bench) pressButton(text string) {
	b.t.Helper()
	if len(b.modals) == 0 {
		b.t.Fatalf("there is no question with a button %q", text)
	}
	m := b.modals[len(b.modals)-1]
	for i, k := range m.buttons {
		if k.text == text {
			test.Tap(m.row.presses[i])
			return
		}
	}
	b.t.Fatalf("the question %q has no button %q", m.title(), text)
}

func (b *bench) asked() string {
	if len(b.modals) == 0 {
		return ""
	}
	return b.modals[len(b.modals)-1].title()
}

func (b *bench) cut(run string) float64 {
	for _, t := range b.snapshot.List.Tubes {
		if t.Run == run {
			return t.Cut.Aim
		}
	}
	return 0
}

const workedAim = 273.265

func quoted(text string) string {
	r := strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`)
	return `"` + r.Replace(text) + `"`
}
