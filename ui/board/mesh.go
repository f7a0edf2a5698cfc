package board

type solid struct{}
type mesh struct{ at [][3]float32 }
