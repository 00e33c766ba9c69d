package spread

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// ErrZone tells of a zone that has no place for all points.
var ErrZone = errors.New("the zone leaves no room")

// Cap is the part of the sphere around a direction (of any length but 0), up
// to a half-angle in rad.
type Cap struct {
	Axis      r3.Vec
	HalfAngle float64
}

// Below returns the cap under a height on the unit sphere: what a dome leaves
// out.
func Below(height float64) Cap {
	return Cap{Axis: r3.Vec{Z: -1}, HalfAngle: math.Acos(-height)}
}

// Zone says where points may be and how they repeat. The zero value is the
// whole sphere.
type Zone struct {
	// Clear are the caps that no point lies inside; their borders are free.
	Clear []Cap
	// Fold is how many turns about z, evenly round it, leave the points as
	// they are; 0 and 1 ask for none.
	Fold int
	// Apart is the least angle in rad between points, seen from the centre, 0 to
	// pi; 0 asks for none. Where all cannot keep it, none need.
	Apart float64
}

// Contains tells whether a point on the unit sphere is in the zone; one that is
// outside by rounding only counts as in it.
func (z Zone) Contains(p r3.Vec) bool {
	for _, c := range z.Clear {
		if r3.Dot(p, r3.Unit(c.Axis)) > math.Cos(c.HalfAngle)+onBorder {
			return false
		}
	}
	return true
}

// onBorder is what the cosine to a cap's axis may be off by.
const onBorder = 1e-12

// check tells what is wrong with the zone for a count of points.
func (z Zone) check(n int) error {
	for i, c := range z.Clear {
		// A direction that is not finite has no length that is.
		if long := r3.Norm(c.Axis); !(long > 0 && !math.IsInf(long, 0)) || !(c.HalfAngle >= 0 && c.HalfAngle <= math.Pi) {
			return prose.Errorf("a cap needs a direction and a half-angle from 0 to pi: cap %d has direction %v, half-angle %g", i+1, c.Axis, c.HalfAngle)
		}
	}
	if !(z.Apart >= 0 && z.Apart <= math.Pi) {
		return prose.Errorf("points must be apart by an angle from 0 to pi, not %g", z.Apart)
	}
	if z.Fold < 0 || z.Fold > Most || z.Fold > 1 && n%z.Fold > 2 {
		return fmt.Errorf("the count must be a multiple of the symmetry, or that and 1 or 2 on the axis: %d points, symmetry %d", n, z.Fold)
	}
	return nil
}

// round returns the zone in which a point's images about z are all in z, with
// directions of length 1.
func (z Zone) round() Zone {
	out := Zone{Fold: max(z.Fold, 1), Apart: z.Apart}
	for _, c := range z.Clear {
		axis := r3.Unit(c.Axis)
		images := out.Fold
		if math.Hypot(axis.X, axis.Y) == 0 {
			images = 1
		}
		for i := range images {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(out.Fold))
			turned := r3.Vec{X: cos*axis.X - sin*axis.Y, Y: sin*axis.X + cos*axis.Y, Z: axis.Z}
			out.Clear = append(out.Clear, Cap{turned, c.HalfAngle})
		}
	}
	return out
}

// whole tells whether a rounded zone is the whole sphere without a symmetry.
func (z Zone) whole() bool { return len(z.Clear) == 0 && z.Fold == 1 }

// coaxial tells whether turns about z leave the zone as it is.
func (z Zone) coaxial() bool {
	for _, c := range z.Clear {
		if math.Hypot(c.Axis.X, c.Axis.Y) > 0 {
			return false
		}
	}
	return true
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

// longest is the longest spiral that is tried before a zone counts as empty.
const longest = 1 << 22

// Spiral returns n points on the unit sphere along a spiral from the top down:
// heights in steps of equal area, each turned by the golden angle from the
// last. It takes next to no time and is even to a few percent for any n; below
// 1 it has no points.
func Spiral(n int) []r3.Vec { return SpiralAbove(n, -1) }

// SpiralAbove is [Spiral] for the part of the sphere above a height.
func SpiralAbove(n int, low float64) []r3.Vec {
	points := make([]r3.Vec, max(n, 0))
	for i := range points {
		points[i] = spiralPoint(i, n, low)
	}
	return points
}

// spiralPoint returns the i-th of the n points of a spiral above a height.
func spiralPoint(i, n int, low float64) r3.Vec {
	golden := math.Pi * (3 - math.Sqrt(5))
	z := 1 - (1-low)*(float64(i)+0.5)/float64(n)
	reach := math.Sqrt(1 - z*z)
	sin, cos := math.Sincos(golden * float64(i))
	return r3.Vec{X: reach * cos, Y: reach * sin, Z: z}
}

// spiralWithin returns n points in a zone along a spiral that grows until so many of it are
// in the zone, and of a zone with a symmetry in the first of the parts that repeat; what is
// too many is left out evenly. It is ErrZone where a spiral of four million has not enough.
func spiralWithin(n int, z Zone) ([]r3.Vec, error) {
	for whole := n * max(z.Fold, 1); whole <= longest; {
		var in []r3.Vec
		for i := range whole {
			if p := spiralPoint(i, whole, -1); z.first(p) && z.Contains(p) {
				in = append(in, p)
			}
		}
		if len(in) >= n {
			points := make([]r3.Vec, n)
			for i := range points {
				points[i] = in[(2*i+1)*len(in)/(2*n)]
			}
			return points, nil
		}
		// So many as the share that was found asks for, but for no more than
		// twice as many, and always for some more.
		next := 2 * whole
		if len(in) > 0 {
			next = min(next, whole*n/len(in))
		}
		whole = max(next, whole+1+whole/64)
	}
	return nil, ErrZone
}

// first tells whether a point is in the first of the parts that repeat.
func (z Zone) first(p r3.Vec) bool {
	if z.Fold <= 1 {
		return true
	}
	turn := math.Atan2(p.Y, p.X)
	return turn >= 0 && turn < 2*math.Pi/float64(z.Fold)
}

// draw moves a point that is inside a cap to its border, the shortest way.
// Where caps overlap it may take a few moves; the point may still be outside of
// the zone after many.
func (z Zone) draw(p r3.Vec) r3.Vec {
	for range 50 {
		moved := false
		for _, c := range z.Clear {
			sin, cos := math.Sincos(c.HalfAngle)
			along := r3.Dot(p, c.Axis)
			across := r3.Sub(p, r3.Scale(along, c.Axis))
			if along <= cos+onBorder/10 || r3.Norm(across) == 0 {
				continue
			}
			p = r3.Unit(r3.Add(r3.Scale(cos, c.Axis), r3.Scale(sin, r3.Unit(across))))
			moved = true
		}
		if !moved {
			break
		}
	}
	return p
}

// scatterWithin returns n points anywhere in a zone, all places alike, or nil
// where the zone is so small that chance does not find them.
func scatterWithin(n int, z Zone, random *rand.Rand) []r3.Vec {
	points := make([]r3.Vec, 0, n)
	for range 5000 * n {
		p := r3.Unit(r3.Vec{X: random.NormFloat64(), Y: random.NormFloat64(), Z: random.NormFloat64()})
		if z.Contains(p) {
			if points = append(points, p); len(points) == n {
				return points
			}
		}
	}
	return nil
}
