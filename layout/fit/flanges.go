package fit

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// Pair is two mounts whose flanges touch or overlap.
type Pair struct {
	A, B int     // indices of the mounts, A < B
	Gap  float64 // m, 0 or below: minus what both flanges are too wide
}

// rounding is the length over the flange's radius that arithmetic may be off by.
const rounding = 1e-9

// Flanges returns the pairs of flanges that touch or overlap, in order of their
// mounts. Points are in m, normals of unit length, the radius of every flange
// in m; one that is not above 0 has no pairs. It panics if there are not as
// many normals as points.
//
// Points are swept along x, so that only those within a flange's width of each
// other are compared.
func Flanges(points, normals []r3.Vec, flangeRadius float64) []Pair {
	if len(points) != len(normals) {
		panic("fit: points and normals differ in number")
	}
	if !(flangeRadius > 0) {
		return nil
	}
	order := make([]int, len(points))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(points[a].X, points[b].X) })
	slack := rounding * flangeRadius
	width := 2*flangeRadius + slack
	var pairs []Pair
	for at, i := range order {
		for _, j := range order[at+1:] {
			across := r3.Sub(points[j], points[i])
			if across.X > width {
				break
			}
			if !(r3.Norm2(across) <= width*width) {
				continue
			}
			if gap := Gap(points[i], normals[i], points[j], normals[j], flangeRadius); gap <= slack {
				pairs = append(pairs, Pair{min(i, j), max(i, j), min(gap, 0)})
			}
		}
	}
	slices.SortFunc(pairs, func(p, q Pair) int { return cmp.Or(cmp.Compare(p.A, q.A), cmp.Compare(p.B, q.B)) })
	return pairs
}

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
