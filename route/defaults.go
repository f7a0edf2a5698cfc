package route

// Defaults is a plan with every value a file may leave out. Clear, Weigh,
// Errors, Saw and KeepOver are the ones of the plan format's example: common
// practice for a hand saw and 16 mm plastic tube. Tidy is a
// guess, a little less than an odd bend: rigid tube is chosen for its looks. Miss
// is a guess too, and modest: where every second blank is lost that counts as a
// third of a bend. A fitting screwed home on a faced seat stands square within half a degree
// (common practice). Nine in ten is a chance one can shop on.
func Defaults() Plan {
	return Plan{
		Units:    Millimetres,
		Clear:    4,
		Weigh:    Weigh{Bend: 60, OddBend: 100, Millimetre: 1, Fitting: 80, Price: 10, Tidy: 90, Miss: 20},
		Errors:   Errors{Port: 1.0, Cut: 0.5, Turn: 1.5, Roll: 2.0, Facing: 0.5},
		Saw:      Saw{Kerf: 1.0, Square: 2.0},
		KeepOver: 120,
		Spares:   Spares{Chance: 90},
		Build:    1,
	}
}
