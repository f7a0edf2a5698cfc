package clear

// near is how the cores of two shapes stand: the shapes less their rounding.
type near struct {
	d    float64 // 0 when they meet
	a, b v3
	meet bool
}

func (n near) swapped() near { return near{n.d, n.b, n.a, n.meet} }

// spanned is the answer for two points known to be nearest.
func spanned(a, b v3) near {
	d := b.sub(a).len()
	return near{d, a, b, d <= touch}
}

// nearer keeps the nearer of two answers; the first on a tie.
func nearer(a, b near) near {
	if b.d < a.d {
		return b
	}
	return a
}

// way is the unit direction from the first point to the second.
func (n near) way() v3 {
	if n.d <= touch {
		return v3{}
	}
	return n.b.sub(n.a).mul(1 / n.d)
}

// proven keeps an answer between whose points planes part the two cores by a
// gap, and says that they meet where there is none. Half the distance will do:
// rounding of the way between points all but touching takes some of the gap.
func (n near) proven(gap float64) near {
	if n.meet || n.d <= touch || gap < n.d/2 {
		return near{meet: true}
	}
	return n
}
