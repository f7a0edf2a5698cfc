package session

import (
	"fmt"
	"math"
	"strings"

	"tubewright/route"
)

// PictureError says that a number of a picture is outside what it may be.
type PictureError struct {
	What       string
	Got        float64
	Least, Max float64
}

func (e *PictureError) Error() string {
	return fmt.Sprintf("the picture's %s must be between %g and %g, not %g", e.What, e.Least, e.Max, e.Got)
}

// Bounds of a picture's scale, mm for a pixel: a scan of a small part, and a
// thumbnail of a large case.
const (
	leastScale = 1e-4
	mostScale  = 100
)

// NoPictureError says that the plan has no such picture.
type NoPictureError struct{ Index int }

func (e *NoPictureError) Error() string { return fmt.Sprintf("the plan has no picture %d", e.Index+1) }

// AddPicture lays a picture under a look, on top of those that lie there.
func (s *Session) AddPicture(p route.Picture) error {
	if err := soundPicture(p); err != nil {
		return err
	}
	return s.apart("Lay "+baseName(p.File)+" under the drawing", "", func(plan route.Plan) route.Plan {
		plan.Pictures = append(plan.Pictures, p)
		return plan
	})
}

// ChangePicture changes one picture. Changes called alike and in a row are one
// step of undo: those of a slider.
func (s *Session) ChangePicture(i int, name string, change func(*route.Picture)) error {
	plan := s.history.plan()
	if i < 0 || i >= len(plan.Pictures) {
		return &NoPictureError{i}
	}
	next := plan.Pictures[i]
	change(&next)
	if err := soundPicture(next); err != nil || next == plan.Pictures[i] {
		return err
	}
	name += " " + baseName(next.File)
	return s.apart(name, fmt.Sprint(name, i), func(p route.Plan) route.Plan {
		p.Pictures[i] = next
		return p
	})
}

// RemovePicture takes a picture out of the plan; its file stays.
func (s *Session) RemovePicture(i int) error {
	plan := s.history.plan()
	if i < 0 || i >= len(plan.Pictures) {
		return &NoPictureError{i}
	}
	return s.apart("Take "+baseName(plan.Pictures[i].File)+" away", "", func(p route.Plan) route.Plan {
		p.Pictures = append(p.Pictures[:i], p.Pictures[i+1:]...)
		return p
	})
}

func baseName(file string) string { return file[strings.LastIndex(file, "/")+1:] }

func soundPicture(p route.Picture) error {
	for _, n := range []struct {
		what       string
		got        float64
		least, max float64
	}{
		{"place", p.At[0], -farthest, farthest},
		{"place", p.At[1], -farthest, farthest},
		{"scale in mm", p.Scale, leastScale, mostScale},
		{"fade", p.Fade, 0, 1},
	} {
		if math.IsNaN(n.got) || n.got < n.least || n.got > n.max {
			return &PictureError{n.what, n.got, n.least, n.max}
		}
	}
	return nil
}

// apart makes an edit that no answer hangs on: one there is counts for the new
// plan as well.
func (s *Session) apart(name, key string, change func(route.Plan) route.Plan) error {
	if !s.history.open() {
		return ErrNoPlan
	}
	current := s.Now().Current()
	s.history.add(name, key, change(s.history.plan().Clone()))
	if !current {
		s.changed()
	} else {
		s.version++
		s.answer.solved, s.answer.listed = s.version, s.version
		s.forgetWayOut()
		s.publish()
	}
	s.note()
	return nil
}
