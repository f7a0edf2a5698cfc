package planfile_test

import (
	"strings"
	"testing"

	"tubewright/route"
	"tubewright/route/planfile"
)

const stackPlan = `format: 1
case: {size: [500, 300, 200]}
tube: petg-16-12
parts:
  front: # pulls
    kind: radiator-stack
    at: [10, 20, 60]
    stack: {fans: 3, sides: both} # as bought
`

// The kind gives what the plan leaves out: 120 mm fans of 25, a radiator of 30.
func TestAStackTakesTheRestFromItsKind(t *testing.T) {
	plan, _, err := planfile.Read("stack"+planfile.Ending, []byte(stackPlan))
	if err != nil {
		t.Fatal(err)
	}
	whole := plan.Whole(plan.Parts[0])
	want := route.Stack{Fan: 120, Fans: 3, Thickness: 30, FanThickness: 25, Sides: route.BothSides, Ports: route.NearFace}
	if whole.Stack != want || len(whole.Solids) != 3 || len(whole.Ports) != 2 || whole.Metals[0] != "copper" {
		t.Errorf("the stack is %+v with %d solids and %d ports, want %+v", whole.Stack, len(whole.Solids), len(whole.Ports), want)
	}
}

func TestAStackIsChangedInPlace(t *testing.T) {
	plan, src, err := planfile.Read("stack"+planfile.Ending, []byte(stackPlan))
	if err != nil {
		t.Fatal(err)
	}
	plan = plan.Clone()
	plan.Parts[0].Stack.Thickness, plan.Parts[0].Stack.Sides = 45, route.NearSide
	text, report, err := planfile.Write(plan, src)
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Replace(stackPlan, "{fans: 3, sides: both}", "{fans: 3, thickness: 45, sides: near}", 1)
	if string(text) != want || report.CommentsLost {
		t.Errorf("written:\n%s\nwant:\n%s", text, want)
	}
}

// In a file in inches the lengths of a stack are inches.
func TestAStackInInches(t *testing.T) {
	text := strings.Replace(stackPlan, "format: 1\n", "format: 1\nunits: in\n", 1)
	text = strings.Replace(text, "fans: 3,", "fans: 3, thickness: 2,", 1)
	plan, _, err := planfile.Read("stack"+planfile.Ending, []byte(text))
	if err != nil || plan.Parts[0].Stack.Thickness != 50.8 {
		t.Errorf("thickness %v (%v), want 2 · 25.4", plan.Parts[0].Stack.Thickness, err)
	}
}
