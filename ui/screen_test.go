//go:build window

package ui

import (
	"bufio"
	"encoding/binary"
	"hash/maphash"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// screen is an Xvfb whose memory the tests look into: what a person would see,
// at the moment they would see it, without asking the program or Fyne.
type screen struct {
	number string // as DISPLAY counts
	data   []byte // of the file that is the screen, in the format of xwd
	from   int    // of the first pixel
	line   int    // bytes
	wide   int
	high   int
}

// newScreen starts Xvfb on a free display.
func newScreen(t testing.TB) *screen {
	t.Helper()
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	cmd := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1400x1000x24", "-dpi", "96", "-noreset", "-fbdir", dir)
	cmd.ExtraFiles = []*os.File{write}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = cmd.Process.Kill()
		_ = cmd.Wait() // killed: it says so
	})
	number, err := bufio.NewReader(read).ReadString('\n')
	if err != nil {
		t.Fatalf("Xvfb gave no display: %v", err)
	}
	s := &screen{number: strings.TrimSpace(number)}
	s.open(t, filepath.Join(dir, "Xvfb_screen0"))
	s.untilItAnswers(t)
	return s
}

// untilItAnswers waits until a program can reach the screen: Xvfb told its number
// once before it let anybody in.
func (s *screen) untilItAnswers(t testing.TB) {
	t.Helper()
	var text []byte
	var err error
	for begun := time.Now(); time.Since(begun) < patience; time.Sleep(50 * time.Millisecond) {
		cmd := exec.Command("xdotool", "getmouselocation")
		cmd.Env = append(os.Environ(), "DISPLAY=:"+s.number)
		if text, err = cmd.CombinedOutput(); err == nil {
			return
		}
	}
	t.Fatalf("the screen :%s never answers: %v, %s", s.number, err, text)
}

// open maps the screen's memory. The places of the header's numbers are those
// of XWDFile.h, all big-endian.
func (s *screen) open(t testing.TB, path string) {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close() //nolint:errcheck // only read from
	info, err := f.Stat()
	if err != nil {
		t.Fatal(err)
	}
	s.data, err = syscall.Mmap(int(f.Fd()), 0, int(info.Size()), syscall.PROT_READ, syscall.MAP_SHARED)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = syscall.Munmap(s.data) })
	word := func(i int) int { return int(binary.BigEndian.Uint32(s.data[4*i:])) }
	const headerSize, width, height, bytesPerLine, colours, colourSize = 0, 4, 5, 12, 19, 12
	s.wide, s.high, s.line = word(width), word(height), word(bytesPerLine)
	s.from = word(headerSize) + word(colours)*colourSize
}

// row gives the bytes of a stretch of one line, four a pixel.
func (s *screen) row(x0, x1, y int) []byte {
	at := s.from + y*s.line
	return s.data[at+4*x0 : at+4*x1]
}

// patch is a piece of the screen.
type patch struct{ x0, y0, x1, y1 int }

// everyLine is how far apart the lines are that a mark looks at.
const everyLine = 3

var markSeed = maphash.MakeSeed()

// mark tells one picture of a patch from another. The lines from skip0 to skip1
// are left out: the pointer is drawn there.
func (s *screen) mark(f patch, skip0, skip1 int) uint64 {
	var h maphash.Hash
	h.SetSeed(markSeed)
	for y := f.y0; y < f.y1; y += everyLine {
		if y < skip0 || y > skip1 {
			_, _ = h.Write(s.row(f.x0, f.x1, y)) // it never fails
		}
	}
	return h.Sum64()
}
