package bends_test

import (
	"errors"
	"fmt"

	"github.com/go-gl/mathgl/mgl64"

	"tubewright/bends"
)

// plastic is the tube of the plan format's worked example.
var plastic = bends.Tube{
	OD: 16, ID: 12, Radius: 32, LeastRadius: 28, StraightBetween: 20, StraightEnd: 26,
	Springback: bends.Springback{Degrees: 1, Percent: 1.5}, Trim: 15,
}

// sockets leave half a millimetre at each end and may take 3 mm less.
var sockets = bends.Ends{SeatGap: [2]float64{0.5, 0.5}, Play: [2]float64{3, 3}}

func ExampleForm() {
	tube, err := bends.Form(plastic, bends.Path{
		Corners: []mgl64.Vec3{{106, 100, 50}, {250, 100, 50}, {250, 244, 50}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	cut := tube.Cut(sockets, 2)
	bend := tube.Bench(sockets).Bends[0]
	fmt.Printf("developed %.3f\n", tube.Developed)
	fmt.Printf("aim %.2f, from %.2f to %.2f, blank %.2f\n", cut.Aim, cut.Shortest, cut.Longest, cut.Blank)
	fmt.Printf("marks %.2f %.2f %.2f\n", bend.FromA.Start, bend.FromA.Middle, bend.FromA.End)
	fmt.Printf("form to %.2f, heat %.2f\n", bend.FormTo, bend.Heat)
	// Output:
	// developed 274.265
	// aim 273.27, from 268.27 to 274.27, blank 305.27
	// marks 111.50 136.63 161.77
	// form to 92.35, heat 82.27
}

func ExampleForm_refused() {
	_, err := bends.Form(plastic, bends.Path{
		Corners: []mgl64.Vec3{{0, 0, 0}, {50, 0, 0}, {50, 79, 0}, {150, 79, 0}},
	})
	fmt.Println(err)
	var short *bends.ShortStraightError
	fmt.Println(errors.As(err, &short), short.Straight, short.Shortfall())
	// Output:
	// straight 1 is 18.00 mm long, an end needs 26.00 mm for insertion, collar and grip: 8.00 mm short
	// straight 2 is 15.00 mm long, the former needs 20.00 mm between two bends: 5.00 mm short
	// true 0 8
}

func ExampleFormed_Table() {
	tube, err := bends.Form(bends.Tube{OD: 16, ID: 12, Radius: 30}, bends.Path{
		Corners: []mgl64.Vec3{{0, 0, 0}, {120, 0, 0}, {120, 80, 0}, {120, 80, 60}, {200, 80, 60}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	table := tube.Table()
	for _, row := range table.Rows {
		fmt.Printf("feed %.1f, roll %.1f, turn %.1f\n", row.Length, row.Roll, row.Turn)
	}
	fmt.Printf("then %.1f\n", table.Last)
	// Output:
	// feed 90.0, roll 0.0, turn 90.0
	// feed 20.0, roll 90.0, turn 90.0
	// feed 0.0, roll 90.0, turn 90.0
	// then 50.0
}

func ExampleCorners() {
	u := bends.Table{Rows: []bends.Row{{Length: 70, Turn: 90, Radius: 30}, {Length: 40, Turn: 90, Radius: 30}}, Last: 70}
	for _, c := range bends.Corners(u) {
		fmt.Printf("%.1f %.1f %.1f\n", c[0], c[1]+0, c[2])
	}
	// Output:
	// 0.0 0.0 0.0
	// 100.0 0.0 0.0
	// 100.0 100.0 0.0
	// 0.0 100.0 0.0
}
