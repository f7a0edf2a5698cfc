package planfile_test

import (
	"strings"
	"testing"

	"tubewright/route/planfile"
)

// A try loses the key that stands behind its dash, or gains one before it; the
// rest of the file and its comments stay.
func TestTheFirstKeyOfATryCanGoAndCome(t *testing.T) {
	const head = `format: 1 # kept
name: a
case: {size: [430, 200, 400]}
tube: petg-16-12
parts:
  pump: {at: [0, 0, 0], ports: {out: {at: [0, 0, 0], facing: +x, thread: G1/4}}} # kept
  plate: {at: [0, 0, 0], ports: {in: {at: [90, 0, 0], facing: -x, thread: G1/4}}}
runs:
  r:
    from: pump.out
    to: plate.in
    made:
`
	long, short := head+"      - cut: 12\n        fits: no\n        wrong: long\n", head+"      - fits: no\n        wrong: long\n"
	for _, tt := range [][2]string{{long, short}, {short, long}} {
		plan, _, err := planfile.Read("new", []byte(tt[1]))
		if err != nil {
			t.Fatal(err)
		}
		_, src, err := planfile.Read("old", []byte(tt[0]))
		if err != nil {
			t.Fatal(err)
		}
		text, report, err := planfile.Write(plan, src)
		if err != nil || string(text) != tt[1] || report.CommentsLost {
			t.Errorf("%v, %q:\n%s\nwant\n%s", err, report.Message, text, strings.TrimSpace(tt[1]))
		}
	}
}
