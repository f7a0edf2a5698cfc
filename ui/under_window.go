package ui

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/route"
	"tubewright/ui/board"
	"tubewright/ui/session"
)

// photoEndings are those of the files that can be laid under the drawing.
var photoEndings = []string{".png", ".jpg", ".jpeg"}

func isPhoto(path string) bool {
	return slices.Contains(photoEndings, strings.ToLower(filepath.Ext(path)))
}

// askPicture lets the person choose a picture to lay under the look.
func (w *Window) askPicture() {
	w.settle()
	w.withFile(func() { w.chooseFile(append(slices.Clone(photoEndings), ".PNG", ".JPG", ".JPEG"), w.layPicture) })
}

// withFile does something that needs the plan to have a file, asking for one
// first where it has none.
func (w *Window) withFile(act func()) {
	if w.snapshot.Path != "" {
		act()
		return
	}
	w.ask("Save the plan first?", "A picture is kept beside the plan's file, and the plan has none yet.", "Save as …", func() { w.askSaveAsThen(act) })
}

// layPicture lays a picture under the look that is shown and asks for its scale.
func (w *Window) layPicture(path string) {
	look, flat := lookUnder(w.board.Look())
	if !flat {
		look = route.UnderSide
	}
	var read loaded
	var file string
	dir := filepath.Dir(w.snapshot.Path)
	w.underWay("Reading the picture", func() (err error) {
		if read = readPhoto(path); read.err != nil {
			return read.err
		}
		file, err = besidePlan(dir, path)
		return err
	}, func(err error) {
		if err != nil {
			w.say("That picture cannot be used", sentence(err.Error()))
			return
		}
		w.keepPhoto(file, read)
		w.board.SetLook(boardLook(look))
		if err := w.session.AddPicture(laid(file, look, w.snapshot.Plan.Case, read.w, read.h)); err != nil {
			w.did(err)
			return
		}
		w.pick(board.Target{})
		w.scalePicture(len(w.snapshot.Plan.Pictures) - 1)
	})
}

// besidePlan gives the name of a picture as a plan in dir writes it, after
// copying one from elsewhere to there.
func besidePlan(dir, path string) (string, error) {
	if rel, err := filepath.Rel(dir, path); err == nil && filepath.IsLocal(rel) {
		return filepath.ToSlash(rel), nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return "", err
	}
	ending := filepath.Ext(path)
	stem := strings.TrimSuffix(filepath.Base(path), ending)
	for n := 1; ; n++ {
		name := stem + ending
		if n > 1 {
			name = fmt.Sprintf("%s-%d%s", stem, n, ending)
		}
		there, err := os.ReadFile(filepath.Join(dir, name))
		switch {
		case err == nil && bytes.Equal(there, data):
			return name, nil
		case err == nil:
			continue // another picture of that name
		case !errors.Is(err, fs.ErrNotExist):
			return "", err
		}
		return name, os.WriteFile(filepath.Join(dir, name), data, 0o600)
	}
}

// carryPictures copies the plan's pictures to the folder it has been saved in,
// where they are not there yet.
func carryPictures(p route.Plan, from, to string) error {
	var all error
	for _, pic := range p.Pictures {
		source, target := filepath.Join(from, filepath.FromSlash(pic.File)), filepath.Join(to, filepath.FromSlash(pic.File))
		if _, err := os.Stat(target); err == nil {
			continue
		}
		data, err := os.ReadFile(source)
		if err == nil {
			err = os.MkdirAll(filepath.Dir(target), 0o700)
		}
		if err == nil {
			err = os.WriteFile(target, data, 0o600)
		}
		all = errors.Join(all, err)
	}
	return all
}

// scalePicture asks for two points of a picture and how far apart they are.
func (w *Window) scalePicture(i int) {
	if i < 0 || i >= len(w.snapshot.Plan.Pictures) {
		return
	}
	w.look(boardLook(w.snapshot.Plan.Pictures[i].Look))
	w.board.Point(board.Pointing{
		Hint: "Scale the picture: click two points whose distance you know, as far apart as you can. Esc leaves it.", Points: 2,
		Done: func(at []mgl64.Vec3) {
			if at != nil {
				w.askDistance(i, at)
			}
		},
	})
}

// askDistance asks how far apart two points of a picture are.
func (w *Window) askDistance(i int, at []mgl64.Vec3) {
	u := w.snapshot.Units
	look := w.board.Look()
	from, to := board.Along(look, at[0]), board.Along(look, at[1])
	now := distance2(from, to)
	if now == 0 {
		w.say("One point twice", "Click two points that are apart.")
		return
	}
	far := newField(lengthText(now, u))
	m := w.openModal("How far apart are the two points?", modalWidth, rowsOf(
		labelled("Distance, "+string(u), far),
		newFlow("As it is now they are "+u.TextUnit(now)+" apart. Units and sums may be typed: 120 mm, 4 3/4 in.", smallSize, soft),
	), button{text: "Cancel", cancel: true}, button{text: "Scale", strong: true, act: func() {
		want, err := parseLength(far.Text, u)
		if err == nil && want <= 0 {
			err = &NumberError{far.Text, "that is no distance", "Type a length above 0."}
		}
		if err != nil {
			w.askDistance(i, at)
			w.did(err)
			return
		}
		w.did(w.session.ChangePicture(i, "Scale", func(p *route.Picture) { *p = rescaled(*p, from, to, distance2, want) }))
	}})
	far.modal = m
	w.focusSoon(m, far)
}

func distance2(a, b [2]float64) float64 { return math.Hypot(b[0]-a[0], b[1]-a[1]) }

// pictureMoved follows a picture that is dragged on the board.
func (w *Window) pictureMoved(shown int, by [2]float64, done bool) {
	_, index := w.underlays()
	if shown >= len(index) {
		return
	}
	i := index[shown]
	if w.dragged == "" {
		w.dragged, w.pictureFrom = "picture", w.snapshot.Plan.Pictures[i].At
		w.session.BeginDrag("Move picture")
	}
	at := [2]float64{round3(w.pictureFrom[0] + by[0]), round3(w.pictureFrom[1] + by[1])}
	given := done && by == [2]float64{}
	if !given {
		w.did(w.session.ChangePicture(i, "Move", func(p *route.Picture) { p.At = at }))
	}
	switch {
	case given:
		w.dragged = ""
		w.session.DropDrag()
	case done:
		w.dragged = ""
		w.session.EndDrag()
	}
}

// round3 is a length to a thousandth of a millimetre.
func round3(v float64) float64 { return math.Round(v*1e3) / 1e3 }

func (w *Window) fadePicture(i int, fade float64) {
	w.did(w.session.ChangePicture(i, "Fade", func(p *route.Picture) { p.Fade = math.Round(fade*100) / 100 }))
}

func (w *Window) lockPicture(i int, on bool) {
	name := "Unlock"
	if on {
		name = "Lock"
	}
	w.did(w.session.ChangePicture(i, name, func(p *route.Picture) { p.Locked = on }))
}

func (w *Window) removePicture(i int) { w.did(w.session.RemovePicture(i)) }

// detailOf is what the panel of the selected thing shows: while nothing is, the
// picture under the look as well.
func (w *Window) detailOf(s session.Snapshot) detailModel {
	m := detailOf(s, w.selected)
	if w.selected.Kind == board.Nothing {
		m.under = underOf(s, w.board.Look(), w.whyNoPhotoOf)
	}
	return m
}
