package sheet

import (
	"strconv"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/cutlist"
	"tubewright/cutlist/draw"
	"tubewright/route"
	"tubewright/route/check"
)

// letterSize is the size of a tube's letter on a look, smaller where many crowd.
func (s *scene) letterSize() float64 {
	if len(s.list.Tubes) > 15 {
		return 1.9
	}
	return 2.5
}

// letters marks each tube, near its middle where it is seen.
func (s *scene) letters(d *draw.Drawing, l *labels) {
	var marks []draw.Item
	for i, t := range s.list.Tubes {
		marks = append(marks, l.badge(t.Letter, s.letterSize(), ColourOf(t.Letter), s.spots(t, i+1))...)
		l.avoid = append(l.avoid, s.room(t)...)
	}
	for _, p := range s.parts {
		for _, q := range p.Ports {
			l.avoid = append(l.avoid, emptyFrame().with(s.view.on(q.Frame.At)).grown(portRadius*s.view.scale*0.6))
		}
	}
	d.Add(marks...)
}

// spots is where a tube's letter may stand: places that are seen from the
// middle outward, then hidden ones.
func (s *scene) spots(t cutlist.Tube, owner int) (spots []draw.Point) {
	var covered []draw.Point
	at, way := samples(t), line(t.Way.Formed.Pieces())
	for i := range at {
		k := len(at)/2 + (i+1)/2*(1-2*(i%2))
		if k >= len(at) || k < 0 {
			continue
		}
		p := way.at(at[k])
		if s.seen(p, t.Way.Formed.Tube.OD, owner) {
			spots = append(spots, s.view.on(p))
		} else {
			covered = append(covered, s.view.on(p))
		}
	}
	return append(spots, covered...)
}

// room is frames around the stretches of a tube.
func (s *scene) room(t cutlist.Tube) (room []frame) {
	f := t.Way.Formed
	for _, p := range f.Pieces() {
		one := emptyFrame()
		for i := range 5 {
			q, _ := p.At(p.Start + (p.End-p.Start)*float64(i)/4)
			one = one.with(s.view.on(q))
		}
		room = append(room, one.grown(f.Tube.OD/2*s.view.scale))
	}
	return room
}

// marks numbers the errors and warnings that have a place, as the findings'
// table does; notes would only crowd the picture.
func (s *scene) marks(d *draw.Drawing, l *labels) {
	for i, f := range s.list.Findings {
		if !f.Placed || f.Severity == check.Note {
			continue
		}
		at := s.view.on(mgl64.Vec3(f.At))
		dot := draw.Disc(at, 0.7, s.theme.Alarm, pen(0.2, s.theme.Paper))
		spots := nearby(at, 3)
		d.Add(dot)
		d.Add(l.badge("!"+strconv.Itoa(i+1), 0.9*s.letterSize(), s.theme.Alarm, spots[:min(len(spots), 24)])...)
	}
}

// nameSizes are the sizes a part's name is tried at.
var nameSizes = [...]float64{2.5, 2.2, 1.9}

// names writes each part's name on it, or its number in the key.
func (s *scene) names(d *draw.Drawing, l *labels) {
	for i, p := range s.parts {
		f := s.partFrame(p)
		for n, size := range nameSizes {
			if items, ok := l.text(s.label(p.Part.Name, size), s.onTop(i+1, s.within(f, p.Part.Name, size))); ok {
				d.Add(items...)
				break
			}
			if n == len(nameSizes)-1 {
				number := strconv.Itoa(i + 1)
				if items, ok := l.text(s.label(number, 2.2), s.onTop(i+1, over(f.grown(3), draw.TextWidth(number, 2.2, false), 2.2))); ok {
					d.Add(items...)
				}
			}
		}
	}
}

// onTop is those of some spots where a part is not covered; in a look along an
// axis all of them, for there a covered part still shows around its cover.
func (s *scene) onTop(part int, spots []draw.Point) (free []draw.Point) {
	if !s.view.oblique() {
		return spots
	}
	for _, at := range spots {
		for i := len(s.all) - 1; i >= 0; i-- {
			if p := &s.all[i]; p.box.has(at) && inside(p.outline, at) {
				if p.part == part {
					free = append(free, at)
				}
				break
			}
		}
	}
	return free
}

func (s *scene) label(text string, size float64) draw.Text {
	return draw.Text{Text: text, Size: size, Align: draw.Centre, Colour: s.theme.Ink}
}

// within is spots for a name on a part; none when it is wider than the part.
func (s *scene) within(f frame, name string, size float64) []draw.Point {
	w := draw.TextWidth(name, size, false) + 1
	if w > f.w() {
		return nil
	}
	return over(f, w, size)
}

func (s *scene) partFrame(p route.Placed) frame {
	f := emptyFrame()
	for _, one := range s.view.solids(p.Solids, s.theme.Part, s.theme.Part, s.theme.Edge) {
		f = f.with(one.outline...)
	}
	if len(p.Solids) == 0 {
		at := s.view.on(p.Part.At)
		f = f.with(at).grown(2)
	}
	return f
}
