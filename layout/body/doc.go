// Package body makes the closed surfaces that carry drivers: the five regular
// solids, geodesics, the ball, and domes cut from them.
//
// Solids: H. S. M. Coxeter, Regular Polytopes, 3rd ed., table I. Geodesics:
// class I divisions as H. Kenner describes them, Geodesic Math and How to Use
// It, 1976: each flat face is divided evenly and its points are pushed out to
// the sphere. Volumes are sums of tetrahedra from the centre (divergence
// theorem).
//
// All bodies are convex, wound counter-clockwise seen from outside, and have
// the centre of their sphere at the origin. The tetrahedron, the octahedron and
// the icosahedron stand on a vertex with another (the tetrahedron: a vertex) on
// top, so that an even subdivision of the last two has an equator of edges; the
// cube and the dodecahedron lie on a face.
package body
