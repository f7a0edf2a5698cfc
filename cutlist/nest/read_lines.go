package nest

import (
	"errors"
	"fmt"
	"strings"
)

// all reads the lines, then what is said elsewhere. The units come first, since
// every length hangs on them.
func (d *reader) all(lines []span, said []Setting) {
	var flags []span
	for _, s := range said {
		flags = append(flags, span{s.Key + ":" + s.Value, place{0, 0, s.Value, s.Flag}})
	}
	d.units(flags)
	d.units(lines)
	d.per = d.order.Units.Per()
	for _, l := range flags {
		d.setting(l, ":")
	}
	d.overruled, d.at = d.at, map[string]place{}
	for _, l := range lines {
		d.line(l)
	}
}

// units looks for the line that names them.
func (d *reader) units(lines []span) {
	for _, l := range lines {
		key, value, ok := l.cut(":")
		if !ok || strings.ToLower(key.text) != "units" || d.order.Units != AnyUnit {
			continue
		}
		switch u := Units(strings.ToLower(value.text)); u {
		case Millimetres, Inches:
			d.order.Units = u
		default:
			d.tell(BadLine, value, fmt.Sprintf("%q is no unit", value.text), "Write mm or in.")
		}
	}
}

func (d *reader) line(l span) {
	if strings.Contains(l.text, ":") {
		d.setting(l, " ")
		return
	}
	if d.begun || strings.Contains(l.text, ",") {
		d.piece(l)
	} else {
		d.capacity(l)
	}
	d.begun = true
}

// capacity is the plain form's first line.
func (d *reader) capacity(l span) {
	d.bars = true
	length, err := parseSize(l.text, d.per, maxLength)
	if err != nil {
		d.unread = true
		d.tell(BadNumber, l, "bar length "+err.Error(), "Write the length of the bars alone on the first line, such as 500.")
		return
	}
	d.addStock(l, Bar{Length: length})
}

const pieceForm = "Write the length of a piece, a comma and how many are wanted, such as 120.5,3."

func (d *reader) piece(l span) {
	parts := l.split(",")
	if len(parts) != 2 {
		d.tell(BadLine, l, fmt.Sprintf("%s; expected 2: length,count", counted(len(parts), "value")), pieceForm)
		return
	}
	length, err := parseSize(parts[0].text, d.per, maxLength)
	if err != nil {
		d.tell(BadNumber, parts[0], "length "+err.Error(), pieceForm)
	}
	count, bad := d.count(parts[1], "count", pieceForm)
	if err == nil && bad == nil {
		d.addPiece(parts[0], Piece{length, count})
	}
}

// count reads how many; with too many it says what to do about that.
func (d *reader) count(s span, what, form string) (int, error) {
	n, err := parseCount(s.text)
	var many tooManyError
	switch {
	case errors.As(err, &many):
		d.tell(TooMany, s, what+" "+err.Error(), "Split the order into parts; equal parts are cut alike.")
	case err != nil:
		d.tell(BadNumber, s, what+" "+err.Error(), form)
	}
	return n, err
}

func (d *reader) addPiece(s span, p Piece) {
	if d.pieces += p.Count; d.pieces > maxPieces && !d.flooded {
		d.flooded = true
		d.tell(TooMany, s, fmt.Sprintf("with this line there are %d pieces; at most %d can be nested at once", d.pieces, maxPieces),
			"Split the order into parts.")
	}
	d.order.Job.Pieces = append(d.order.Job.Pieces, p)
	d.pieceAt = append(d.pieceAt, s)
}

// settingForms say how each setting is written, by key.
var settingForms = []struct{ key, form string }{
	{"stock", "Write the length of a bar to buy, its price and at most how many, such as stock: 500 7.40 4; - where there is no price."},
	{"offcut", "Write the length of a bar on hand and how many there are, such as offcut: 310 2."},
	{"kerf", "Write what a cut takes, such as kerf: 1."},
	{"keep", "Write the length from which a remnant is worth keeping, such as keep: 120."},
	{"units", "Write mm or in."},
}

func (d *reader) setting(l span, sep string) {
	name, value, _ := l.cut(":")
	key := strings.ToLower(name.text)
	form := ""
	for _, f := range settingForms {
		if f.key == key {
			form = f.form
		}
	}
	if form == "" {
		d.tell(UnknownKey, name, fmt.Sprintf("there is no setting %q", name.text), "Known are stock, offcut, kerf, keep and units.")
		return
	}
	parts := value.split(sep)
	switch key {
	case "stock":
		d.stock(value, parts, form)
	case "offcut":
		d.offcut(value, parts, form)
	default:
		d.single(key, name, value, form)
	}
}

// single is a setting that is said once.
func (d *reader) single(key string, name, value span, form string) {
	if before, twice := d.at[key]; twice {
		d.tell(Twice, name, fmt.Sprintf("%s is said twice; first in %s", key, before), "Keep one of the two.")
		return
	}
	d.at[key] = name.place
	if key == "units" {
		return
	}
	n, err := parseAmount(value.text, d.per, maxLength)
	if err != nil {
		d.tell(BadNumber, value, key+" "+strings.Replace(err.Error(), "above 0", "0 or more", 1), form)
		return
	}
	into := &d.order.Job.Kerf
	if key == "keep" {
		into = &d.order.Job.KeepOver
	}
	if _, over := d.overruled[key]; !over {
		*into = n
	}
}
