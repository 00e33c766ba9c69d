// Package trust says how far the level of one driver can be off because a ball stands
// for the body.
//
// A ball is smooth; a body of flat faces is not. An independent boundary-element solution
// (testdata/reference/faceted_given.csv: round pistons on a rigid dodecahedron, 12 faces,
// and on half of one with its floor, in free air) gives the error at each frequency. The
// same method gives up to 3 dB for 6 faces and 2 dB for 20 from 1 to 2 kHz, and 0.3 dB at 2
// kHz for 80, all of 150 mm; of those there is no table here. All of it is near the front
// of the driver; behind the body, where there are nulls, decibels mean little.
//
// Between those bodies the error goes by how far the middles of the faces lie off the
// ball, over its radius, and in frequency by ka, the ball's girth over the wavelength.
// From ka 3.6 on, where the dodecahedron is farthest off, that largest error is held: the
// table shows less there, but at other angles than it has rows for it may be more.
package trust
