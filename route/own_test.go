package route_test

import (
	"testing"

	"tubewright/bends"
	"tubewright/route"
)

func TestOwnTubeAndFitting(t *testing.T) {
	shelf := &route.Catalogue{
		Tubes:    []route.Tube{{Name: "petg", Tube: bends.Tube{Radius: 32}}},
		Fittings: []route.Fitting{{Name: "elbow", Rolls: []float64{0, 90}}},
	}
	p := route.Plan{Catalogue: shelf}
	for range 2 { // the second time it is there already
		p.OwnTube("petg").Radius = 33
		p.OwnFitting("elbow").Rolls[0] = 45
	}
	if len(p.Tubes) != 1 || p.Tubes[0].Radius != 33 || len(p.Fittings) != 1 || p.Fittings[0].Rolls[0] != 45 {
		t.Errorf("the plan's own are %+v and %+v", p.Tubes, p.Fittings)
	}
	if shelf.Tubes[0].Radius != 32 || shelf.Fittings[0].Rolls[0] != 0 {
		t.Error("the catalogue was written to")
	}
	if p.OwnTube("none") != nil || p.OwnFitting("none") != nil {
		t.Error("something of no name is there")
	}
}
