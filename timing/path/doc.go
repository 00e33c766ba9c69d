// Package path says how far sound travels from a mount on a round body to a
// point in the room.
//
// Where the mount can be seen from the point, sound takes the straight line.
// Where it cannot, the first sound follows the shortest way round the ball
// through the mount: along the surface to the tangent that leads to the point,
// then straight on (J. B. Keller, "Geometrical theory of diffraction",
// J. Opt. Soc. Am. 52 (1962) 116: the creeping ray obeys Fermat's principle).
package path
