package sheet

import (
	"fmt"
	"math"
	"strconv"

	"tubewright/cutlist/draw"
	"tubewright/route/check"
)

// overview is the first page: what the plan is, the machine in three looks,
// and the key to letters and numbers.
func (b *book) overview() {
	b.page("Overview", "Overview")
	for _, line := range wrapped(b.list.Plan.Name, 6, true, b.width(), 3) {
		b.y += 6 * 1.2
		b.write(margin, b.y-1.8, line, 6, true, draw.Left, b.theme.Ink)
	}
	b.para(b.summary())
	b.para(b.standing())
	b.y += 1
	b.looks()
	b.parallel()
}

// parallel is a page with the machine from its corner.
func (b *book) parallel() {
	b.page("Parallel view", "Parallel view")
	s := newScene(b.list, Parallel, b.theme)
	scale, said := roundScale(s.fit(b.width(), b.left()-12))
	b.faint(fmt.Sprintf("Without perspective, %s along lines that face you squarely; lines that do not are drawn shorter. Letters and numbers as on the page before.", said))
	b.y += 4.5
	w, h := s.size(scale)
	b.look(Parallel, s, scale, margin+(b.width()-w)/2, b.y)
	b.y += h
}

// summary counts what there is to do.
func (b *book) summary() string {
	l := b.list
	bent := 0
	for _, t := range l.Tubes {
		if len(t.Bench.Bends) > 0 {
			bent++
		}
	}
	said := fmt.Sprintf("%s, %s bent; %s; %s to buy.", count(len(l.Tubes), "tube"), counted(bent, "none"),
		count(len(l.Bars), "bar"), count(b.toBuy(), "line"))
	if l.Plan.Build > 1 {
		said += fmt.Sprintf(" For %d machines alike.", l.Plan.Build)
	}
	return said
}

// toBuy is how many lines of the buying list ask for something.
func (b *book) toBuy() (n int) {
	for _, it := range b.list.Buy {
		if it.Buy > 0 {
			n++
		}
	}
	return n
}

// standing says whether one may cut.
func (b *book) standing() string {
	grave := 0
	for _, f := range b.list.Findings {
		if f.Severity == check.Error {
			grave++
		}
	}
	switch {
	case grave > 0:
		return fmt.Sprintf("Do not cut yet: %s to settle first.", count(grave, "error"))
	case b.list.Draft:
		return "Do not cut yet: measure what is only typical first."
	}
	return "No error is open and every number is measured or from a drawing."
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

func counted(n int, none string) string {
	if n == 0 {
		return none
	}
	return strconv.Itoa(n)
}

// looksGap is the white between two looks, mm.
const looksGap = 6.0

// looks draws the three looks at one scale: side and front beside each other,
// from above below, as the axes line up.
func (b *book) looks() {
	var scenes [len(looksInOrder)]*scene
	for i, k := range looksInOrder {
		scenes[i] = newScene(b.list, k, b.theme)
	}
	side, above, front := scenes[0], scenes[1], scenes[2]
	const title, furniture = 4.5, 4 * air
	room := b.left() - 2*title - 2*looksGap - 34 // 34: the head of the key
	fit := math.Min((b.width()-looksGap-furniture)/(math.Max(side.bounds.w(), above.bounds.w())+front.bounds.w()),
		(room-furniture)/(math.Max(side.bounds.h(), front.bounds.h())+above.bounds.h()))
	scale, said := roundScale(fit)
	b.faint(fmt.Sprintf("Case %s wide, %s high, %s deep. All three looks: %s. Dashed: a tube behind something.",
		b.units.Text(b.list.Plan.Case[0]), b.units.Text(b.list.Plan.Case[1]), b.units.TextUnit(b.list.Plan.Case[2]), said))
	y := b.y + title
	w, h := side.size(scale)
	wAbove, hAbove := above.size(scale)
	_, hFront := front.size(scale)
	b.look(Side, side, scale, margin, y)
	b.look(Front, front, scale, margin+math.Max(w, wAbove)+looksGap, y)
	y += math.Max(h, hFront) + title + 1
	b.look(Above, above, scale, margin, y)
	b.y = y + hAbove + 2
	b.key(frame{draw.Point{X: margin + wAbove + looksGap, Y: y - title}, draw.Point{X: b.w - margin, Y: b.y}})
}

func (b *book) look(k Look, s *scene, scale, x, y float64) {
	w, _ := s.size(scale)
	title := k.String() + " (" + k.axes() + ")"
	size := shrunk(title, fineSize, 1.6, true, math.Max(w, 30)-2*air)
	b.write(x+air, y, title, size, true, draw.Left, b.theme.Ink)
	b.pages[len(b.pages)-1].Place(s.draw(scale), draw.Point{X: x, Y: y})
}

// key lists letters with their runs and numbers with their parts: in the room
// beside the lowest look when it fits, else below.
func (b *book) key(beside frame) {
	keys := append(b.tubeKeys(), b.partKeys()...)
	if len(b.list.Tubes) == 0 {
		b.para("There is no tube to cut: no run of the plan has a way yet.")
	}
	if h := b.keyHeight(keys, beside.w()); beside.w() >= 45 && h < beside.h() {
		below := b.y
		b.y = beside.lo.Y
		for _, k := range keys {
			b.keyRow([]keyed{k}, beside.lo.X, beside.w(), keySize)
		}
		b.y = below
		return
	}
	b.heading("Key", bodySize+0.4, 12)
	b.columns(b.tubeKeys())
	b.columns(b.partKeys())
}

// keySize is the size of the key's type, mm.
const keySize = fineSize + 0.1

// keyHeight is how high the key is in one column.
func (b *book) keyHeight(keys []keyed, w float64) (h float64) {
	for _, k := range keys {
		h += float64(len(wrapped(k.text, keySize, false, w-8, 4)))*keySize*leading + 0.7
	}
	return h
}

// keyed is one entry of the key.
type keyed struct{ letter, text string }

func (b *book) tubeKeys() (keys []keyed) {
	for _, t := range b.list.Tubes {
		keys = append(keys, keyed{t.Letter, t.Run})
	}
	return keys
}

func (b *book) partKeys() (keys []keyed) {
	for i, p := range b.list.Plan.Parts {
		name := p.Name
		if p.Kind != "" && p.Kind != p.Name {
			name += " (" + p.Kind + ")"
		}
		keys = append(keys, keyed{"", strconv.Itoa(i+1) + "  " + name})
	}
	return keys
}

// columns sets the key in as many columns as its longest entry lets it.
func (b *book) columns(keys []keyed) {
	if len(keys) == 0 {
		return
	}
	widest := 0.0
	for _, k := range keys {
		widest = math.Max(widest, draw.TextWidth(k.text, keySize, false)+8)
	}
	n := max(1, min(int(b.width()/math.Max(widest, 1)), 4, len(keys)))
	w := b.width() / float64(n)
	for i := 0; i < len(keys); i += n {
		b.keyRow(keys[i:min(i+n, len(keys))], margin, w, keySize)
	}
	b.y += 1.5
}

func (b *book) keyRow(row []keyed, left, w, size float64) {
	most := 1
	lines := make([][]string, len(row))
	for i, k := range row {
		lines[i] = wrapped(k.text, size, false, w-8, 4)
		most = max(most, len(lines[i]))
	}
	h := float64(most)*size*leading + 0.7
	b.need(h)
	for i, k := range row {
		x := left + float64(i)*w
		if k.letter != "" {
			b.add(disc(k.letter, draw.Point{X: x + 2.6, Y: b.y + 0.65*size*leading}, size*0.9, b.theme)...)
		}
		for n, line := range lines[i] {
			b.write(x+6, b.y+(float64(n)+0.78)*size*leading, line, size, false, draw.Left, b.theme.Ink)
		}
	}
	b.y += h
}
