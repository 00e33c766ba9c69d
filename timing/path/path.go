// Package path says how far sound travels from a mount on a round body to a
// point in the room.
//
// Where the mount can be seen from the point, sound takes the straight line.
// Where it cannot, the first sound follows the shortest way round the ball: along
// the surface to the tangent that leads to the point, then straight on (J. B. Keller,
// "Geometrical theory of diffraction", J. Opt. Soc. Am. 52 (1962) 116: the creeping
// ray obeys Fermat's principle).
//
// A mount in or out of the ball of the body's volume is first moved to it
// (body.Body.OnBall). With its own, smaller distance a driver on a dodecahedron's face
// came out 32 us too early to 68 us too late against an independent boundary-element
// solution; the shortest way over the real faces is not worth its code either
// (testdata/reference/geodesic_paths.csv).
package path

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Round returns the length in m of the shortest way from a mount at radius
// mount to a point at radius point, both measured in m from the centre of
// the ball round which sound goes, with the angle gamma between them in rad (0 to pi), that does not enter the
// ball of the smaller of the two radii. seen tells that this is the straight
// line.
//
//	straight:  sqrt(D^2 + rho^2 - 2 D rho cos gamma)   while cos gamma >= rho/D
//	round:     sqrt(D^2 - rho^2) + rho (gamma - arccos(rho/D))
//
// Length and slope are continuous where the one becomes the other, and the
// length is never below the straight line's. The way is the same in both
// directions, so a point nearer to the centre than the mount is served too.
func Round(mount, point, gamma float64) (length float64, seen bool) {
	inner, outer := mount, point
	if inner > outer {
		inner, outer = outer, inner
	}
	cos := math.Cos(gamma)
	if outer*cos >= inner {
		return Straight(mount, point, gamma), true
	}
	if inner == 0 {
		return outer, true
	}
	arc := gamma - math.Acos(inner/outer)
	return math.Sqrt((outer-inner)*(outer+inner)) + inner*arc, false
}

// Straight returns the straight distance in m for the same arguments as Round.
// It takes the law of cosines in the form (D-rho)^2 + 4 D rho sin^2(gamma/2),
// which keeps its digits where the two points nearly meet.
func Straight(mount, point, gamma float64) float64 {
	half := math.Sin(gamma / 2)
	d := point - mount
	return math.Sqrt(d*d + 4*point*mount*half*half)
}

// Between returns Round's answer for two places, and the straight distance, in
// m, measured from that centre at the origin: callers take off where the ball stands.
func Between(mount, point r3.Vec) (length, straight float64, seen bool) {
	length, seen = Round(r3.Norm(mount), r3.Norm(point), Angle(mount, point))
	straight = r3.Norm(r3.Sub(point, mount))
	if seen {
		length = straight
	}
	return length, straight, seen
}

// Angle returns the angle in rad, 0 to pi, between two directions; 0 where
// either has no length. It is good to the last digits near 0 and pi, where the
// arc cosine is not.
func Angle(a, b r3.Vec) float64 {
	return math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b))
}
