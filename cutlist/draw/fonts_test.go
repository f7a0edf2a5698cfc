package draw_test

import (
	"math"
	"testing"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"

	"tubewright/cutlist/draw"
)

// The letters of the alphabets in use: Unicode's blocks Latin-1, Latin Extended-A,
// Greek (monotonic) and Cyrillic (Russian, Ukrainian, Serbian, Belarusian).
const letters = "ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõöøùúûüýþÿ" +
	"ĀāĂăĄąĆćČčĎďĐđĒēĖėĘęĚěĞğĢģĪīĮįİıĶķĹĺĻļĽľŁłŃńŅņŇňŐőŒœŔŕŘřŚśŞşŠšŢţŤťŪūŮůŰűŲųŹźŻżŽž" +
	"ΆΈΉΊΌΎΏΐΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩΪΫάέήίΰαβγδεζηθικλμνξοπρςστυφχψωϊϋόύώ" +
	"ЁЂЃЄЅІЇЈЉЊЋЌЎЏАБВГДЕЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯабвгдежзийклмнопрстуфхцчшщъыьэюяёђѓєѕіїјљњћќўџҐґ" +
	"°×±–—…·→←≤≥≈µ½¼€£□"

func TestFontsHoldTheAlphabets(t *testing.T) {
	if got := draw.Writable(letters); got != letters {
		t.Errorf("some letters are missing:\n%s\n%s", letters, got)
	}
}

func TestWritable(t *testing.T) {
	tests := []struct{ name, in, want string }{
		{"plain", "pump to plate", "pump to plate"},
		{"broken bytes", "a\xffb", "a\ufffdb"},
		{"beyond the basic plane", "a😀b", "a□b"},
		{"lines and tabs", "a\nb\tc", "a b c"},
		{"narrow and fixed spaces", "1\u202f000\u00a0mm", "1 000 mm"},
		{"control characters", "a\x00\x1bb\u200b", "ab"},
	}
	for _, tt := range tests {
		if got := draw.Writable(tt.in); got != tt.want {
			t.Errorf("%s: Writable(%q) = %q, want %q", tt.name, tt.in, got, tt.want)
		}
	}
}

// The width is checked by two other readers of the same fonts.
func TestTextWidthAgreesWithOthers(t *testing.T) {
	text := "Wärme Ёж Ωμέγα 0123.4 mm → fi AVAVA"
	for _, bold := range []bool{false, true} {
		style, ttf := "", goregular.TTF
		if bold {
			style, ttf = "B", gobold.TTF
		}
		f := fpdf.New("P", "mm", "A4", "")
		f.AddUTF8FontFromBytes("go", style, ttf)
		f.SetFont("go", style, 10/25.4*72)
		got, want := draw.TextWidth(text, 10, bold), f.GetStringWidth(text)
		if math.Abs(got-want) > 0.005*want {
			t.Errorf("bold %v: %v mm, the PDF library says %v", bold, got, want)
		}
		parsed, err := opentype.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: 1000, DPI: 72, Hinting: font.HintingNone})
		if err != nil {
			t.Fatal(err)
		}
		if want := float64(font.MeasureString(face, "0123.4")) / 64 / 100; math.Abs(draw.TextWidth("0123.4", 10, bold)-want) > 0.01 {
			t.Errorf("bold %v: %v mm, opentype says %v", bold, draw.TextWidth("0123.4", 10, bold), want)
		}
	}
}

func TestTextWidthGrowsWithSize(t *testing.T) {
	if one, two := draw.TextWidth("bend", 3, false), draw.TextWidth("bend", 6, false); math.Abs(two-2*one) > 1e-9 {
		t.Errorf("twice the size is %v wide, want %v", two, 2*one)
	}
	if w := draw.TextWidth("", 3, true); w != 0 {
		t.Errorf("no text is %v wide", w)
	}
}
