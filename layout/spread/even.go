package spread

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"

	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r3"
)

// Most is the greatest number of points that Even takes.
const Most = 2000

// ErrCount tells of a number of points below 1 or above Most.
var ErrCount = errors.New("points must be from 1 to 2000")

// Even returns n points on the unit sphere with a low Coulomb energy, and that
// energy. From several starts made with the seed it keeps the best. The same n
// and seed give the same points every time.
//
// The point with the least energy of its own is turned to the top, the one
// nearest to it to azimuth 0, and all are in the order of [body.Order]: the
// first at the top, the second in the half plane of x.
func Even(n int, seed uint64) ([]r3.Vec, float64, error) {
	if n < 1 || n > Most {
		return nil, 0, fmt.Errorf("%w, not %d", ErrCount, n)
	}
	if n == 1 {
		return []r3.Vec{{Z: 1}}, 0, nil
	}
	random := rand.New(rand.NewPCG(seed, uint64(n)))
	starts, steps := effort(n)
	c := newCharges(n)
	best, least := c.relax(Spiral(n), steps, coarse)
	for range starts - 1 {
		if points, energy := c.relax(scatter(n, random), steps, coarse); energy < least {
			best, least = points, energy
		}
	}
	best, least = c.relax(best, steps, fine)
	return sorted(upright(best)), least, nil
}

// The slopes at which a search may stop: coarse tells arrangements apart, fine
// brings points that are level by symmetry to one height.
const (
	coarse = 1e-3
	fine   = 1e-9
)

// effort says from how many starts to search and with how many steps each. A
// step costs as the square of n: the more points, the fewer steps and starts.
func effort(n int) (starts, steps int) {
	starts = min(max(1, 180_000/(n*n)), 24)
	steps = min(max(10, 40_000_000/(n*n)), 600)
	return starts, steps
}

// scatter returns n points anywhere on the sphere, all places alike.
func scatter(n int, random *rand.Rand) []r3.Vec {
	points := make([]r3.Vec, n)
	for i := range points {
		points[i] = r3.Unit(r3.Vec{X: random.NormFloat64(), Y: random.NormFloat64(), Z: random.NormFloat64()})
	}
	return points
}

// upright turns points so that the one with the least energy of its own is at
// the top and its nearest in the half plane of x.
func upright(points []r3.Vec) []r3.Vec {
	if len(points) == 2 { // one against the other, so without a half plane
		return []r3.Vec{{Z: 1}, {Z: -1}}
	}
	z := points[calmest(points)]
	y := r3.Unit(r3.Cross(z, nearest(points, z)))
	x := r3.Cross(y, z)
	out := make([]r3.Vec, len(points))
	for i, p := range points {
		out[i] = r3.Vec{X: r3.Dot(p, x), Y: r3.Dot(p, y), Z: r3.Dot(p, z)}
	}
	return out
}

// calmest returns the point with the least energy of its own, the first of
// those that are alike.
func calmest(points []r3.Vec) int {
	best, least := 0, math.Inf(1)
	for i, p := range points {
		own := 0.0
		for j, q := range points {
			if i != j {
				own += 1 / r3.Norm(r3.Sub(p, q))
			}
		}
		if own < least*(1-1e-7) || i == 0 {
			best, least = i, own
		}
	}
	return best
}

// nearest returns the point nearest to one of them.
func nearest(points []r3.Vec, to r3.Vec) r3.Vec {
	best, most := r3.Vec{}, math.Inf(-1)
	for _, p := range points {
		if c := r3.Dot(p, to); p != to && c > most+1e-7 {
			best, most = p, c
		}
	}
	return best
}

func sorted(points []r3.Vec) []r3.Vec {
	out := make([]r3.Vec, len(points))
	for i, at := range body.Order(points) {
		out[i] = points[at]
	}
	return out
}
