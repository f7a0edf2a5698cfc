package clear

import "github.com/go-gl/mathgl/mgl64"

func (b Box) Bounds() (lo, hi mgl64.Vec3)      { return }
func (c Cylinder) Bounds() (lo, hi mgl64.Vec3) { return }
func (r Rod) Bounds() (lo, hi mgl64.Vec3)      { return }
func (a Arc) Bounds() (lo, hi mgl64.Vec3)      { return }
