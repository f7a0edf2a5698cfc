package route

// Defaults is a plan with every value a file may leave out. Clear, Weigh,
// Errors, Saw and KeepOver are the ones of the plan format's example: common
// practice for a hand saw and 16 mm plastic tube. Tidy is a
// guess, a little less than an odd bend: rigid tube is chosen for its looks.
func Defaults() Plan {
	return Plan{
		Units:    Millimetres,
		Clear:    4,
		Weigh:    Weigh{Bend: 60, OddBend: 100, Millimetre: 1, Fitting: 80, Price: 10, Tidy: 90},
		Errors:   Errors{Port: 1.0, Cut: 0.5, Turn: 1.5, Roll: 2.0},
		Saw:      Saw{Kerf: 1.0, Square: 2.0},
		KeepOver: 120,
		Build:    1,
	}
}
