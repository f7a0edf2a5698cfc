package session_test

import (
	"errors"
	"strings"
	"testing"

	"tubewright/route"
	"tubewright/route/planfile"
	"tubewright/ui/session"
)

func TestPutTakesWhatAFileCanHold(t *testing.T) {
	d := newDesk(t)
	if err := d.Put("x", func(*route.Plan) {}); !errors.Is(err, session.ErrNoPlan) {
		t.Errorf("without a plan: %v", err)
	}
	p := route.Defaults()
	p.Name, p.Case, p.Catalogue, p.Tube = "bench", [3]float64{400, 300, 200}, planfile.Shelf(), "petg-16-12"
	d.Begin(p)
	d.settle()
	d.must(d.Put("Set kerf", func(p *route.Plan) { p.Saw.Kerf = 1.4 }))
	if now := d.Now(); now.Plan.Saw.Kerf != 1.4 || now.Undo != "Set kerf" {
		t.Errorf("kerf %v, undo %q", now.Plan.Saw.Kerf, now.Undo)
	}
	d.must(d.Put("Set it again", func(p *route.Plan) { p.Saw.Kerf = 1.4 }))
	if got := d.Now().Undo; got != "Set kerf" {
		t.Errorf("what changes nothing is an edit called %q", got)
	}
	var unfit *session.UnfitError
	err := d.Put("Set kerf", func(p *route.Plan) { p.Saw.Kerf = -1 })
	if !errors.As(err, &unfit) || strings.Contains(err.Error(), ".yaml") || strings.Contains(err.Error(), "\n") || d.Now().Plan.Saw.Kerf != 1.4 {
		t.Errorf("a kerf of −1 gives %v, the plan has %v", err, d.Now().Plan.Saw.Kerf)
	}
	if err := d.Put("Count", func(p *route.Plan) { p.Build = 0 }); !errors.As(err, &unfit) {
		t.Errorf("no machine gives %v", err)
	}
}
