package measure

import (
	"slices"

	"tubewright/route"
	"tubewright/route/survey"
)

// The keys of numbers, as plan files name them. Ports and places take theirs
// from package survey's walls.
const (
	Stop         Key = "stop"
	Full         Key = "insertion.full"
	Least        Key = "insertion.least"
	CollarOD     Key = "collar.od"
	CollarLength Key = "collar.length"
	Length       Key = "length"
	BodyOD       Key = "body.od"
	Sideways     Key = "sideways"
	LegIn        Key = "legs.in"
	LegOut       Key = "legs.out"
	Turn         Key = "turn"
	SideLeg      Key = "side"
	OD           Key = "od"
	ID           Key = "id"
	Radius       Key = "radius"
	SpringDeg    Key = "springback.degrees"
	SpringPart   Key = "springback.percent"
	Between      Key = "straight_between"
	AtEnd        Key = "straight_end"
	Trim         Key = "trim"
	X            Key = "x"
	Y            Key = "y"
	Z            Key = "z"
)

// Sketch names the drawing of how a number is measured.
type Sketch string

// The drawings, one for each way of holding the tool.
const (
	SketchStop      Sketch = "socket-stop"
	SketchInsertion Sketch = "insertion"
	SketchCollar    Sketch = "collar"
	SketchLength    Sketch = "length"
	SketchOffset    Sketch = "offset"
	SketchElbow     Sketch = "elbow"
	SketchTee       Sketch = "tee"
	SketchTube      Sketch = "tube-ends"
	SketchFormer    Sketch = "former"
	SketchSpring    Sketch = "springback"
	SketchStraights Sketch = "straights"
	SketchTrim      Sketch = "trim"
	SketchPort      Sketch = "port"
)

// Sketches lists all drawings.
func Sketches() []Sketch {
	return []Sketch{
		SketchStop, SketchInsertion, SketchCollar, SketchLength, SketchOffset, SketchElbow, SketchTee,
		SketchTube, SketchFormer, SketchSpring, SketchStraights, SketchTrim, SketchPort,
	}
}

const screwed = "Screw it into a port until its seal seats: every length counts from the port's face."

func mm(key Key, name string, value float64, sketch Sketch, how string) Number {
	return Number{Key: key, Name: name, Value: value, Unit: "mm", Sketch: sketch, How: how}
}

func fitting(f route.Fitting) Thing {
	t := Thing{Of: Fitting, Name: f.Name, Kind: f.Kind, Known: f.KnownFrom, Before: screwed}
	body := mm(BodyOD, "outside of the body", f.Body, SketchLength, "Close the outside jaws over the widest part of the body, twice at right angles.")
	switch f.Kind {
	case route.Socket:
		t.Before += " Have a scrap of the tube with one end square, deburred and chamfered."
		t.Numbers = socketNumbers(f)
	case route.Offset:
		t.Numbers = []Number{
			mm(Length, "length", f.Length, SketchOffset, "Stand the depth rod's foot on its outer face and run the rod down to the port's face, or take the overall height and subtract what stands below the face."),
			mm(Sideways, "sideways", f.Sideways, SketchOffset, "Outside jaws from the far side of the inlet's body to the far side of the outlet's; take off half of both diameters."),
			body,
		}
	case route.Elbow:
		t.Numbers = []Number{
			mm(LegIn, "first leg", f.Legs[0], SketchElbow, "Depth rod from the far side of the outlet's body down to the port's face; take off half of the body's diameter."),
			mm(LegOut, "second leg", f.Legs[1], SketchElbow, "Outside jaws from the far side of the inlet's body to the outlet's face; take off half of the body's diameter."),
			{Key: Turn, Name: "turn", Value: f.Turn, Unit: "deg", Sketch: SketchElbow, How: "Hold a protractor along both legs: the turn is how far the way leaves the straight, 90 for a right angle."},
			body,
		}
	case route.Tee:
		t.Numbers = []Number{
			lengthOf(f),
			mm(SideLeg, "side", f.Side, SketchTee, "Outside jaws from the far side of the body to the face of the side port; take off half of the body's diameter."),
			body,
		}
	case route.Coupler:
		t.Numbers = []Number{
			lengthOf(f),
			mm(CollarOD, "collar diameter", f.Collar.OD, SketchCollar, "Outside jaws over the widest part of the collar, done up hand-tight, twice at right angles."),
			mm(CollarLength, "collar length", f.Collar.Length, SketchCollar, "Outside jaws from the collar's outer face to where it ends on the body."),
			body,
		}
	case route.Extender, route.Valve, route.Plug:
		t.Numbers = []Number{lengthOf(f), body}
	}
	return t
}

func lengthOf(f route.Fitting) Number {
	return mm(Length, "length", f.Length, SketchLength, "Stand the depth rod's foot on its outer face and run the rod down to the port's face beside it; the thread in the port does not count.")
}

func socketNumbers(f route.Fitting) []Number {
	return []Number{
		mm(Stop, "stop", f.Stop, SketchStop, "Tube out: depth rod from the collar's outer face down to the shoulder the tube's end rests on. Then the same rod beside the collar down to the port's face. The stop is the second less the first."),
		mm(Full, "full insertion", f.Insertion.Full, SketchInsertion, "Push the scrap fully home, mark it where it enters the collar, pull it out: outside jaws from its end to the mark."),
		mm(Least, "least safe insertion", f.Insertion.Least, SketchInsertion, "From the maker's drawing where there is one. Else: depth rod from the collar's outer face to the far side of the innermost seal, and 2 mm more. Never guess low: this is what keeps coolant in."),
		mm(CollarOD, "collar diameter", f.Collar.OD, SketchCollar, "Outside jaws over the widest part of the collar, done up hand-tight, twice at right angles."),
		mm(CollarLength, "collar length", f.Collar.Length, SketchCollar, "Depth rod beside the collar, from its outer face down to the port's face."),
	}
}

func tube(t route.Tube) Thing {
	thing := Thing{Of: Tube, Name: t.Name, Known: t.KnownFrom, Numbers: []Number{
		mm(OD, "outside diameter", t.OD, SketchTube, "Outside jaws at a freshly cut end, twice at right angles; take the larger."),
		mm(ID, "inside diameter", t.ID, SketchTube, "Inside jaws in a deburred end, twice at right angles; take the smaller."),
	}}
	if t.Radius == 0 {
		return thing
	}
	thing.Before = "Bend test pieces on the former in use, as you will bend the tubes: one of 45° and one of 90° by the former's scale. Let them cool on it."
	thing.Numbers = append(thing.Numbers,
		mm(Radius, "centreline radius", t.Radius, SketchFormer, "Outside jaws across the former's groove floor through its middle: half of that, and half of the tube's diameter more. Or measure a bent piece: from the outside of one leg to the back of the bend's end, less the tube's radius."),
		Number{Key: SpringDeg, Name: "springback, fixed part", Value: t.Springback.Degrees, Unit: "deg", Sketch: SketchSpring, How: "Measure how far each test bend opens when it comes off: o45 and o90. The fixed part is 2 × o45 − o90."},
		Number{Key: SpringPart, Name: "springback, part of the turn", Value: t.Springback.Percent, Unit: "%", Sketch: SketchSpring, How: "From the same two bends: 100 × (o90 − o45) / 45."},
		mm(Between, "least straight between bends", t.StraightBetween, SketchStraights, "Bend two bends as near to each other as former and grip allow: steel rule along the straight from the end of one to the start of the next."),
		mm(AtEnd, "least straight at an end", t.StraightEnd, SketchStraights, "Bend as near to an end as former and grip allow, and see that the straight still goes home through the collar: steel rule from the end to the start of the bend."),
		mm(Trim, "trim", t.Trim, SketchTrim, "What you leave on each end for gripping and cut off after bending: your own choice, 10 mm or more (common practice)."),
	)
	return thing
}

// bendsOnly reports whether a number of a tube matters only where it is bent.
func bendsOnly(k Key) bool {
	return slices.Contains([]Key{Radius, SpringDeg, SpringPart, Between, AtEnd, Trim}, k)
}

// portThing is a port: its distances from three faces of the case.
func portThing(plan route.Plan, port route.PlacedPort) Thing {
	t := Thing{
		Of: Port, Name: port.Ref.String(), Ref: port.Ref, Known: port.KnownFrom,
		Before: "With the part fitted: hold a square to the case's face, so that the rule runs along the axis.",
	}
	for _, g := range survey.Groups(plan) {
		for _, r := range g.Rows {
			if r.Ref == port.Ref {
				t.Numbers = fromWalls(r.From, r.Plan, "the middle of the port's face")
			}
		}
	}
	t.Numbers[2].How += " See with the square which way the port faces: " + survey.FacingText(port.Frame.Dir) + " in the plan."
	return t
}

func fromWalls(from [3]survey.Wall, d [3]float64, to string) []Number {
	var list []Number
	for axis, key := range []Key{X, Y, Z} {
		list = append(list, mm(key, "from the "+from[axis].String(), d[axis], SketchPort,
			"Steel rule or depth rod from the "+from[axis].String()+" to "+to+"."))
	}
	return list
}

// place is where a part stands: its own origin in the case.
func place(part route.Part) Thing {
	return Thing{
		Of: Place, Name: part.Name, Known: part.KnownFrom,
		Before:  "Measure its ports in the case: they say where the part stands.",
		Numbers: fromWalls([3]survey.Wall{survey.Left, survey.Floor, survey.Back}, [3]float64{part.At[0], part.At[1], part.At[2]}, "the part's own origin"),
	}
}
