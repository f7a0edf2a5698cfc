package check_test

import (
	"tubewright/bends"
	"tubewright/route"
)

// beam is a block under the level leg of run a, whose tube's underside is at y 92.
func beam(top float64) func(*scene) {
	return func(s *scene) {
		s.add(route.Part{Name: "beam", Solids: box(vec{150, 10, 45}, vec{200, top, 55})})
	}
}

// gpu is a block from x to x, level with the pump, whose near face is at x 60.
func gpu(from, to float64) func(*scene) {
	return func(s *scene) {
		s.add(route.Part{Name: "gpu", Solids: box(vec{from, 80, 30}, vec{to, 120, 170})})
	}
}

// nearer moves run b and its ports to a distance from run a.
func nearer(apart float64) func(*scene) {
	return func(s *scene) {
		s.part("pump").Ports[1].At[2] = 50 + apart
		s.part("block").Ports[1].At[2] = 50 + apart
		for i := range s.corners[1] {
			s.corners[1][i][2] = 50 + apart
		}
	}
}

// crossing is a straight third run along z under the level leg of run a, at a height.
func crossing(y float64) func(*scene) {
	return func(s *scene) {
		s.add(route.Part{Name: "e", Ports: []route.Port{port("p", vec{200, y, 5}, vec{0, 0, 1}, route.Any)}})
		s.add(route.Part{Name: "f", Ports: []route.Port{port("p", vec{200, y, 100}, vec{0, 0, -1}, route.Any)}})
		s.run("c", "e.p", "f.p", vec{200, y, 11}, vec{200, y, 94})
	}
}

// curl makes run a cross over itself, its last leg at a depth beside the first.
// It ends on a part of its own above the floor.
func curl(beside float64) func(*scene) {
	return func(s *scene) {
		s.add(route.Part{Name: "e", Ports: []route.Port{port("p", vec{150, 30, 50 + beside}, vec{0, 1, 0}, route.Any)}})
		s.plan.Runs[0].To = ref("e.p")
		s.corners[0] = []vec{{106, 100, 50}, {300, 100, 50}, {300, 200, 50 + beside}, {150, 200, 50 + beside}, {150, 36, 50 + beside}}
	}
}

// narrow is a case whose right wall stands close to run a's collar, which
// reaches to x 262; the block is made narrower.
func narrow(wall float64) func(*scene) {
	return func(s *scene) {
		s.plan.Case[0] = wall
		s.part("block").Solids = box(vec{240, 250, 30}, vec{255, 290, 170})
	}
}

// facing is a straight run between two ports this far apart, with short collars.
func facing(apart float64) func(*scene) {
	return func(s *scene) {
		s.plan.Tubes[0].StraightEnd = 0
		s.plan.Fittings[0].Collar.Length = 8
		s.add(route.Part{Name: "e", Ports: []route.Port{port("p", vec{20, 200, 300}, vec{1, 0, 0}, route.Any)}})
		s.add(route.Part{Name: "f", Ports: []route.Port{port("p", vec{20 + apart, 200, 300}, vec{-1, 0, 0}, route.Any)}})
		s.run("c", "e.p", "f.p", vec{26, 200, 300}, vec{14 + apart, 200, 300})
	}
}

func socket(change func(*route.Fitting)) func(*scene) {
	return func(s *scene) { change(&s.plan.Fittings[0]) }
}

// drawn gives run a a path that the bends refuse, and what they say.
func drawn(tube func(*bends.Tube), corners ...vec) func(*scene) {
	return func(s *scene) {
		b := s.plan.Tubes[0].Tube
		tube(&b)
		_, s.problem[0] = bends.Form(b, bends.Path{Corners: corners})
		s.plan.Runs[0].Way, s.plan.Runs[0].Via = route.Drawn, corners[1:len(corners)-1]
	}
}

func asIs(*bends.Tube) {}

// loopOf joins the pump to a radiator with a low and a high port.
func radiator(low, high float64) func(*scene) {
	return func(s *scene) {
		s.part("block").At[1] += high - 250
		s.corners[0][2][1] += high - 250
		s.corners[1][2][1] += high - 250
		s.part("pump").Ports[2].At[1] = 100 + low
		s.part("pump").Ports[2].Facing = vec{-1, 0, 0}
	}
}
