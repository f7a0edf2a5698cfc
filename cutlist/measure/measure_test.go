package measure_test

import (
	"context"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"tubewright/bends"
	"tubewright/cutlist/measure"
	"tubewright/route"
	"tubewright/route/find"
	"tubewright/route/made"
	"tubewright/route/planfile/demoplan"
	"tubewright/route/survey"
)

// museum is the museum demo as it would be on the first evening: nothing is
// measured yet.
func museum(t *testing.T) (route.Plan, []find.Way) {
	t.Helper()
	plan := demoplan.Read(t, "conservation-scanner")
	for i := range plan.Tubes {
		plan.Tubes[i].KnownFrom = route.Typical
	}
	for i := range plan.Fittings {
		plan.Fittings[i].KnownFrom = route.Typical
	}
	for i := range plan.Parts {
		plan.Parts[i].KnownFrom = route.Typical
		for k := range plan.Parts[i].Ports {
			plan.Parts[i].Ports[k].KnownFrom = ""
		}
	}
	return plan, ways(t, plan)
}

func ways(t *testing.T, plan route.Plan) (list []find.Way) {
	t.Helper()
	sol, err := find.Solve(context.Background(), plan)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sol.Runs {
		if w, ok := s.Way(); ok {
			list = append(list, w)
		}
	}
	return list
}

func names(things []measure.Thing) (list []string) {
	for _, t := range things {
		list = append(list, string(t.Of)+" "+t.Name)
	}
	return list
}

// Fittings come first, sockets before others, then ports part by part, then the
// tubes; each port that a run uses is there, and no other.
func TestTheOrderOfMeasuring(t *testing.T) {
	plan, all := museum(t)
	list := measure.ToMeasure(measure.Things(plan, all))
	rank := map[measure.Of]int{measure.Fitting: 0, measure.Port: 1, measure.Tube: 2}
	last, parts := 0, []string{}
	for _, x := range list {
		if rank[x.Of] < last || x.Firm() || x.Of == measure.Place {
			t.Errorf("%s %s does not belong here: %v", x.Of, x.Name, names(list))
		}
		last = rank[x.Of]
		if x.Of == measure.Port && (len(parts) == 0 || parts[len(parts)-1] != x.Ref.Part) {
			if slices.Contains(parts, x.Ref.Part) {
				t.Errorf("one goes back to %s", x.Ref.Part)
			}
			parts = append(parts, x.Ref.Part)
		}
	}
	if list[0].Name != "socket-16" || len(list[0].Runs) != len(plan.Runs) {
		t.Errorf("first is %s for %v, want the socket of every run", list[0].Name, list[0].Runs)
	}
	used := 0
	for _, x := range list {
		if x.Of == measure.Port {
			used++
		}
	}
	if used != 2*len(plan.Runs) {
		t.Errorf("%d ports to measure, want two for each of %d runs", used, len(plan.Runs))
	}
}

// Measuring all that is on the list lifts the mark, and leaving out any one of
// them does not: it is the shortest list.
func TestTheListIsEnoughAndNothingOnItCanBeSpared(t *testing.T) {
	plan, all := museum(t)
	list := measure.ToMeasure(measure.Things(plan, all))
	for skip := -1; skip < len(list); skip++ {
		done := plan
		for i, x := range list {
			if i != skip {
				done = measured(t, done, x)
			}
		}
		left := measure.ToMeasure(measure.Things(done, renewed(done, all)))
		if skip < 0 && len(left) != 0 {
			t.Errorf("all is measured and %v is left", names(left))
		}
		if skip >= 0 && (len(left) != 1 || left[0].Name != list[skip].Name) {
			t.Errorf("without %s: %v is left", list[skip].Name, names(left))
		}
	}
}

// renewed gives ways the fittings and tubes of a plan, as solving it would.
func renewed(plan route.Plan, all []find.Way) (out []find.Way) {
	for _, w := range all {
		w.Tube, _ = plan.FindTube(w.Tube.Name)
		for _, end := range []*route.Laid{&w.Start, &w.End} {
			end.Bodies = slices.Clone(end.Bodies)
			for i := range end.Bodies {
				end.Bodies[i].Fitting, _ = plan.FindFitting(end.Bodies[i].Fitting.Name)
			}
		}
		out = append(out, w)
	}
	return out
}

// measured enters a thing as the plan has it.
func measured(t *testing.T, plan route.Plan, x measure.Thing) route.Plan {
	t.Helper()
	if x.Of == measure.Port {
		for _, g := range survey.Groups(plan) {
			for _, r := range g.Rows {
				if r.Ref == x.Ref {
					out, _, err := survey.Take(plan, []survey.Reading{{Ref: r.Ref, From: r.From, Distance: r.Plan}}, survey.Options{})
					if err != nil {
						t.Fatal(err)
					}
					return out
				}
			}
		}
	}
	values := map[measure.Key]float64{}
	for _, n := range x.Numbers {
		values[n.Key] = n.Value
	}
	out, doubts, missing, err := measure.Enter(plan, x, values)
	if err != nil || len(doubts)+len(missing) > 0 {
		t.Fatalf("%s: %v, doubts %v, missing %v", x.Name, err, doubts, missing)
	}
	return out
}

func TestWhichRunsRestOnWhat(t *testing.T) {
	plan, all := museum(t)
	things := measure.Things(plan, all)
	at := func(of measure.Of, name string) measure.Thing {
		i := slices.IndexFunc(things, func(x measure.Thing) bool { return x.Of == of && x.Name == name })
		if i < 0 {
			t.Fatalf("no %s %s among %v", of, name, names(things))
		}
		return things[i]
	}
	petg := at(measure.Tube, "petg-16-12")
	for _, n := range petg.Numbers {
		for _, w := range all {
			bent := w.Tube.Name == "petg-16-12" && (len(w.Formed.Bends) > 0 || n.Key == measure.OD || n.Key == measure.ID)
			if slices.Contains(n.Runs, w.Run) != bent {
				t.Errorf("%s of petg: runs %v; %s has %d bends", n.Key, n.Runs, w.Run, len(w.Formed.Bends))
			}
		}
	}
	if glass := at(measure.Tube, "glass-16-12"); len(glass.Numbers) != 2 || glass.Before != "" {
		t.Errorf("glass cannot be bent, but is asked for %+v", glass.Numbers)
	}
	if place := at(measure.Place, "pump"); len(place.Runs) != 2 || place.Firm() {
		t.Errorf("place of the pump: %+v", place)
	}
}

// A tube that is made rests on nothing any more.
func TestAMadeRunRestsOnNothing(t *testing.T) {
	plan, all := museum(t)
	for _, w := range all {
		try := w.Attempt()
		try.Fits, try.Cut = true, w.Formed.Developed-1
		var err error
		if plan, err = made.Record(plan, w.Run, try); err != nil {
			t.Fatal(err)
		}
	}
	if things := measure.Things(plan, all); len(things) != 0 {
		t.Errorf("%v", names(things))
	}
}

// Every kind of fitting has its numbers, each with a way to take it and a drawing.
func TestEveryKindIsMeasured(t *testing.T) {
	plan, _ := museum(t)
	kinds := map[route.FittingKind]int{}
	for _, f := range plan.AllFittings() {
		laid := route.Laid{Bodies: []route.Body{{Fitting: f}}}
		for _, x := range measure.Things(plan, []find.Way{{Run: "r", Start: laid, Tube: route.Tube{Name: "t", Tube: bends.Tube{Radius: 3}}}}) {
			if x.Of != measure.Fitting {
				continue
			}
			kinds[f.Kind]++
			for _, n := range x.Numbers {
				if n.How == "" || !slices.Contains(measure.Sketches(), n.Sketch) || n.Unit == "" || n.Value < 0 {
					t.Errorf("%s of %s: %+v", n.Key, f.Name, n)
				}
			}
			if len(x.Numbers) < 2 {
				t.Errorf("%s has %d numbers", f.Name, len(x.Numbers))
			}
		}
	}
	if len(kinds) != 8 {
		t.Errorf("kinds measured: %v, want all eight", kinds)
	}
}

func TestEnter(t *testing.T) {
	plan, all := museum(t)
	socket := measure.ToMeasure(measure.Things(plan, all))[0]
	values := map[measure.Key]float64{
		measure.Stop: 6.2, measure.Full: 12.1, measure.Least: 9, measure.CollarOD: 24, measure.CollarLength: 20,
	}
	out, doubts, missing, err := measure.Enter(plan, socket, values)
	f, _ := out.FindFitting("socket-16")
	if err != nil || len(doubts)+len(missing) != 0 || f.Stop != 6.2 || f.Insertion.Full != 12.1 || f.KnownFrom != route.Measured {
		t.Errorf("%v %v %v: %+v", err, doubts, missing, f)
	}
	delete(values, measure.Least)
	values[measure.Stop] = 16.2
	out, doubts, missing, err = measure.Enter(plan, socket, values)
	f, _ = out.FindFitting("socket-16")
	if err != nil || len(missing) != 1 || len(doubts) != 1 || doubts[0] != (measure.Doubt{Key: measure.Stop, Had: 6, Has: 16.2}) || f.KnownFrom.Firm() {
		t.Errorf("half entered: %v, doubts %v, missing %v, known %s", err, doubts, missing, f.KnownFrom)
	}
	if was, _ := plan.FindFitting("socket-16"); was.Stop != 6 {
		t.Error("Enter wrote to the plan it was given")
	}
}

func TestEnterRefuses(t *testing.T) {
	plan, all := museum(t)
	list := measure.ToMeasure(measure.Things(plan, all))
	of := func(of measure.Of) measure.Thing {
		return list[slices.IndexFunc(list, func(x measure.Thing) bool { return x.Of == of })]
	}
	gone := of(measure.Fitting)
	gone.Name = "gone"
	lost := of(measure.Tube)
	lost.Name = "gone"
	for name, c := range map[string]struct {
		thing measure.Thing
		value map[measure.Key]float64
	}{
		"no such number":     {of(measure.Fitting), map[measure.Key]float64{measure.Radius: 3}},
		"below nothing":      {of(measure.Fitting), map[measure.Key]float64{measure.Stop: -1}},
		"no number":          {of(measure.Tube), map[measure.Key]float64{measure.OD: math.NaN()}},
		"least above full":   {of(measure.Fitting), map[measure.Key]float64{measure.Least: 13}},
		"inside the outside": {of(measure.Tube), map[measure.Key]float64{measure.ID: 16}},
		"a port":             {of(measure.Port), map[measure.Key]float64{measure.X: 1}},
		"gone fitting":       {gone, nil},
		"gone tube":          {lost, nil},
	} {
		_, _, _, err := measure.Enter(plan, c.thing, c.value)
		var entry *measure.EntryError
		if !errors.As(err, &entry) || !strings.Contains(err.Error(), c.thing.Name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
