package ui

import (
	"errors"
	"image"
	"image/png"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/ui/board"
)

// writePNG writes a grey picture.
func writePNG(t *testing.T, path string, w, h int, grey uint8) {
	t.Helper()
	img := image.NewGray(image.Rect(0, 0, w, h))
	for i := range img.Pix {
		img.Pix[i] = grey
	}
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(png.Encode(f, img), f.Close()); err != nil {
		t.Fatal(err)
	}
}

// pictured is the bench plan with a picture of 800 by 300 pixels dropped on it.
func pictured(t *testing.T) *bench {
	t.Helper()
	b := opened(t)
	path := filepath.Join(t.TempDir(), "open case.png")
	writePNG(t, path, 800, 300, 120)
	b.dropped(fyne.NewPos(0, 0), []fyne.URI{storage.NewFileURI(path)})
	b.settle()
	if len(b.snapshot.Plan.Pictures) != 1 {
		t.Fatalf("the plan has %d pictures; asked: %q", len(b.snapshot.Plan.Pictures), b.asked())
	}
	return b
}

// The case is 400 by 300 mm, so the picture of 800 by 300 is 400 mm wide.
func TestAPictureIsLaidUnderTheLookAndScaled(t *testing.T) {
	b := pictured(t)
	p := b.snapshot.Plan.Pictures[0]
	want := route.Picture{File: "open case.png", Look: route.UnderSide, At: [2]float64{0, 75}, Scale: 0.5, Fade: 0.4}
	if p != want {
		t.Errorf("the picture is %+v, want %+v", p, want)
	}
	if _, err := os.Stat(filepath.Join(b.dir, "open case.png")); err != nil {
		t.Errorf("it was not copied beside the plan: %v", err)
	}
	if len(b.board.Scene().Under) != 1 || !b.board.Pointing() || !strings.HasPrefix(b.news, "Scale the picture") {
		t.Errorf("the board has %d pictures, pointing %v, told %q", len(b.board.Scene().Under), b.board.Pointing(), b.news)
	}
	b.askDistance(0, []mgl64.Vec3{{100, 100, 0}, {300, 100, 0}})
	b.typeInto("10 cm")
	b.pressButton("Scale")
	b.settle()
	if p := b.snapshot.Plan.Pictures[0]; p.Scale != 0.25 || p.At != [2]float64{50, 87.5} {
		t.Errorf("200 mm said to be 100: %+v, want 0.25 mm a pixel, the first point where it was", p)
	}
	if b.snapshot.Undo != "Scale open case.png" {
		t.Errorf("undo is called %q", b.snapshot.Undo)
	}
}

// typeInto writes into the field of the question that is open.
func (b *bench) typeInto(text string) {
	b.t.Helper()
	f, ok := b.win.Canvas().Focused().(*field)
	if !ok {
		b.t.Fatalf("no field has the focus, but %T", b.win.Canvas().Focused())
	}
	f.SetText(text)
}

func TestAWrongDistanceIsAskedForAgain(t *testing.T) {
	b := pictured(t)
	at := []mgl64.Vec3{{100, 100, 0}, {300, 100, 0}}
	for _, wrong := range []string{"0", "far"} {
		b.askDistance(0, at)
		b.typeInto(wrong)
		b.pressButton("Scale")
		if b.asked() != "That cannot be done" || b.snapshot.Plan.Pictures[0].Scale != 0.5 {
			t.Errorf("%q: asked %q, scale %v", wrong, b.asked(), b.snapshot.Plan.Pictures[0].Scale)
		}
		b.pressButton("Close")
		if !strings.HasPrefix(b.asked(), "How far apart") {
			t.Errorf("%q: then asked %q", wrong, b.asked())
		}
		b.pressButton("Cancel")
	}
	b.askDistance(0, []mgl64.Vec3{at[0], at[0]})
	if b.asked() != "One point twice" {
		t.Errorf("of one point twice it asks %q", b.asked())
	}
}

func TestThePanelOfAPicture(t *testing.T) {
	b := pictured(t)
	u := b.details.under
	if !u.model.shown || u.model.name != "open case.png" || u.model.wrong != "" {
		t.Fatalf("the panel shows %+v", u.model)
	}
	u.fade.slider.SetValue(0.7)
	if got := b.snapshot.Plan.Pictures[0].Fade; got != 0.7 {
		t.Errorf("the slider gives a fade of %v", got)
	}
	b.lockPicture(0, true)
	if !b.board.Scene().Under[0].Locked || !u.model.locked {
		t.Error("the picture was not locked on the board and in the panel")
	}
	b.look(board.Above)
	if u.model.shown {
		t.Error("the picture under the side shows in the panel from above")
	}
	b.look(board.Side)
	b.pick(board.PartTarget("left"))
	if u.model.shown {
		t.Error("with a part selected the panel shows the picture")
	}
	b.pick(board.Target{})
	if n := len(b.contextItems(board.Target{})); n != 7 {
		t.Errorf("the menu of the board has %d lines with a picture, want 7", n)
	}
	b.removePicture(0)
	if u.model.shown || len(b.board.Scene().Under) != 0 {
		t.Error("taken away, the picture is still shown")
	}
}

func TestAPictureIsDragged(t *testing.T) {
	b := pictured(t)
	b.pictureMoved(0, [2]float64{10, 5}, false)
	b.pictureMoved(0, [2]float64{20.00012, 5}, true)
	b.settle()
	if p := b.snapshot.Plan.Pictures[0]; p.At != [2]float64{20, 80} || b.session.Dragging() {
		t.Errorf("dragged it stands at %v", p.At)
	}
	b.pictureMoved(0, [2]float64{10, 5}, false)
	b.pictureMoved(0, [2]float64{}, true)
	if p := b.snapshot.Plan.Pictures[0]; p.At != [2]float64{20, 80} || b.session.Dragging() {
		t.Errorf("given up it stands at %v", p.At)
	}
	b.undo()
	if p := b.snapshot.Plan.Pictures[0]; p.At != [2]float64{0, 75} {
		t.Errorf("undone it stands at %v", p.At)
	}
}

func TestAMissingPictureIsTold(t *testing.T) {
	b := pictured(t)
	b.save()
	path := b.snapshot.Path
	if err := os.Remove(filepath.Join(b.dir, "open case.png")); err != nil {
		t.Fatal(err)
	}
	if err := b.Open(path); err != nil {
		t.Fatal(err)
	}
	b.settle()
	if u := b.details.under; !strings.Contains(u.model.wrong, "not beside the plan any more") || len(b.snapshot.List.Tubes) != 1 {
		t.Errorf("the panel says %q, the plan has %d tubes", u.model.wrong, len(b.snapshot.List.Tubes))
	}
}

func TestSavingElsewhereTakesThePicturesAlong(t *testing.T) {
	b := pictured(t)
	dir := t.TempDir()
	b.saveTo(filepath.Join(dir, "other.plan.yaml"), nil)
	if _, err := os.Stat(filepath.Join(dir, "open case.png")); err != nil || len(b.board.Scene().Under) != 1 {
		t.Errorf("beside the new file: %v", err)
	}
	b.settle()
	if err := os.Remove(filepath.Join(dir, "open case.png")); err != nil {
		t.Fatal(err)
	}
	b.saveTo(filepath.Join(t.TempDir(), "third.plan.yaml"), nil)
	if b.asked() != "Saved" || b.snapshot.Dirty {
		t.Errorf("with its picture gone: asked %q, dirty %v", b.asked(), b.snapshot.Dirty)
	}
}

func TestWhatIsNoPictureIsTold(t *testing.T) {
	b := opened(t)
	path := filepath.Join(t.TempDir(), "text.png")
	if err := os.WriteFile(path, []byte("hello"), 0o600); err != nil {
		t.Fatal(err)
	}
	b.layPicture(path)
	b.settle()
	if b.asked() != "That picture cannot be used" || len(b.snapshot.Plan.Pictures) != 0 {
		t.Errorf("asked %q", b.asked())
	}
	b.pressButton("Close")
	b.emptyPlan()
	b.withFile(func() { t.Error("went on without a file") })
	if b.asked() != "Save the plan first?" {
		t.Errorf("without a file it asks %q", b.asked())
	}
}

func TestPicturesBesideThePlan(t *testing.T) {
	dir, elsewhere := t.TempDir(), t.TempDir()
	inside := filepath.Join(dir, "photos", "a.png")
	if err := os.MkdirAll(filepath.Dir(inside), 0o700); err != nil {
		t.Fatal(err)
	}
	writePNG(t, inside, 4, 4, 9)
	first, second := filepath.Join(elsewhere, "a.png"), filepath.Join(elsewhere, "b", "a.png")
	if err := os.MkdirAll(filepath.Dir(second), 0o700); err != nil {
		t.Fatal(err)
	}
	writePNG(t, first, 4, 4, 1)
	writePNG(t, second, 4, 4, 2)
	for _, row := range []struct{ path, want string }{
		{inside, "photos/a.png"}, {first, "a.png"}, {first, "a.png"}, {second, "a-2.png"},
	} {
		if got, err := besidePlan(dir, row.path); err != nil || got != row.want {
			t.Errorf("%s is called %q (%v), want %q", row.path, got, err, row.want)
		}
	}
	if _, err := besidePlan(dir, filepath.Join(elsewhere, "gone.png")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a file that is gone gives %v", err)
	}
}

// From above upright runs down z: the lower edge has the larger z. From the
// front across runs down z: the left edge has the larger z.
func TestAPictureIsLaidInTheMiddle(t *testing.T) {
	size := [3]float64{400, 300, 200}
	for _, row := range []struct {
		look route.PictureLook
		at   [2]float64
	}{
		{route.UnderSide, [2]float64{50, 0}}, {route.UnderAbove, [2]float64{100, 200}}, {route.UnderFront, [2]float64{200, 50}},
	} {
		if p := laid("a.png", row.look, size, 100, 100); p.At != row.at {
			t.Errorf("%s: it stands at %v, want %v", row.look, p.At, row.at)
		}
	}
	p := rescaled(route.Picture{At: [2]float64{10, 20}, Scale: 1}, [2]float64{10, 20}, [2]float64{13, 24}, distance2, 10)
	if p.At != [2]float64{10, 20} || math.Abs(p.Scale-2) > 1e-12 {
		t.Errorf("scaled about its own corner it is %+v, want twice the scale in place", p)
	}
}

func TestMarkupOfASlide(t *testing.T) {
	themed(t)
	s := newSlide(0, 1, 0.1, nil)
	s.slider.Value = 0.4
	looksLike(t, "slide", s, fyne.NewSize(150, s.HeightFor(150)))
	test.Tap(s.slider)
}
