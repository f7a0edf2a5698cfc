package session_test

import (
	"errors"
	"math"
	"testing"

	"tubewright/route"
	"tubewright/ui/session"
)

func TestPicturesAreEditsThatSolveNothing(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.settle()
	pic := route.Picture{File: "photos/open case.jpg", Look: route.UnderSide, Scale: 0.2}
	d.must(d.AddPicture(pic))
	now := d.Now()
	if len(d.works) != 0 || !now.Current() || now.Undo != "Lay open case.jpg under the drawing" || !now.Dirty {
		t.Errorf("after adding: %d solves, current %v, undo %q", len(d.works), now.Current(), now.Undo)
	}
	fade := func(f float64) { d.must(d.ChangePicture(0, "Fade", func(p *route.Picture) { p.Fade = f })) }
	fade(0.2)
	fade(0.4)
	fade(0.4)
	d.must(d.ChangePicture(0, "Lock", func(p *route.Picture) { p.Locked = true }))
	if got := d.Now().Plan.Pictures[0]; got.Fade != 0.4 || !got.Locked {
		t.Errorf("the picture is %+v", got)
	}
	d.Undo()
	if now := d.Now(); now.Undo != "Fade open case.jpg" || now.Plan.Pictures[0].Fade != 0.4 {
		t.Errorf("undone once: undo %q, %+v", now.Undo, now.Plan.Pictures)
	}
	d.Undo()
	if got := d.Now().Plan.Pictures[0]; got != pic {
		t.Errorf("undone twice: %+v, want it as it was added", got)
	}
	d.settle()
	d.must(d.RemovePicture(0))
	if n := len(d.Now().Plan.Pictures); n != 0 {
		t.Errorf("%d pictures are left", n)
	}
}

func TestAPictureWhileThePlanIsWorkedOut(t *testing.T) {
	d := newDesk(t)
	d.Begin(twoParts())
	d.must(d.AddPicture(route.Picture{File: "a.png", Look: route.UnderSide, Scale: 1}))
	if d.Now().Current() {
		t.Error("an answer that is not there yet counts")
	}
	d.settle()
	if !d.Now().Current() {
		t.Error("the plan with the picture was not worked out")
	}
}

func TestPicturesThatCannotBe(t *testing.T) {
	d := newDesk(t)
	good := route.Picture{File: "a.png", Look: route.UnderSide, Scale: 1}
	if err := d.AddPicture(good); !errors.Is(err, session.ErrNoPlan) {
		t.Errorf("without a plan: %v", err)
	}
	d.Begin(twoParts())
	for _, spoil := range []func(p *route.Picture){
		func(p *route.Picture) { p.Scale = 0 },
		func(p *route.Picture) { p.Scale = 1e4 },
		func(p *route.Picture) { p.Fade = 1.1 },
		func(p *route.Picture) { p.At[1] = math.NaN() },
		func(p *route.Picture) { p.At[0] = 1e9 },
	} {
		bad := good
		spoil(&bad)
		var wrong *session.PictureError
		if err := d.AddPicture(bad); !errors.As(err, &wrong) {
			t.Errorf("%+v gives %v, want a PictureError", bad, err)
		}
	}
	var none *session.NoPictureError
	for _, err := range []error{d.RemovePicture(0), d.ChangePicture(-1, "Fade", func(*route.Picture) {})} {
		if !errors.As(err, &none) || none.Error() == "" {
			t.Errorf("of a picture that is not there: %v", err)
		}
	}
}
