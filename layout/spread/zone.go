package spread

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with a zone.
var (
	ErrZone     = errors.New("the zone leaves no room")
	ErrCap      = errors.New("a cap needs a direction and a half-angle from 0 to pi")
	ErrApart    = errors.New("points must be apart by an angle from 0 to pi")
	ErrSymmetry = errors.New("the count must be a multiple of the symmetry, or that and 1 or 2 on the axis")
)

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

// Above returns the cap over a height on the unit sphere.
func Above(height float64) Cap {
	return Cap{Axis: r3.Vec{Z: 1}, HalfAngle: math.Acos(height)}
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
			return prose.Errorf("%w: cap %d has direction %v, half-angle %g", ErrCap, i+1, c.Axis, c.HalfAngle)
		}
	}
	if !(z.Apart >= 0 && z.Apart <= math.Pi) {
		return prose.Errorf("%w, not %g", ErrApart, z.Apart)
	}
	if z.Fold < 0 || z.Fold > Most || z.Fold > 1 && n%z.Fold > 2 {
		return fmt.Errorf("%w: %d points, symmetry %d", ErrSymmetry, n, z.Fold)
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
			out.Clear = append(out.Clear, Cap{turned(axis, i, out.Fold), c.HalfAngle})
		}
	}
	return out
}

// turned turns a vector about z by so many of the parts of a whole turn.
func turned(p r3.Vec, part, parts int) r3.Vec {
	sin, cos := math.Sincos(2 * math.Pi * float64(part) / float64(parts))
	return r3.Vec{X: cos*p.X - sin*p.Y, Y: sin*p.X + cos*p.Y, Z: p.Z}
}

// longest is the longest spiral that is tried before a zone counts as empty.
const longest = 1 << 22

// SpiralWithin returns n points in a zone along a spiral (see [Spiral]) of as
// many points as it takes, whose surplus is left out evenly, from the top down.
// It takes little time, and n may be up to ten times Most. Its points follow no
// symmetry, so Fold must be 0 or 1. A zone that a spiral of four million points
// has not n points in counts as empty. Errors wrap ErrCount, ErrCap,
// ErrApart, ErrSymmetry and ErrZone.
func SpiralWithin(n int, z Zone) ([]r3.Vec, error) {
	if n < 1 || n > 10*Most {
		return nil, fmt.Errorf("%w, times ten for a spiral, not %d", ErrCount, n)
	}
	if z.Fold > 1 {
		return nil, fmt.Errorf("%w: a spiral has none", ErrSymmetry)
	}
	if err := z.check(n); err != nil {
		return nil, err
	}
	return spiralWithin(n, z)
}

// spiralWithin lets the spiral grow until n of it are in the zone, and of a
// zone with a symmetry in the first of the parts that repeat.
func spiralWithin(n int, z Zone) ([]r3.Vec, error) {
	for whole := n * max(z.Fold, 1); whole <= longest; {
		var in []r3.Vec
		for i := range whole {
			if p := spiralPoint(i, whole); z.first(p) && z.Contains(p) {
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
		if p := scatter(1, random)[0]; z.Contains(p) {
			if points = append(points, p); len(points) == n {
				return points
			}
		}
	}
	return nil
}
