package spread

import (
	"fmt"
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/spatial/r3"
)

// Within returns n points on the unit sphere with a low Coulomb energy among
// those in a zone, and that energy. From several starts made with the seed it
// keeps the best. The same n, seed and zone give the same points every time,
// and the zero zone gives those of [Even].
//
// Points press against the borders of a zone, as charges do, so that many lie
// on them; give a cap the half-angle that keeps a mount's whole flange clear.
// Where neighbours are nearer than the zone asks, those are pushed apart; if no
// place is found for all, they stay as even as they were ([Capacity] says how
// many had one).
//
// With a symmetry of k, the points are rings of k evenly round z; what n
// leaves over k, up to two, stands on the axis, on top first. A cap
// then keeps clear all its images about z.
//
// The points are in the order of body.Order. Where all caps are round z, they
// are turned so that the first of those off the axis is at azimuth 0.
//
// Errors wrap ErrCount, ErrCap, ErrApart, ErrSymmetry and ErrZone.
func Within(n int, seed uint64, z Zone) ([]r3.Vec, float64, error) {
	if n < 1 || n > Most {
		return nil, 0, fmt.Errorf("%w, not %d", ErrCount, n)
	}
	if err := z.check(n); err != nil {
		return nil, 0, err
	}
	if len(z.Clear) == 0 && z.Fold <= 1 {
		points, energy, err := Even(n, seed)
		if err != nil || LeastAngle(points) >= z.Apart {
			return points, energy, err
		}
		return apart(n, points, energy, nil, points, z.round())
	}
	z = z.round()
	poles, err := onAxis(n, z)
	if err != nil {
		return nil, 0, err
	}
	rings := (n - len(poles)) / z.Fold
	o := newOrbits(rings, poles, z)
	var start []r3.Vec
	if rings > 0 {
		if start, err = spiralWithin(rings, z); err != nil {
			return nil, 0, err
		}
	}
	random := rand.New(rand.NewPCG(seed, uint64(n)))
	starts, steps := effort(n)
	starts = (starts + 3) / 4 // each is several searches
	best, least := start, o.at(start)
	try := func(from []r3.Vec, steps, rounds int, level float64) {
		if points, energy := o.settle(from, steps, rounds, level); energy < least {
			best, least = points, energy
		}
	}
	if rings > 0 {
		try(start, steps, trying, coarse)
		for range starts - 1 {
			if from := scatterWithin(rings, z, random); from != nil {
				try(from, steps, trying, coarse)
			}
		}
		try(best, finish(n, steps), finishing, fine)
	}
	o.place(best)
	if LeastAngle(o.points) < z.Apart {
		return apart(n, o.points, least, poles, best, z)
	}
	return z.ordered(o.points), least, nil
}

// apart parts points, given as a whole and by their poles and rings, that are
// nearer than the zone asks. Where that finds no place for all, they stay as they
// are.
func apart(n int, all []r3.Vec, energy float64, poles, own []r3.Vec, z Zone) ([]r3.Vec, float64, error) {
	if points, found := parted(n, poles, z, own); found {
		o := newOrbits(len(points), poles, z)
		energy = o.at(points)
		all = o.points
	}
	return z.ordered(all), energy, nil
}

// ordered returns points in the order of body.Order, and turned where the zone
// leaves that free.
func (z Zone) ordered(points []r3.Vec) []r3.Vec {
	if all := sorted(points); !z.coaxial() {
		return all
	} else if len(z.Clear) > 0 || z.Fold > 1 {
		return sorted(facing(all))
	} else {
		return sorted(upright(all))
	}
}

// Rounds in which the zone is brought to hold: each leaves about a tenth of how
// far points were inside a cap.
const (
	trying    = 2
	finishing = 12
)

// finish says how many steps a round of the last search takes. Above a hundred
// points an eighth costs less than five hundred-thousandths of the energy, which no
// builder can tell (measured for 150 to 1000 points on two zones), and saves two
// thirds of the time.
func finish(n, steps int) int {
	if n <= 100 {
		return steps
	}
	return min(steps, max(steps/8, 12))
}

// onAxis returns the points that a symmetry leaves for the axis.
func onAxis(n int, z Zone) ([]r3.Vec, error) {
	if n == 1 {
		if top := (r3.Vec{Z: 1}); z.Contains(top) {
			return []r3.Vec{top}, nil
		}
	}
	if z.Fold == 1 {
		return nil, nil
	}
	var free []r3.Vec
	for _, p := range []r3.Vec{{Z: 1}, {Z: -1}} {
		if z.Contains(p) {
			free = append(free, p)
		}
	}
	if want := n % z.Fold; want <= len(free) {
		return free[:want], nil
	}
	return nil, fmt.Errorf("%w: %d of %d points must stand on the axis, where it allows %d", ErrZone, n%z.Fold, n, len(free))
}

// coaxial tells whether turns about z leave the zone as it is.
func (z Zone) coaxial() bool {
	for _, c := range z.Clear {
		if math.Hypot(c.Axis.X, c.Axis.Y) > 0 {
			return false
		}
	}
	return true
}

// facing turns points about z so that the first off the axis is at azimuth 0.
func facing(points []r3.Vec) []r3.Vec {
	for _, p := range points {
		if out := math.Hypot(p.X, p.Y); out > 1e-6 {
			cos, sin := p.X/out, p.Y/out
			for i, q := range points {
				points[i] = r3.Vec{X: cos*q.X + sin*q.Y, Y: cos*q.Y - sin*q.X, Z: q.Z}
			}
			break
		}
	}
	return points
}
