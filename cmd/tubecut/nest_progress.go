package main

import (
	"fmt"
	"io"
	"os"
	"sync"
	"time"

	"tubewright/cutlist/nest"
)

const (
	// quiet so long nothing is said: most orders are done by then.
	quiet = 300 * time.Millisecond
	// tick is how often the line is written again.
	tick = 200 * time.Millisecond
	// clearLine goes to the start of a terminal's line and wipes it.
	clearLine = "\r\x1b[K"
)

// progress keeps one line on a terminal that says how far a search is.
type progress struct {
	mu               sync.Mutex
	bound, incumbent int
	priced, known    bool
	done, ended      chan struct{}
}

// tellProgress starts telling on a terminal; on anything else it is silent.
func tellProgress(w io.Writer, priced bool) *progress {
	p := &progress{priced: priced, done: make(chan struct{}), ended: make(chan struct{})}
	if !isTerminal(w) {
		close(p.ended)
		return p
	}
	go p.keep(w, textWidth(w)-1, quiet, tick)
	return p
}

// better takes over what the search found; it may be called at any time.
func (p *progress) better(bound, incumbent int) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.bound, p.incumbent, p.known = bound, incumbent, true
}

// stop wipes the line; nothing is written after it.
func (p *progress) stop() {
	close(p.done)
	<-p.ended
}

// keep writes the line again and again, never wider than the terminal: what has
// gone on to a second line could not be wiped.
func (p *progress) keep(w io.Writer, width int, quiet, tick time.Duration) {
	defer close(p.ended)
	start := time.Now()
	for wait := quiet; ; wait = tick {
		select {
		case <-p.done:
			if wait == tick {
				_, _ = io.WriteString(w, clearLine) // where it fails nobody looks
			}
			return
		case <-time.After(wait):
			line := p.line(time.Since(start))
			_, _ = io.WriteString(w, clearLine+line[:min(len(line), width)])
		}
	}
}

func (p *progress) line(past time.Duration) string {
	p.mu.Lock()
	defer p.mu.Unlock()
	said := "looking for a plan"
	if p.known {
		said = nest.Verdict{Cost: p.incumbent, Bound: p.bound, Priced: p.priced, Proven: p.bound == p.incumbent}.Words()
	}
	return fmt.Sprintf("%s; %.0f s; Ctrl+C: take it", said, past.Seconds())
}

func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
