package ui

import (
	"path/filepath"

	"tubewright/ui/board"
	"tubewright/ui/photo"
)

// photos keeps the pictures of the open plan. Each file is read once, off the
// main goroutine.
type photos struct {
	byPath map[string]*loaded
}

type loaded struct {
	picture *board.Picture // nil: not read yet, or it cannot be
	w, h    int
	err     error
	done    bool
}

// photoPath is where a picture of the plan lies; "" when the plan has no file.
func (w *Window) photoPath(file string) string {
	if w.snapshot.Path == "" {
		return ""
	}
	return filepath.Join(filepath.Dir(w.snapshot.Path), filepath.FromSlash(file))
}

// photo gives a picture of the plan, and begins to read it when that has not
// been done; nil while it is read and when it cannot be.
func (w *Window) photo(file string) *loaded {
	path := w.photoPath(file)
	if path == "" {
		return nil
	}
	if w.photos.byPath == nil {
		w.photos.byPath = map[string]*loaded{}
	}
	if l := w.photos.byPath[path]; l != nil {
		return l
	}
	l := &loaded{}
	w.photos.byPath[path] = l
	w.options.Tools.Go(func() {
		read := readPhoto(path)
		w.options.Tools.Dispatch(func() {
			*l = read
			w.photosRead++
			w.showBoard()
			w.showPanels()
		})
	})
	return l
}

func readPhoto(path string) loaded {
	p, err := photo.Load(path)
	if err != nil {
		return loaded{err: err, done: true}
	}
	return loaded{picture: board.NewPicture(p.Image, p.W, p.H), w: p.W, h: p.H, done: true}
}

// whyNoPhotoOf says why a picture of the plan is not shown; "" when it is, or
// is being read.
func (w *Window) whyNoPhotoOf(file string) string {
	if l := w.photo(file); l != nil {
		return whyNoPhoto(l.err)
	}
	return "It is looked for beside the plan's file, and the plan has none yet: save it first."
}

// keepPhoto keeps a picture of the plan that has just been read.
func (w *Window) keepPhoto(file string, read loaded) {
	if w.photos.byPath == nil {
		w.photos.byPath = map[string]*loaded{}
	}
	w.photos.byPath[w.photoPath(file)] = &read
}

// forgetPhotos makes every picture be read again: another plan is open.
func (w *Window) forgetPhotos() { w.photos = photos{} }

// underlays are the pictures of the plan that can be shown, and the place of
// each among the plan's.
func (w *Window) underlays() (all []board.Underlay, index []int) {
	for i, p := range w.snapshot.Plan.Pictures {
		if l := w.photo(p.File); l != nil && l.picture != nil {
			all = append(all, board.Underlay{
				Picture: l.picture, Look: boardLook(p.Look), At: p.At, Scale: p.Scale, Fade: p.Fade, Locked: p.Locked,
			})
			index = append(index, i)
		}
	}
	return all, index
}
