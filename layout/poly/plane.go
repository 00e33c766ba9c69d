package poly

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Plane bounds a half-space: the points p with Normal.p <= Offset, in m. The normal is a unit
// vector and points out of the half-space.
type Plane struct {
	Normal r3.Vec
	Offset float64
}

// Above returns how far a point is out of the half-space, in m.
func (p Plane) Above(v r3.Vec) float64 { return r3.Dot(p.Normal, v) - p.Offset }

// Foot returns the point of the plane that is nearest to another.
func (p Plane) Foot(v r3.Vec) r3.Vec { return r3.Sub(v, r3.Scale(p.Above(v), p.Normal)) }

// between returns where the line through two points meets the plane.
func (p Plane) between(a, b r3.Vec) r3.Vec {
	ha, hb := p.Above(a), p.Above(b)
	return r3.Add(a, r3.Scale(ha/(ha-hb), r3.Sub(b, a)))
}

// Clip returns what of a flat convex outline is in half-spaces (I. E. Sutherland and G. W. Hodgman,
// Reentrant polygon clipping, Comm. ACM 17 (1974) 32); nil: nothing.
func Clip(outline []r3.Vec, planes []Plane) []r3.Vec {
	for _, p := range planes {
		var left []r3.Vec
		for i, to := range outline {
			from := outline[(i+len(outline)-1)%len(outline)]
			if in := p.Above(to) < 0; in != (p.Above(from) < 0) {
				left = append(left, p.between(from, to))
			}
			if p.Above(to) < 0 {
				left = append(left, to)
			}
		}
		if outline = left; len(outline) == 0 {
			return nil
		}
	}
	return outline
}

// Bearing returns a direction's azimuth from x counter-clockwise, from 0 to less than a whole turn, and its
// elevation, in rad. Straight up and down the azimuth is 0, and what is below 0 by rounding is 0, too.
func Bearing(v r3.Vec) (azimuth, elevation float64) {
	const rounding = 1e-9 // a thousandth of what anyone could build
	flat := math.Hypot(v.X, v.Y)
	if flat >= rounding*r3.Norm(v) {
		azimuth = math.Atan2(v.Y, v.X)
	}
	if azimuth < -rounding {
		azimuth += 2 * math.Pi
	}
	return max(0, azimuth), math.Atan2(v.Z, flat)
}

// Sector returns the half-spaces between two azimuths in rad about the z axis, at most half a
// turn apart.
func Sector(from, to float64) []Plane {
	side := func(azimuth, sign float64) Plane {
		sin, cos := math.Sincos(azimuth)
		return Plane{Normal: r3.Vec{X: sign * sin, Y: -sign * cos}}
	}
	return []Plane{side(from, 1), side(to, -1)}
}

// Level returns the half-spaces between two heights.
func Level(low, high float64) []Plane {
	return []Plane{{r3.Vec{Z: -1}, -low}, {r3.Vec{Z: 1}, high}}
}

// LeastAlong returns the coordinate axis that a direction leans to least.
func LeastAlong(v r3.Vec) r3.Vec {
	switch x, y, z := math.Abs(v.X), math.Abs(v.Y), math.Abs(v.Z); {
	case x <= y && x <= z:
		return r3.Vec{X: 1}
	case y <= z:
		return r3.Vec{Y: 1}
	}
	return r3.Vec{Z: 1}
}

// Across returns two unit vectors square to a unit direction and to each other; with it they
// are right-handed.
func Across(n r3.Vec) (right, up r3.Vec) {
	away := r3.Vec{Z: 1}
	if math.Abs(n.Z) > 0.9 {
		away = r3.Vec{Y: 1}
	}
	right = r3.Unit(r3.Cross(away, n))
	return right, r3.Cross(n, right)
}

// flatten returns points seen along a direction that points at the eye, so that
// counter-clockwise stays so.
func flatten(points []r3.Vec, towards r3.Vec) []r2.Vec {
	right, up := Across(towards)
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[i] = r2.Vec{X: r3.Dot(p, right), Y: r3.Dot(p, up)}
	}
	return out
}
