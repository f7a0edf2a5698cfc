package planfile_test

import (
	"strings"
	"testing"

	"tubewright/route"
	"tubewright/route/planfile"
)

const picturePlan = `format: 1
name: pictured
case: {size: [500, 300, 200]}
pictures: # taken on the bench
  - {file: photos/open case.jpg, look: above, at: [-12.5, 210], scale: 0.25, fade: 0.4, locked: true} # with the lid off
`

func TestPicturesAreReadAndChangedInPlace(t *testing.T) {
	plan, src, err := planfile.Read("pictured"+planfile.Ending, []byte(picturePlan))
	if err != nil {
		t.Fatal(err)
	}
	want := route.Picture{File: "photos/open case.jpg", Look: route.UnderAbove, At: [2]float64{-12.5, 210}, Scale: 0.25, Fade: 0.4, Locked: true}
	if len(plan.Pictures) != 1 || plan.Pictures[0] != want {
		t.Fatalf("read %+v, want %+v", plan.Pictures, want)
	}
	next := plan.Clone()
	next.Pictures[0].Scale, next.Pictures[0].Locked = 0.5, false
	if plan.Pictures[0] != want {
		t.Error("a clone shares its pictures")
	}
	text, report, err := planfile.Write(next, src)
	if err != nil || report.CommentsLost {
		t.Fatalf("Write: %+v, %v", report, err)
	}
	if w := strings.Replace(picturePlan, "scale: 0.25, fade: 0.4, locked: true", "scale: 0.5, fade: 0.4, locked: false", 1); string(text) != w &&
		string(text) != strings.Replace(picturePlan, "scale: 0.25, fade: 0.4, locked: true", "scale: 0.5, fade: 0.4", 1) {
		t.Errorf("written:\n%s\nwant:\n%s", text, w)
	}
}

// In a file in inches place and scale count in inches, the fade in nothing.
func TestPicturesInInches(t *testing.T) {
	text := strings.Replace(picturePlan, "format: 1\n", "format: 1\nunits: in\n", 1)
	plan, _, err := planfile.Read("pictured"+planfile.Ending, []byte(text))
	if err != nil || plan.Pictures[0].Scale != 0.25*25.4 || plan.Pictures[0].At[1] != 210*25.4 || plan.Pictures[0].Fade != 0.4 {
		t.Errorf("read %+v (%v)", plan.Pictures, err)
	}
}
