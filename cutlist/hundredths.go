package cutlist

import (
	"math"
	"strconv"
)

// hundredths is a length in mm or a sum of money as a whole number of
// hundredths: what is sawn and paid is counted in these.
func hundredths(v float64) int { return int(math.Round(v * 100)) }

// whole turns hundredths back.
func whole(h int) float64 { return float64(h) / 100 }

// plain writes a number without needless zeros: 500, 609.6.
func plain(v float64) string { return strconv.FormatFloat(whole(hundredths(v)), 'f', -1, 64) }
