package board

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestDeskGivesTheSmallLooksRoom(t *testing.T) {
	tests := []struct {
		size  fyne.Size
		small bool
	}{
		{fyne.NewSize(1180, 680), true},
		{fyne.NewSize(deskWide, deskHigh), true},
		{fyne.NewSize(deskWide-1, 680), false},
		{fyne.NewSize(1180, deskHigh-1), false},
		{fyne.NewSize(10, 10), false},
	}
	for _, tt := range tests {
		test.NewTempApp(t)
		b := NewBoard()
		desk, ok := NewDesk(b).(*fyne.Container)
		if !ok {
			t.Fatal("the desk is no container")
		}
		desk.Resize(tt.size)
		for i, m := range b.minis {
			if m.Visible() != tt.small {
				t.Errorf("%v: small look %d visible %v, want %v", tt.size, i, m.Visible(), tt.small)
			}
			if tt.small && (m.Position().X < b.Size().Width || m.Position().Y+m.Size().Height > tt.size.Height+0.01) {
				t.Errorf("%v: small look %d at %v, %v; the board is %v", tt.size, i, m.Position(), m.Size(), b.Size())
			}
		}
		if !tt.small && b.Size() != tt.size {
			t.Errorf("%v: without small looks the board is %v", tt.size, b.Size())
		}
	}
}

func TestClickOnASmallLookMakesItLarge(t *testing.T) {
	test.NewTempApp(t)
	b := NewBoard()
	NewDesk(b)
	var told []Look
	b.OnLook = func(l Look) { told = append(told, l) }
	b.SetScene(*demoScene(t))
	for range 8 {
		m := b.minis[2]
		want := m.Look()
		test.Tap(m)
		if b.Look() != want || told[len(told)-1] != want {
			t.Fatalf("after a click on %v the large look is %v", want, b.Look())
		}
		seen := map[Look]bool{b.Look(): true}
		for _, m := range b.minis {
			seen[m.Look()] = true
		}
		if len(seen) != 4 {
			t.Fatalf("with %v large the small looks leave one out", b.Look())
		}
	}
}

func TestSmallLooksTellWhatAClickDoes(t *testing.T) {
	test.NewTempApp(t)
	b := NewBoard()
	NewDesk(b)
	var said []string
	b.OnHover = func(text string) { said = append(said, text) }
	b.minis[0].MouseIn(nil)
	b.minis[0].MouseOut()
	if len(said) != 2 || said[0] != "From above, key 2" || said[1] != "" {
		t.Errorf("said %q", said)
	}
}

func TestDeskIsDrawn(t *testing.T) {
	test.NewTempApp(t)
	b := NewBoard()
	w := test.NewTempWindow(t, NewDesk(b))
	w.SetPadded(false)
	w.Resize(fyne.NewSize(900, 500))
	b.SetScene(*demoScene(t))
	img := w.Canvas().Capture()
	paper := Light().Paper
	count := map[bool]int{}
	for y := 0; y < 500; y += 3 {
		for x := 0; x < 900; x += 3 {
			r, g, bl, _ := img.At(x, y).RGBA()
			if uint8(r>>8) == paper.R && uint8(g>>8) == paper.G && uint8(bl>>8) == paper.B {
				count[x < 700]++
			}
		}
	}
	if count[true] < 500 || count[false] < 100 {
		t.Errorf("the case's paper shows %d times large, %d times small", count[true], count[false])
	}
}
