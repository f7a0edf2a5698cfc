package trial

import (
	"errors"
	"fmt"

	"tubewright/bends"
)

// NoBendsError says that there is nothing to fit.
type NoBendsError struct{}

func (*NoBendsError) Error() string {
	return "there is no test bend: bend one piece to 90 degrees and measure it"
}

// NumberError says that a reading, or a standard deviation, is no size.
type NumberError struct {
	Bend        int // counts from 0; −1: of no bend
	Field       string
	Value       float64
	Least, Most float64
}

func (e *NumberError) Error() string {
	return fmt.Sprintf("%s%s is %v: it must be a number above %g, at most %g", ofBend(e.Bend), e.Field, e.Value, e.Least, e.Most)
}

func ofBend(i int) string {
	if i < 0 {
		return ""
	}
	return fmt.Sprintf("test bend %d: ", i+1)
}

// MissingError says that the length between the points the legs were measured
// from is not given.
type MissingError struct {
	Bend int
	From From
}

func (e *MissingError) Error() string {
	what := "the length of the piece before bending"
	if e.From == Marks {
		what = "where the two marks were"
	}
	return fmt.Sprintf("test bend %d: its legs were measured from the %s: give %s", e.Bend+1, e.From, what)
}

// WordError says that From or To is none of the words there are.
type WordError struct {
	Bend int
	Word string
}

func (e *WordError) Error() string {
	return fmt.Sprintf("test bend %d: there is no %q: legs run from %s or %s, to %s or %s", e.Bend+1, e.Word, Ends, Marks, Back, Centre)
}

// MarksError says that marks are out of order or not on the piece.
type MarksError struct {
	Bend  int
	Marks [2]float64
	Blank float64 // 0: not given
}

func (e *MarksError) Error() string {
	s := fmt.Sprintf("test bend %d: marks at %g and %g mm", e.Bend+1, e.Marks[0], e.Marks[1])
	if e.Marks[1] > e.Marks[0] {
		return s + fmt.Sprintf(" do not both lie on a piece of %g mm: measure both from the same end", e.Blank)
	}
	return s + " are out of order: give the nearer one first, both from the same end"
}

// BentBackError says that a bend keeps a larger turn than it had on the former.
type BentBackError struct {
	Bend          int
	Former, After float64 // degrees
}

func (e *BentBackError) Error() string {
	return fmt.Sprintf("test bend %d: it keeps %.2f degrees but was only formed to %.2f: a bend opens when it comes off; check that both are turns (0 is straight) and stand in their own fields",
		e.Bend+1, e.After, e.Former)
}

// OpenedError says that a bend opened beyond belief.
type OpenedError struct {
	Bend          int
	Former, After float64 // degrees
	Most          float64 // degrees
}

func (e *OpenedError) Error() string {
	return fmt.Sprintf("test bend %d: it opened by %.2f degrees, from %.2f to %.2f, and more than %.2f is no springback: give the turn (0 is straight), not the angle between the legs",
		e.Bend+1, e.Former-e.After, e.Former, e.After, e.Most)
}

// RadiusError says that the legs make a radius no tube can have.
type RadiusError struct {
	Bend   int     // −1: of all bends together
	Radius float64 // mm; 0 or less: the legs are no longer than the piece
	Least  float64 // half the outside diameter
	Hint   string  // what would explain it; "" where nothing does
}

func (e *RadiusError) Error() string {
	return fmt.Sprintf("%sthe legs give a radius of %.2f mm, and it must be more than half the tube, %.2f: marks or legs are mixed up%s",
		ofBend(e.Bend), e.Radius, e.Least, e.Hint)
}

// LegError says that a leg is shorter than the setback of its bend: the point it
// was measured from lies in the bend.
type LegError struct {
	Bend, Leg     int     // count from 0
	Have, Setback float64 // mm, both to the centrelines
}

func (e *LegError) Error() string {
	return fmt.Sprintf("test bend %d: leg %d is %.2f mm to the centrelines and its setback alone is %.2f: the point it was measured from lies in the bend; mark at least %.2f mm farther out, or check the leg",
		e.Bend+1, e.Leg+1, e.Have, e.Setback, e.Setback-e.Have)
}

// ResidualError says that a test bend does not go with the others.
type ResidualError struct {
	Bend  int
	Off   float64 // mm its legs, or degrees its springback, are off the fit of all
	Most  float64 // that readings like these allow
	Unit  string  // "mm" or "degrees"
	Alone float64 // radius in mm, or springback in degrees, that this bend alone gives
	Hint  string
}

func (e *ResidualError) Error() string {
	what := "marks or legs are mixed up"
	if e.Unit != unitMM {
		what = "angles are mixed up"
	}
	return fmt.Sprintf("test bend %d: it is %.2f %s off what all bends say, and %.2f is the most such readings allow (alone it gives %.2f %s): %s%s",
		e.Bend+1, e.Off, e.Unit, e.Most, e.Alone, e.Unit, what, e.Hint)
}

// Which gives the test bend an error of this package is about, from 0; −1 where
// it is about none or about all.
func Which(err error) int {
	var of interface{ which() int }
	if errors.As(err, &of) {
		return of.which()
	}
	return -1
}

func (e *NumberError) which() int   { return e.Bend }
func (e *MissingError) which() int  { return e.Bend }
func (e *WordError) which() int     { return e.Bend }
func (e *MarksError) which() int    { return e.Bend }
func (e *BentBackError) which() int { return e.Bend }
func (e *OpenedError) which() int   { return e.Bend }
func (e *RadiusError) which() int   { return e.Bend }
func (e *LegError) which() int      { return e.Bend }
func (e *ResidualError) which() int { return e.Bend }

const (
	unitMM      = "mm"
	unitDegrees = "degrees"
)

const (
	// mostLength is the longest reading taken, mm: longer than any bar.
	mostLength = 1e5
	// mostOpened and mostOpenedShare are the most a bend may open, in degrees and
	// as a part of the turn on the former. Spring steel opens by a tenth; an angle
	// between the legs typed for a turn opens by much more.
	mostOpened      = 5
	mostOpenedShare = 0.3
	// beyond is how many standard deviations no honest reading is off: five in a
	// row of a million tubes, yet a leg taken to the wrong side of a 16 mm tube is
	// 8 mm off, nine of them.
	beyond = 5
	// backwards is how many standard deviations a bend may seem to have closed:
	// scatter, where the springback is small.
	backwards = 3
)

// judged refuses what means nothing before anything is worked out.
func judged(od float64, list []Bend, s Sigmas) error {
	if len(list) == 0 {
		return &NoBendsError{}
	}
	if err := within(-1, "the outside diameter", od, mostLength); err != nil {
		return err
	}
	for _, v := range [...]float64{s.Length, s.Angle, s.Turn} {
		if err := within(-1, "a standard deviation", v, mostLength); err != nil {
			return err
		}
	}
	for i, b := range list {
		if err := b.judged(i, s); err != nil {
			return err
		}
	}
	return nil
}

func within(bend int, field string, v, most float64) error {
	if v > 0 && v <= most {
		return nil
	}
	return &NumberError{bend, field, v, 0, most}
}

// judged refuses one bend.
func (b Bend) judged(i int, s Sigmas) error {
	for _, f := range [...]struct {
		name  string
		value float64
		most  float64
	}{
		{"the turn on the former", b.Former, 180},
		{"the turn it keeps", b.After, bends.MostTurn},
		{"the first leg", b.Legs[0], mostLength},
		{"the second leg", b.Legs[1], mostLength},
	} {
		if err := within(i, f.name, f.value, f.most); err != nil {
			return err
		}
	}
	if err := b.judgedPoints(i); err != nil {
		return err
	}
	opened := b.Former - b.After
	switch most := max(mostOpened, mostOpenedShare*b.Former); {
	case opened < -backwards*hypot(s.Angle, s.Turn):
		return &BentBackError{i, b.Former, b.After}
	case opened > most:
		return &OpenedError{i, b.Former, b.After, most}
	}
	return nil
}

// judgedPoints refuses marks and a blank that are none.
func (b Bend) judgedPoints(i int) error {
	switch b.From {
	case "", Ends, Marks:
	default:
		return &WordError{i, string(b.From)}
	}
	switch b.To {
	case "", Back, Centre:
	default:
		return &WordError{i, string(b.To)}
	}
	for _, v := range [...]float64{b.Blank, b.Marks[0], b.Marks[1]} {
		if !(v >= 0 && v <= mostLength) {
			return &NumberError{i, "a mark or the piece's length", v, 0, mostLength}
		}
	}
	if b.Marks[0] > b.Marks[1] || b.Blank > 0 && b.Marks[1] > b.Blank {
		return &MarksError{i, b.Marks, b.Blank}
	}
	if b.length() == 0 {
		return &MissingError{i, b.from()}
	}
	return nil
}

func (b Bend) from() From {
	if b.From == "" {
		return Ends
	}
	return b.From
}

// length is of the centreline between the points measured from, mm; 0 where it
// is not given.
func (b Bend) length() float64 {
	if b.from() == Marks {
		return b.Marks[1] - b.Marks[0]
	}
	return b.Blank
}

// toBack reports whether the legs are to the back of the bend.
func (b Bend) toBack() bool { return b.To != Centre }
