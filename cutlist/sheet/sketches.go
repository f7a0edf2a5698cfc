package sheet

import (
	"tubewright/cutlist/draw"
	"tubewright/cutlist/measure"
)

// stop is a socket cut open: two depths whose difference is the stop.
func (p *sketchpad) stop() {
	p.wall()
	f := p.th.Fitting
	p.solid(10, 8, 36, 11.5, f)
	p.solid(10, 22.5, 36, 26, f)
	p.solid(10, 11.5, 17, 14, f) // the shoulder the tube rests on
	p.solid(10, 20, 17, 22.5, f)
	p.axis(4, 17, 52, 17)
	p.rod(measure.Stop, 36, 17, 13)
	p.rod(measure.Stop, 36, 10, 29)
	p.text(47, 14, "1", measure.Stop)
	p.text(47, 30, "2", measure.Stop)
	p.line(p.ink(measure.Stop), 17, 8, 17, 3)
	p.line(p.ink(measure.Stop), 10, 4, 10, 2.5)
	p.span(measure.Stop, 10, 4.5, 17, 4.5, "stop = 2 − 1", 27, 5.3)
}

// insertion is a scrap of tube that was pushed home, marked and pulled out, over
// the seals of its socket.
func (p *sketchpad) insertion() {
	p.solid(4, 13, 50, 22, p.glass())
	p.line(pen(0.5, p.th.Ink), 28, 13, 28, 22)
	p.text(40, 18.3, "mark at the collar", measure.Full)
	p.jaws(measure.Full, 4, 28, 13, true)
	p.text(16, 4, "full insertion", measure.Full)
	for _, x := range []float64{9, 14} { // where the seals grip
		p.line(dashedPen(0.25, p.th.Edge, 0.8, 0.6), x, 13, x, 25)
	}
	p.text(40, 26, "seals", "")
	p.line(pen(0.15, p.th.Edge), 35.5, 25.3, 14, 24.5)
	p.span(measure.Least, 9, 28, 28, 28, "least: past the inner seal, and 2 mm", 29, 32)
}

func (p *sketchpad) collar() {
	p.wall()
	p.solid(36, 12, 54, 22, p.glass())
	p.solid(10, 9, 36, 25, p.th.Fitting)
	p.line(pen(0.15, p.th.Edge), 31, 9, 31, 25)
	p.axis(4, 17, 56, 17)
	p.jawsUpright(measure.CollarOD, 22, 9, 25)
	p.text(43, 8, "diameter", measure.CollarOD)
	p.line(p.ink(measure.CollarOD), 22, 9, 22, 25)
	p.rod(measure.CollarLength, 36, 10, 28.5)
	p.text(50, 29.3, "length", measure.CollarLength)
}

// jawsUpright are two plates over and under a body, seen from the side.
func (p *sketchpad) jawsUpright(key measure.Key, x, y1, y2 float64) {
	s := p.ink(key)
	c := mix(p.th.Paper, s.Colour, 0.35)
	p.d.Add(draw.Box(x-1, y1-4, 2, 4, c, pen(0.2, s.Colour)), draw.Box(x-1, y2, 2, 1.6, c, pen(0.2, s.Colour)))
	p.arrow(x, y1, 270, s.Colour)
	p.arrow(x, y2, 90, s.Colour)
}

func (p *sketchpad) length() {
	p.wall()
	p.solid(10, 9, 36, 23, p.th.Fitting)
	p.axis(4, 16, 46, 16)
	p.line(p.ink(measure.BodyOD), 26, 9, 26, 23)
	p.jawsUpright(measure.BodyOD, 26, 9, 23)
	p.text(38, 6.5, "outside", measure.BodyOD)
	p.rod(measure.Length, 36, 10, 28)
	p.text(50, 28.8, "length", measure.Length)
}

func (p *sketchpad) offset() {
	p.wall()
	p.solid(10, 15, 24, 25, p.th.Fitting)
	p.solid(20, 7, 40, 17, p.th.Fitting)
	p.axis(4, 20, 52, 20)
	p.axis(16, 12, 52, 12)
	p.span(measure.Sideways, 46, 12, 46, 20, "sideways", 51, 9.5)
	p.rod(measure.Length, 40, 10, 29)
	p.line(p.ink(measure.Length), 40, 17, 40, 27)
	p.text(53, 29.8, "length", measure.Length)
}

func (p *sketchpad) elbow() {
	p.wall()
	p.solid(10, 15, 32, 25, p.th.Fitting)
	p.solid(22, 5, 32, 20, p.th.Fitting)
	p.axis(4, 20, 46, 20)
	p.axis(27, 2.5, 27, 28)
	p.span(measure.LegIn, 10, 29, 27, 29, "first leg", 37, 29.8)
	p.span(measure.LegOut, 40, 5, 40, 20, "second leg", 49, 13)
	p.line(pen(0.15, p.th.Edge), 32, 5, 41, 5)
	p.d.Add(draw.Arc{Centre: draw.Point{X: 27, Y: 20}, Radius: 7.5, From: 270, Sweep: 90, Stroke: p.ink(measure.Turn)})
	p.text(50, 24, "turn", measure.Turn)
	p.line(pen(0.15, p.th.Edge), 46.5, 23.2, 33.5, 17.5)
}

func (p *sketchpad) tee() {
	p.wall()
	p.solid(10, 14, 42, 24, p.th.Fitting)
	p.solid(21, 5, 31, 14, p.th.Fitting)
	p.axis(4, 19, 52, 19)
	p.line(pen(0.15, p.th.Edge), 31, 5, 48, 5)
	p.span(measure.SideLeg, 47, 5, 47, 19, "side", 52, 12.8)
	p.rod(measure.Length, 42, 10, 28.5)
	p.text(54, 29.3, "length", measure.Length)
}

// tubeEnds is a tube seen on its end, twice.
func (p *sketchpad) tubeEnds() {
	ring := func(x, y float64) {
		p.d.Add(draw.Disc(draw.Point{X: x, Y: y}, 8.5, p.glass(), pen(0.2, p.th.Edge)),
			draw.Disc(draw.Point{X: x, Y: y}, 6.3, p.th.Paper, pen(0.2, p.th.Edge)))
	}
	ring(16, 18)
	ring(43, 18)
	p.jaws(measure.OD, 7.5, 24.5, 15, true)
	p.line(p.ink(measure.OD), 7.5, 18, 24.5, 18)
	p.text(16, 31, "outside", measure.OD)
	s := p.ink(measure.ID)
	for _, x := range []float64{36.7, 48.1} {
		p.d.Add(draw.Box(x, 9, 1.2, 10, mix(p.th.Paper, s.Colour, 0.35), pen(0.2, s.Colour)))
	}
	p.line(pen(0.7, s.Colour), 33, 9, 53, 9)
	p.span(measure.ID, 36.7, 21, 49.3, 21, "inside", 43, 31)
}

// former is a former with its tube, and a caliper across the groove's floor.
func (p *sketchpad) former() {
	c := draw.Point{X: 20, Y: 20}
	p.d.Add(draw.Arc{Centre: c, Radius: 11.5, From: 180, Sweep: 90, Stroke: pen(5, p.glass())})
	p.solid(6, 20, 11, 23, p.glass())
	p.solid(20, 6, 40, 11, p.glass())
	p.d.Add(draw.Disc(c, 9, p.th.Fitting, pen(0.2, p.th.Edge)))
	p.axis(c.X-3, c.Y, c.X+3, c.Y)
	p.axis(c.X, c.Y-3, c.X, c.Y+3)
	p.span(measure.Radius, 20, 20, 11.9, 11.9, "", 0, 0)
	p.text(46, 17, "radius: half of the", measure.Radius)
	p.text(46, 20.2, "groove floor, and", measure.Radius)
	p.text(46, 23.4, "half of the tube", measure.Radius)
	p.jaws(measure.Radius, 11, 29, 24, false)
}

// spring is a bend on its former, and when it has come off.
func (p *sketchpad) spring() {
	p.line(pen(2.4, p.glass()), 4, 27, 28, 27)
	p.line(dashedPen(0.3, p.th.Edge, 1.2, 0.8), 28, 27, 28, 4)
	p.line(pen(2.4, p.glass()), 28, 27, 36, 5)
	p.line(pen(0.3, p.th.Ink), 4, 27, 28, 27, 36, 5)
	p.d.Add(draw.Arc{Centre: draw.Point{X: 28, Y: 27}, Radius: 17, From: 270, Sweep: 20, Stroke: pen(0.4, p.th.Alarm)})
	p.text(14, 6, "on the former", "")
	p.text(47, 14, "come off", "")
	p.text(46, 24, "how far it opens: o", "")
	p.line(pen(0.15, p.th.Edge), 36, 22.2, 31.5, 10.6)
	p.text(28, 32.4, "fixed = 2 × o45 − o90; part = (o90 − o45) / 45", "")
}

// straights is a tube with two bends as near as may be.
func (p *sketchpad) straights() {
	s := pen(2.4, p.glass())
	p.line(s, 4, 26, 14, 26)
	p.d.Add(draw.Arc{Centre: draw.Point{X: 14, Y: 20}, Radius: 6, From: 90, Sweep: -90, Stroke: s})
	p.line(s, 20, 20, 20, 14)
	p.d.Add(draw.Arc{Centre: draw.Point{X: 26, Y: 14}, Radius: 6, From: 180, Sweep: 90, Stroke: s})
	p.line(s, 26, 8, 52, 8)
	p.line(pen(0.15, p.th.Edge), 18, 20, 30, 20)
	p.line(pen(0.15, p.th.Edge), 18, 14, 30, 14)
	p.span(measure.Between, 28, 14, 28, 20, "between bends", 39, 17.8)
	p.line(pen(0.15, p.th.Edge), 14, 24, 14, 31)
	p.line(pen(0.15, p.th.Edge), 4, 24, 4, 31)
	p.span(measure.AtEnd, 4, 30, 14, 30, "at an end", 22.5, 30.8)
}

func (p *sketchpad) trim() {
	p.solid(4, 13, 54, 21, p.glass())
	cut := dashedPen(0.3, p.th.Ink, 1.4, 0.8)
	p.line(cut, 13, 10, 13, 25)
	p.line(cut, 45, 10, 45, 25)
	p.span(measure.Trim, 4, 26, 13, 26, "trim", 8.5, 30)
	p.span(measure.Trim, 45, 26, 54, 26, "trim", 49.5, 30)
	p.text(29, 8, "cut here after bending", "")
	p.text(29, 18, "the finished tube", "")
}

// port is the lower, left, far corner of a case and a port in it.
func (p *sketchpad) port() {
	at := func(x, y, z float64) (float64, float64) { return 22 + x - 0.55*z, 21 - y + 0.42*z }
	edge := pen(0.25, p.th.Edge)
	face := func(c draw.Colour, corners ...[3]float64) {
		f := draw.Fill{Colour: c, Stroke: edge}
		for _, q := range corners {
			x, y := at(q[0], q[1], q[2])
			f.Points = append(f.Points, draw.Point{X: x, Y: y})
		}
		p.d.Add(f)
	}
	face(p.th.Part, [3]float64{0, 0, 0}, [3]float64{32, 0, 0}, [3]float64{32, 18, 0}, [3]float64{0, 18, 0})
	face(p.th.PartSide, [3]float64{0, 0, 0}, [3]float64{0, 0, 24}, [3]float64{0, 18, 24}, [3]float64{0, 18, 0})
	face(p.th.Band, [3]float64{0, 0, 0}, [3]float64{32, 0, 0}, [3]float64{32, 0, 24}, [3]float64{0, 0, 24})
	px, py := at(22, 10, 12)
	for _, d := range []struct {
		key  measure.Key
		to   [3]float64
		word string
		x, y float64
	}{
		{measure.X, [3]float64{0, 10, 12}, "x", 24, 14.9},
		{measure.Y, [3]float64{22, 0, 12}, "y", 40.3, 22.5},
		{measure.Z, [3]float64{22, 10, 0}, "z", 38.4, 11.6},
	} {
		x, y := at(d.to[0], d.to[1], d.to[2])
		p.span(d.key, px, py, x, y, d.word, d.x, d.y)
	}
	p.d.Add(draw.Disc(draw.Point{X: px, Y: py}, 1.1, p.th.Ink, draw.Stroke{}))
}
