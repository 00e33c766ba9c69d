// Package body makes the closed surfaces that carry drivers: the five regular
// and the thirteen half-regular solids, geodesics of every class, prisms and
// antiprisms, the duals of all these, convex bodies from files, the ball, and
// domes cut from them.
//
// Every body is convex, wound counter-clockwise seen from outside, and has the
// centre of its sphere at the origin; a body from a file has its file's origin
// there. Lengths are in m, x points forward, y
// left, z up, azimuths run counter-clockwise from x. A body is not changed once
// it is made: what is cut from it is another one, which may share its slices.
//
// How bodies stand:
//
//	tetrahedron   a vertex on top, a face below; one lower vertex at azimuth 0
//	octahedron    a vertex on top and one below; one of the others on x
//	icosahedron   a vertex on top and one below; one of the upper ring at azimuth 0
//	cube          a face on top and one below; one side faces x
//	dodecahedron  a face on top and one below; one of the upper sides at azimuth 0
//
//	prism         an end on top and one below; one side faces x
//	antiprism     an end on top and one below; one of the upper corners at azimuth 0
//
// A half-regular solid stands with a face on top and one below, as it comes from
// the octahedron, the icosahedron or, the truncated one, the tetrahedron: its
// top face is where their top vertex was. Of the two mirror images of a snub
// solid it is the one whose top face is turned clockwise, seen from above,
// from where a cube's is, by 16.5 degrees, or a dodecahedron's, by 13.1.
//
// The cube and the dodecahedron so have a face wherever the octahedron and the
// icosahedron have a vertex. A geodesic stands as its base does: that of an
// octahedron, and that of an icosahedron at an even subdivision, has an equator
// of edges at z = 0 exactly, where a cut halves it.
//
// Vertices, faces and edges run from the top down, those of one height by
// azimuth from x (see [Order]). A cut keeps the order of what it leaves; new
// vertices come after the old and the base is the last face.
//
// Sources. Solids: H. S. M. Coxeter, Regular Polytopes, 3rd ed., table I; H. M.
// Cundy and A. P. Rollett, Mathematical Models, 2nd ed., 1961, 3.7 and 3.8.
// Geodesics: class I as in H. Kenner, Geodesic Math and How to Use It, 1976:
// each flat face is divided evenly and its points are pushed out to the sphere.
// Classes II and III: D. L. D. Caspar and A. Klug, Cold Spring Harb. Symp.
// Quant. Biol. 27 (1962) 1; H. S. M. Coxeter, Virus macromolecules and geodesic
// domes, 1971. Volumes: the divergence theorem, as a sum of tetrahedra from the centre;
// of a cut ball: the spherical cap, Archimedes.
package body
