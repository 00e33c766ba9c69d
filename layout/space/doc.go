// Package space lists the layouts that a search may try, and says what of them needs no sound:
// how many drivers, what they cost, weigh and measure, and which limits they break.
//
// A space is a sum of blocks, each a product of axes. Every candidate is worked out from its
// number (mixed radix, the last axis fastest), so that a space of any length takes no memory.
//
// # The space of a design without choices of its own
//
//   - Drivers on the faces of the regular and half-regular solids and of their duals (of which
//     all faces are alike), and of geodesics of the icosahedron and the octahedron in all
//     classes and their duals. Geodesics of the tetrahedron are left out: their faces are the
//     most unlike.
//   - Drivers spread evenly over a ball, and over what is above a cut.
//   - Bodies with flat faces whole, and cut between two rings of places where no flange and no
//     cut-out is in the way of the cut.
//   - Radii from the least that takes the driver, each a step larger, up to the width that is
//     allowed, or until the flanges cover too little of the body.
//   - Turned by parts of the angle at which the places come to lie where they were.
//
// Corners and edges carry no flange that fits, and even places on flat faces fall on edges:
// both are left out.
package space
