package fit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// rounding is the length over the flange's radius that arithmetic may be off by.
const rounding = 1e-9

// Gap returns by how many m the diameter of two flanges may grow until they
// touch; below 0, by how much it must shrink until they no longer overlap. It is
// +Inf where they never would: in planes that are parallel and apart.
// Points are in m, normals of unit length, the radius of both flanges in m.
func Gap(p, pNormal, q, qNormal r3.Vec, flangeRadius float64) float64 {
	return 2 * (meetingRadius(p, pNormal, q, qNormal) - flangeRadius)
}

// level is how far off each other's planes, over their distance, two mounts may
// be and still count as in one plane.
const level = 0.02

// meetingRadius returns the radius at which discs round p and q just touch.
func meetingRadius(p, m, q, n r3.Vec) float64 {
	across := r3.Sub(q, p)
	far := r3.Norm(across)
	pOff, qOff := math.Abs(r3.Dot(across, n)), math.Abs(r3.Dot(across, m))
	if max(pOff, qOff) <= level*far {
		return far / 2
	}
	along := r3.Cross(m, n) // the line in which the planes meet
	sin := r3.Norm(along)
	if sin <= rounding {
		return math.Inf(1)
	}
	return lowestCommon(pOff/sin, qOff/sin, math.Abs(r3.Dot(across, along))/sin)
}

// lowestCommon returns the least radius of two circles whose centres stand off
// a line by ph and qh, with their feet so far apart, at which both hold one
// point of the line.
func lowestCommon(ph, qh, apart float64) float64 {
	// At t from the first foot the greater of hypot(ph, t) and hypot(qh,
	// apart-t) counts. It is least at a foot if the circle there reaches no
	// less far than the other, else where both are equal.
	if ph >= math.Hypot(qh, apart) {
		return ph
	}
	if qh >= math.Hypot(ph, apart) {
		return qh
	}
	t := (apart*apart + (qh-ph)*(qh+ph)) / (2 * apart)
	return math.Hypot(ph, t)
}
