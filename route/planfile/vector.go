package planfile

import (
	"fmt"
	"math"
	"slices"

	"github.com/go-gl/mathgl/mgl64"
	"gopkg.in/yaml.v3"
)

// vector is three numbers [x, y, z].
func vector(each codec[float64]) codec[mgl64.Vec3] {
	return codec[mgl64.Vec3]{
		read: func(s spot, n *yaml.Node, into *mgl64.Vec3) {
			if v, ok := s.three(n, each); ok {
				*into = v
			}
		},
		write: func(f form, v, _ mgl64.Vec3) *item { return numbersItem(f, v[:], each) },
		same:  alikeVectors,
		shape: shape{kind: "list", each: &each.shape, least: 3, most: 3},
	}
}

func alikeVectors(a, b mgl64.Vec3) bool {
	return alike(a[0], b[0]) && alike(a[1], b[1]) && alike(a[2], b[2])
}

// three reads a vector and says whether every number of it is good.
func (s spot) three(n *yaml.Node, each codec[float64]) (v mgl64.Vec3, ok bool) {
	if n.Kind != yaml.SequenceNode || len(n.Content) != 3 {
		s.bad(n, "must be three numbers [x, y, z], but "+saysList(n), "Write it as [x, y, z].")
		return v, false
	}
	before := len(s.problems)
	for i, c := range n.Content {
		each.read(s, c, &v[i])
	}
	return v, len(s.problems) == before
}

func saysList(n *yaml.Node) string {
	if n.Kind == yaml.SequenceNode {
		return fmt.Sprintf("holds %d", len(n.Content))
	}
	return says(n)
}

func numbersItem(f form, v []float64, each codec[float64]) *item {
	it := &item{kind: list, layout: flow}
	for _, x := range v {
		it.list = append(it.list, each.write(f, x, 0))
	}
	return it
}

// legs is the two legs of an elbow.
func legs(each codec[float64]) codec[[2]float64] {
	return two(each, "[in, out]", "Write it as [in, out], each from the face to the corner.")
}

// two is two numbers, with what they are called and how to write them.
func two(each codec[float64], called, fix string) codec[[2]float64] {
	return codec[[2]float64]{
		read: func(s spot, n *yaml.Node, into *[2]float64) {
			if n.Kind != yaml.SequenceNode || len(n.Content) != 2 {
				s.bad(n, "must be two numbers "+called+", but "+saysList(n), fix)
				return
			}
			for i, c := range n.Content {
				each.read(s, c, &into[i])
			}
		},
		write: func(f form, v, base [2]float64) *item {
			if v == [2]float64{} && v == base {
				return nil
			}
			return numbersItem(f, v[:], each)
		},
		same:  func(a, b [2]float64) bool { return alike(a[0], b[0]) && alike(a[1], b[1]) },
		shape: shape{kind: "list", each: &each.shape, least: 2, most: 2},
	}
}

var axes = []struct {
	word string
	dir  mgl64.Vec3
}{
	{"+x", mgl64.Vec3{1, 0, 0}},
	{"-x", mgl64.Vec3{-1, 0, 0}},
	{"+y", mgl64.Vec3{0, 1, 0}},
	{"-y", mgl64.Vec3{0, -1, 0}},
	{"+z", mgl64.Vec3{0, 0, 1}},
	{"-z", mgl64.Vec3{0, 0, -1}},
}

// unitNoise is how far from 1 the length of a unit vector may be by rounding:
// three products and a root leave under 1e-15. Such a vector is taken as it
// stands, so that writing and reading it changes nothing.
const unitNoise = 1e-13

// facing is a direction out of a part: an axis by name, or a vector of any
// length above zero.
func facing() codec[mgl64.Vec3] {
	return codec[mgl64.Vec3]{
		read: readFacing,
		write: func(_ form, v, _ mgl64.Vec3) *item {
			it := facingItem(v)
			it.holds = func(n *yaml.Node) bool { return holdsFacing(n, v) }
			return it
		},
		same:  alikeVectors,
		shape: facingShape(),
	}
}

func facingShape() shape {
	words := make([]string, len(axes))
	for i, a := range axes {
		words[i] = a.word
	}
	three := vector(count(anyNumber)).shape
	return shape{kind: "either", either: []shape{{kind: "choice", words: words}, three}}
}

func readFacing(s spot, n *yaml.Node, into *mgl64.Vec3) {
	if n.Kind == yaml.ScalarNode {
		for _, a := range axes {
			if n.Value == a.word {
				*into = a.dir
				return
			}
		}
		s.bad(n, "must be +x, -x, +y, -y, +z, -z or a vector [x, y, z], but "+says(n), "Name the axis the port looks along, away from its part.")
		return
	}
	if v, ok := s.three(n, count(anyNumber)); !ok {
		return
	} else if unit, ok := normal(v); ok {
		*into = unit
	} else {
		s.bad(n, "is a vector of no length, so it faces nowhere", "Name the axis the port looks along, away from its part, such as +x.")
	}
}

// normal makes a vector one long. It refuses one too short to have a direction.
func normal(v mgl64.Vec3) (mgl64.Vec3, bool) {
	size := v.Len()
	if size < sameNumber {
		return v, false
	}
	if math.Abs(size-1) <= unitNoise {
		return v, true
	}
	v = v.Mul(1 / size)
	return mgl64.Vec3{v[0] + 0, v[1] + 0, v[2] + 0}, true
}

func holdsFacing(n *yaml.Node, want mgl64.Vec3) bool {
	probe := spot{reader: &reader{factor: 1}}
	var have mgl64.Vec3
	readFacing(probe, n, &have)
	return len(probe.problems) == 0 && alike(have[0], want[0]) && alike(have[1], want[1]) && alike(have[2], want[2])
}

func facingItem(v mgl64.Vec3) *item {
	if i := slices.IndexFunc(axes, func(a struct {
		word string
		dir  mgl64.Vec3
	},
	) bool {
		return a.dir == v
	}); i >= 0 {
		return &item{word: axes[i].word}
	}
	it := &item{kind: list, layout: flow}
	for _, x := range v {
		it.list = append(it.list, &item{word: plain(x)})
	}
	return it
}
