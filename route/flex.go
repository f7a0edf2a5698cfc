package route

import (
	"math"
	"strings"
)

// finger is the side load with which a tube is pressed into line, N: what a
// finger gives and the ring of a socket bears for years (a guess).
const finger = 5

// springs is Young's modulus of what tubes are made of, N/mm² (handbook values,
// from memory: polymer data pages, copper and brass tube handbooks). Glass is left
// out: it is never pressed into line. So is what is not listed.
var springs = map[string]float64{
	"petg":    2_000,
	"acrylic": 3_000,
	"pmma":    3_000,
	"brass":   105_000,
	"copper":  117_000,
	"steel":   195_000,
}

// Flex is how far a tube of this developed length in mm yields when it is pressed
// into line, in mm and degrees: a beam held in both sockets, one of them moved
// aside or turned,
//
//	aside = F·L³/(12·E·I)    askew = F·L²/(8·E·I)    I = π/64·(OD⁴ − ID⁴)
//
// (beam tables, both ends fixed; the turn under the moment F·L/2 that goes with
// the load). PETG of 16/12 and 300 mm yields 2.6 mm and 0.73 degrees, copper of
// 15/13 a twentieth of a millimetre or so.
func (t Tube) Flex(length float64) Give {
	e := springs[strings.ToLower(t.Material)]
	i := math.Pi / 64 * (math.Pow(t.OD, 4) - math.Pow(t.ID, 4))
	if e == 0 || i <= 0 {
		return Give{}
	}
	return Give{
		Sideways: finger * math.Pow(length, 3) / (12 * e * i),
		Degrees:  finger * length * length / (8 * e * i) * 180 / math.Pi,
	}
}
