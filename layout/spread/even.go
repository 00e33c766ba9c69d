package spread

import (
	"fmt"
	"math"
	"math/rand/v2"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// Most is the greatest number of points.
const Most = 2000

// Settled are points of a low energy before any that are too near are pushed apart: what takes
// most of the time.
type Settled struct {
	n      int
	zone   Zone // rounded
	poles  []r3.Vec
	rings  []r3.Vec // one point of each
	points []r3.Vec // all
	least  float64  // angle in rad between two of them
	energy float64
}

// Settle spreads n points on the unit sphere with a low Coulomb energy among those in a zone.
// From several starts made with the seed it keeps the best. The same n, seed and zone give
// the same points every time. How far apart points must be is for Apart to see to.
//
// Points press against the borders of a zone, as charges do, so that many lie
// on them; give a cap the half-angle that keeps a mount's whole flange clear.
//
// With a symmetry of k, the points are rings of k evenly round z; what n
// leaves over k, up to two, stands on the axis, on top first. A cap
// then keeps clear all its images about z.
//
// Errors of a zone without room wrap ErrZone.
func Settle(n int, seed uint64, z Zone) (Settled, error) {
	if n < 1 || n > Most {
		return Settled{}, fmt.Errorf("points must be from 1 to 2000, not %d", n)
	}
	if err := z.check(n); err != nil {
		return Settled{}, err
	}
	z = z.round()
	poles, err := onAxis(n, z)
	if err != nil {
		return Settled{}, err
	}
	o := newOrbits(n, poles, z)
	best, energy, err := o.search(rand.New(rand.NewPCG(seed, uint64(n))))
	if err != nil {
		return Settled{}, err
	}
	o.place(best)
	all := o.points
	if z.whole() {
		all = sorted(upright(all))
		best = all
	}
	return Settled{n: n, zone: z, poles: poles, rings: best, points: all, least: LeastAngle(all), energy: energy}, nil
}

// LeastAngle is the angle in rad between the two points that are nearest to each other.
func (s Settled) LeastAngle() float64 { return s.least }

// Apart returns the points and their energy. Where neighbours are nearer than an angle in rad,
// those are pushed apart; if no place is found for all, they stay as even as they were
// ([Capacity] says how many had one).
//
// The points are in the order of [poly.Order]. On the whole sphere without a
// symmetry, the point with the least energy of its own is turned to the top and
// the one nearest to it to azimuth 0; where all caps are round z, the first
// point off the axis is. They may be shared, and must not be changed.
func (s Settled) Apart(angle float64) ([]r3.Vec, float64) {
	z, all, energy := s.zone, s.points, s.energy
	z.Apart = angle
	switch apart := s.least >= z.Apart; {
	case apart && z.whole():
		return all, energy
	case !apart:
		if points, found := parted(s.n, s.poles, z, s.rings); found {
			o := newOrbits(s.n, s.poles, z)
			energy = o.at(points)
			all = o.points
		}
	}
	return z.ordered(all), energy
}

// search returns the points of the least energy from several starts, and that energy.
func (o *orbits) search(random *rand.Rand) (best []r3.Vec, least float64, err error) {
	count, n := len(o.slope), len(o.points)
	if count == 0 {
		return nil, o.at(nil), nil
	}
	if best, err = spiralWithin(count, o.zone); err != nil {
		return nil, 0, err
	}
	least = o.at(best)
	starts, steps := effort(n)
	last := steps
	if !o.zone.whole() {
		starts, last = (starts+3)/4, finish(n, steps) // each is several searches
	}
	try := func(from []r3.Vec, steps, rounds int, level, slack float64) {
		if points, energy := o.settle(from, steps, rounds, level); energy < least*(1+slack) {
			best, least = points, energy
		}
	}
	try(best, steps, trying, coarse, 0)
	for range starts - 1 {
		if from := scatterWithin(count, o.zone, random); from != nil {
			try(from, steps, trying, coarse, 0)
		}
	}
	try(best, last, finishing, fine, 1e-12)
	return best, least, nil
}

// The slopes at which a search may stop: coarse tells arrangements apart, fine
// brings points that are level by symmetry to one height.
const (
	coarse = 1e-3
	fine   = 1e-9
)

// Rounds in which the zone is brought to hold: each leaves about a tenth of how
// far points were inside a cap.
const (
	trying    = 2
	finishing = 12
)

// effort says from how many starts to search and with how many steps each. A
// step costs as the square of n: the more points, the fewer steps and starts.
func effort(n int) (starts, steps int) {
	starts = min(max(1, 180_000/(n*n)), 24)
	steps = min(max(10, 40_000_000/(n*n)), 600)
	return starts, steps
}

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

// ordered returns points in the order of poly.Order, and turned where the zone
// leaves that free.
func (z Zone) ordered(points []r3.Vec) []r3.Vec {
	points = sorted(points)
	switch {
	case z.whole():
		points = sorted(upright(points))
	case z.coaxial():
		points = sorted(facing(points))
	}
	return points
}

// upright turns points so that the one with the least energy of its own is at
// the top and its nearest in the half plane of x.
func upright(points []r3.Vec) []r3.Vec {
	if len(points) < 3 { // without a half plane
		return []r3.Vec{{Z: 1}, {Z: -1}}[:len(points)]
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

func sorted(points []r3.Vec) []r3.Vec {
	out := make([]r3.Vec, len(points))
	for i, at := range poly.Order(points) {
		out[i] = points[at]
	}
	return out
}
