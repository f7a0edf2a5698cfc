//go:build window

package ui

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
)

// spot is a point of the board: on the screen in pixels, in the case in mm.
type spot struct {
	x, y float64
	at   mgl64.Vec3
}

// photographer is a person with a photo of the case, who has looked where two
// ports stand on the screen.
type photographer struct {
	*stage
	file string // of the plan
	a, b spot
}

func (s *stage) spotOf(p route.Plan, ref string) spot {
	s.t.Helper()
	part, port, _ := strings.Cut(ref, ".")
	q, ok := p.FindPort(route.PortRef{Part: part, Port: port})
	if !ok {
		s.t.Fatalf("no port %s", ref)
	}
	x, y := s.box("port " + ref)
	return spot{x, y, q.Frame.At}
}

// where is the point of the screen at which a place of the case is seen through
// the side.
func (p photographer) where(x, y float64) (float64, float64) {
	k := (p.b.x - p.a.x) / (p.b.at[0] - p.a.at[0])
	return p.a.x + k*(x-p.a.at[0]), p.a.y - k*(y-p.a.at[1])
}

func (p photographer) clickAt(x, y float64) {
	p.t.Helper()
	p.move(x, y)
	p.run("xdotool", "click", "1")
}

// paintPhoto writes a picture of 400 by 300 pixels.
func paintPhoto(t *testing.T, path string) {
	t.Helper()
	m := image.NewRGBA(image.Rect(0, 0, 400, 300))
	for y := range 300 {
		for x := range 400 {
			m.Set(x, y, color.RGBA{uint8(x / 2), uint8(y / 2), 90, 255})
		}
	}
	f, err := os.Create(path)
	if err == nil {
		err = png.Encode(f, m)
	}
	if err == nil {
		err = f.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
}

// A photo is laid under the look, scaled by two points and their distance, moved,
// faded and locked; then a port is placed by clicking on it. Each is in the file,
// the photo by its name beside the plan.
func TestWindowLaysAPhotoAndPlacesAPortOnIt(t *testing.T) {
	s, path, _ := stagedBench(t)
	paintPhoto(t, filepath.Join(filepath.Dir(path), "case.png"))
	plan := s.planIn(path)
	p := photographer{s, path, s.spotOf(plan, "left.out"), s.spotOf(plan, "top.in")}

	p.layPhoto()
	was := p.pictureIn(path)
	if was.File != "case.png" || was.Look != route.UnderSide {
		t.Errorf("the picture is saved as %+v, want case.png under the side", was)
	}
	p.scale(100)
	p.isScaled(was, p.pictureIn(path), 100)
	p.drag()
	p.fadeAndLock(path)
	p.placePort(path)
}

// layPhoto lays the only picture in the plan's folder.
func (p photographer) layPhoto() {
	p.key("ctrl+i")
	// Fyne's own question stands in the middle of the window, 820 by 560: its first
	// row holds the way up and then the picture, its last the buttons.
	left, top := (1280.0-820)/2, (800.0-560)/2
	p.until("the question which", func(b Boxes) bool { return b.Dialog })
	for p.boxes().Dialog { // its list comes a moment after its frame
		p.clickAt(left+277, top+120)
		p.clickAt(left+790, top+541)
		p.waitForDialog()
	}
	p.until("that two points are asked for", func(b Boxes) bool { return b.Modal == "" && strings.HasPrefix(b.News, "Scale the picture") })
}

// waitForDialog gives Fyne's question time to close.
func (p photographer) waitForDialog() {
	const long = 10 * time.Second
	for begun := time.Now(); p.boxes().Dialog && time.Since(begun) < long; {
		time.Sleep(20 * time.Millisecond)
	}
}

// scale clicks the two ports and types how far apart they are on the photo.
func (p photographer) scale(want float64) {
	p.clickAt(p.a.x, p.a.y)
	p.until("that the second is asked for", func(b Boxes) bool { return b.Modal == "" })
	p.clickAt(p.b.x, p.b.y)
	p.until("how far they are apart", func(b Boxes) bool { return strings.HasPrefix(b.Modal, "How far apart") })
	p.write(fmt.Sprint(want))
	p.key("Return")
	p.until("the picture scaled", func(b Boxes) bool { return idle(b) && b.Undo == "Scale case.png" })
}

func (p photographer) pictureIn(path string) route.Picture {
	p.t.Helper()
	p.saved()
	plan := p.planIn(path)
	if len(plan.Pictures) != 1 {
		p.t.Fatalf("the plan is saved with the pictures %v", plan.Pictures)
	}
	return plan.Pictures[0]
}

// clickError is how far a click may lie from its point, mm: a pixel at this zoom.
const clickError = 1.0

// isScaled: what was as far apart as the two ports is as far as was typed, and the
// first point stayed.
func (p photographer) isScaled(was, now route.Picture, want float64) {
	p.t.Helper()
	apart := math.Hypot(p.b.at[0]-p.a.at[0], p.b.at[1]-p.a.at[1])
	k := now.Scale / was.Scale
	if math.Abs(k*apart-want) > clickError {
		p.t.Errorf("the scale went from %v to %v: the points are %.2f mm apart on it, want %v", was.Scale, now.Scale, k*apart, want)
	}
	for i := range 2 {
		if at := p.a.at[i] + (was.At[i]-p.a.at[i])*k; math.Abs(now.At[i]-at) > clickError {
			p.t.Errorf("scaled about the first point its corner is at %v, want %.2f along axis %d", now.At, at, i)
		}
	}
}

// drag pulls the picture by 30 mm to the right and 20 up, at a place without a part.
func (p photographer) drag() {
	was := p.pictureIn(p.file)
	x, y := p.where(was.At[0]+20, was.At[1]+20)
	toX, toY := p.where(was.At[0]+50, was.At[1]+40)
	p.move(x, y)
	p.run("xdotool", "mousedown", "1")
	for i := 1.0; i <= 10; i++ {
		p.move(x+(toX-x)*i/10, y+(toY-y)*i/10)
	}
	p.run("xdotool", "mouseup", "1")
	p.until("the picture moved", func(b Boxes) bool { return idle(b) && b.Undo == "Move case.png" })
	now := p.pictureIn(p.file)
	if math.Abs(now.At[0]-was.At[0]-30) > 2*clickError || math.Abs(now.At[1]-was.At[1]-20) > 2*clickError || now.Scale != was.Scale {
		p.t.Errorf("dragged by 30 and 20 mm it went from %v to %v", was.At, now.At)
	}
}

// fadeAndLock fades the picture by three steps of its slider and locks it.
func (p photographer) fadeAndLock(path string) {
	was := p.pictureIn(path)
	p.tabTo("F6", "fade")
	p.key("Right", "Right", "Right")
	p.until("the picture faded", func(b Boxes) bool { return idle(b) && b.Undo == "Fade case.png" })
	p.tabTo("Tab", "Lock")
	p.key("Return")
	p.until("the picture locked", func(b Boxes) bool { return idle(b) && b.Undo == "Lock case.png" })
	if now := p.pictureIn(path); math.Abs(now.Fade-was.Fade-0.15) > 1e-9 || !now.Locked || now.At != was.At {
		p.t.Errorf("faded by three steps and locked it is %+v, was %+v", now, was)
	}
}

// placePort puts a port on a part by clicking where the photo shows it.
func (p photographer) placePort(path string) {
	p.click("part left")
	p.until("the part's fields", func(b Boxes) bool { return b.Selected == "left" })
	p.key("ctrl+j")
	p.until("the part's page", func(b Boxes) bool { return b.Modal == "Part left" })
	p.tabTo("Tab", "Add one by clicking")
	p.key("Return")
	p.until("which way it faces", func(b Boxes) bool { return b.Modal == "Place a port on left" })
	p.key("Return") // toward you
	p.until("that a click is waited for", func(b Boxes) bool { return b.Modal == "" && strings.HasPrefix(b.News, "Click the middle") })
	x, y := p.where(75, 125)
	p.clickAt(x, y)
	p.until("the part's page again", func(b Boxes) bool { return b.Modal == "Part left" && strings.HasPrefix(b.Undo, "Add port") })
	p.key("Escape")
	p.until("the window", idle)
	p.saved()
	q, ok := p.planIn(path).FindPort(route.PortRef{Part: "left", Port: "port"})
	want := mgl64.Vec3{75, 125, 70} // on the near face of the part
	if !ok || q.Frame.At.Sub(want).Len() > clickError || q.Frame.Dir != (mgl64.Vec3{0, 0, 1}) {
		p.t.Errorf("the port is saved at %v facing %v, want %v toward you", q.Frame.At, q.Frame.Dir, want)
	}
}
