package kit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// feetCount is how many legs a stand has: four do not tip when one side is pressed.
const feetCount = 4

// place finds where vents, the cable's gland and feet are on a floor of n sectors: off its joints,
// its posts and each other, the vents nearest to the axis.
func (k *maker) place(n int) {
	rim := k.rimRadius()
	type disc struct {
		at     r3.Vec
		radius float64
	}
	var taken []disc
	free := func(at r3.Vec, radius float64) bool {
		if r3.Norm(at) > rim-ledgeWide-1e-3-radius {
			return false
		}
		for j := range n {
			across := direction(2*math.Pi*float64(j)/float64(n) + math.Pi/2)
			if along := direction(2 * math.Pi * float64(j) / float64(n)); n > 1 && r3.Dot(at, along) > -radius && math.Abs(r3.Dot(at, across)) < radius+reach+0.5e-3 {
				return false
			}
		}
		for _, p := range k.posts {
			if r3.Norm(r3.Sub(at, r3.Vec{X: p.X, Y: p.Y})) < radius+postRadius+1e-3 {
				return false
			}
		}
		for _, d := range taken {
			if r3.Norm(r3.Sub(at, d.at)) < radius+d.radius+1.5e-3 {
				return false
			}
		}
		return true
	}
	find := func(radius, from, turn float64) (r3.Vec, bool) {
		for ring := from; ring < rim; ring += 3e-3 {
			for i := range 72 {
				if at := r3.Scale(ring, direction(turn+float64(i)*math.Pi/36)); free(at, radius) {
					taken = append(taken, disc{at, radius})
					return at, true
				}
			}
		}
		return r3.Vec{}, false
	}
	if k.array.Stand > 0 {
		for i := range feetCount {
			if at, ok := find(footRadius, 0.6*rim, (float64(i)+0.5)*math.Pi/2-0.2); ok {
				k.feet = append(k.feet, at)
			}
		}
	}
	for range k.cartridge.Count {
		if at, ok := find(k.cartridge.socketRadius(), 0, 0); ok {
			k.vents = append(k.vents, at)
		}
	}
	k.wanted = k.cartridge.Count
	k.cartridge.Count = len(k.vents)
	if at, ok := find(gland+2e-3, 0, math.Pi); ok {
		k.gland = &at
	}
}
