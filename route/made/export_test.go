package made

import "github.com/go-gl/mathgl/mgl64"

// Shaken looks for a better seat by chance: small turns and shifts, kept where
// they are better, ever smaller. It is slow and plainly right.
func Shaken(s Seat, n int, size float64, random func() float64) float64 {
	f := newFit(s.Try.Corners, s.Laid, s.spare(s.Formed.Developed))
	least := f.strain()
	for i := range n {
		reach := size * float64(n-i) / float64(n)
		trial := *f
		trial.corners = append([]mgl64.Vec3{}, f.corners...)
		vec := func(k float64) mgl64.Vec3 { return mgl64.Vec3{k * random(), k * random(), k * random()} }
		trial.move(trial.middle(), vec(reach/100), vec(reach))
		if got := trial.strain(); got < least {
			least, *f = got, trial
		}
	}
	return least
}
