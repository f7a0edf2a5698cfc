package planfile

import (
	"fmt"
	"maps"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"
)

// hostile are texts made to cost much, each as large as is read at all.
func hostile() map[string]string {
	fill := func(line string) string { return strings.Repeat(line, MaxBytes/len(line)) }
	var bomb strings.Builder
	bomb.WriteString("a: &a [x,x,x,x,x,x,x,x,x,x]\n")
	for c := 'b'; c < 'z'; c++ {
		fmt.Fprintf(&bomb, "%c: &%c [%s]\n", c, c, strings.TrimSuffix(strings.Repeat(fmt.Sprintf("*%c,", c-1), 10), ","))
	}
	keys := func(line string, most int) string {
		var b strings.Builder
		for i := 0; b.Len() < MaxBytes-100 && i < most; i++ {
			fmt.Fprintf(&b, line, i)
		}
		return b.String()
	}
	return map[string]string{
		"alias bomb":     bomb.String(),
		"commas":         "[" + fill("a,"),
		"flow of flows":  "[" + fill("[],"),
		"open brackets":  fill("["),
		"open braces":    fill("{a: "),
		"indents":        fill("- "),
		"explicit keys":  fill("? "),
		"comments":       fill("#\n"),
		"blank lines":    fill("\n"),
		"one long word":  fill("x"),
		"quotes":         "'" + fill("'' "),
		"documents":      fill("---\n"),
		"anchors":        "[" + fill("&a a,"),
		"unknown keys":   keys("k%d: 1\n", maxEntries+5),
		"many keys":      keys("k%d: 1\n", 1<<20),
		"doubled keys":   fill("a: 1\n"),
		"runs to no one": "format: 1\nruns:\n" + keys("  r%d: {from: aaaaaaaaaaaaaaaaa.b, to: bbbbbbbbbbbbbbbbbbb.c}\n", maxEntries),
		"fault at end":   "parts:\n" + keys("  p%d: {at: [0, 0, 0]}\n", 1<<20) + "  x: [\n",
		"tabs":           fill("\t"),
		"long flow key":  "{" + fill("a") + ": 1}",
		"pairs in lists": "[" + fill("a: b,"),
		"nothing keys":   "{" + fill(":,"),
	}
}

// What hostile files may cost, on a machine that does other things as well.
const (
	mostMemory = 512 << 20
	mostTime   = time.Minute // a guard against hanging, not a measure
)

// Hostile files are answered within bounds of memory and time.
func TestHostileFilesStayWithinBounds(t *testing.T) {
	texts := hostile()
	for name, text := range hostile() {
		if under := underMarks(text); under != text {
			texts["less "+name] = under
		}
	}
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		text := texts[name]
		runtime.GC()
		peak, stop := watchHeap()
		started := time.Now()
		_, _, err := Read("hostile.plan.yaml", []byte(text))
		took := time.Since(started)
		close(stop)
		heap := <-peak
		t.Logf("%-20s %7d bytes: %5d ms, %4d MB", name, len(text), took.Milliseconds(), heap>>20)
		if heap > mostMemory {
			t.Errorf("%s: the heap grew to %d MB", name, heap>>20)
		}
		if err == nil {
			t.Errorf("%s: read without a problem", name)
		}
		if took > mostTime {
			t.Errorf("%s: took %v, want at most %v", name, took, mostTime)
		}
	}
}

// underMarks cuts a text so that it just passes the bound on values.
func underMarks(text string) string {
	marks := 0
	for i := range len(text) {
		if marks += countMarks(text[i : i+1]); marks > maxMarks {
			return text[:i]
		}
	}
	return text
}

// watchHeap gives the largest heap seen until stop is closed.
func watchHeap() (peak chan uint64, stop chan struct{}) {
	peak, stop = make(chan uint64, 1), make(chan struct{})
	go func() {
		var most uint64
		for {
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			most = max(most, m.HeapAlloc)
			select {
			case <-stop:
				peak <- most
				return
			case <-time.After(2 * time.Millisecond):
			}
		}
	}()
	return peak, stop
}
