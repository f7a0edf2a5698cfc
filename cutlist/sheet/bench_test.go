package sheet_test

import (
	"io"
	"testing"

	"tubewright/cutlist/sheet"
)

func BenchmarkPDFStress(b *testing.B) {
	l := stressList(b)
	for b.Loop() {
		if err := sheet.PDF(io.Discard, l, sheet.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
