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
