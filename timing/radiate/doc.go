// Package radiate says what places in the room hear of an array.
//
// A Field answers the complex pressure of mounts at a place; a Scene is an array with its
// field and the ways by which it is heard, and gives what each driver gives (Hear, Each) or
// the sum of all (Sum, over harmonics on a ball). Models are small types behind constructors,
// each for one slice of frequencies:
//
//   - Point: a point source in open air; the body is not there. 1/r along the
//     straight line (Morse and Ingard, Theoretical Acoustics, 1968, 7.1).
//   - Baffle: a flat piston in an infinite baffle at the mount, silent behind it:
//     twice the point source times 2 J1(ka sin)/(ka sin) (Kinsler, Frey, Coppens
//     and Sanders, Fundamentals of Acoustics, 4th ed., 7.4).
//   - Sphere, the default: a cap on a rigid ball of the body's volume, wherever on its own
//     direction the mount is (Morse and Ingard, ch. 7). Held to an independent
//     boundary-element solution of a driver on a dodecahedron's face
//     (testdata/reference/faceted_given.csv): within 0.3 dB and 5 us to 500 Hz, 1 dB at
//     1 kHz, up to 4 dB near its front above. Of regular solids with a driver a face, all in
//     parallel (Leishman, Rollins and Smith, see omni.Spatial, from memory), it has the order
//     of the limits of evenness as measured, the tetrahedron's lowest and the dodecahedron's
//     among the highest, but the tetrahedron as the least even on the mean of 100 Hz to 4 kHz,
//     where it was measured as the evenest (TestSolids of package timing): it has no faces and
//     no edges.
//   - Body: a flat round piston on the body as it is, with its faces, cut and floor, and the
//     surface that it stands over, by boundary elements (package boundary); solved for once and
//     kept, up to the design's solve_to_hz, in waves about the ball's centre. Within the next
//     quarter of an octave the sphere takes over, without a step. Within twice the uncertainty of the
//     same solutions plus 0.1 dB and 1 degree at every row, 250 Hz to 4 kHz (TestBodyFaceted),
//     and 0.05 dB of the sphere where the body is one; a Solution tells how far two meshes are
//     apart. Nearer than 1.02 times the farthest corner it is heard as there, and bodies in a
//     room, or several of them, do not bend each other's sound. Of the solids above it has the
//     same order of the limits, the tetrahedron's at 0.9 kHz and the dodecahedron's at 1.9 kHz, and
//     the tetrahedron evener than by the ball, 1.9 dB in place of 3.4 on the mean: than cube and
//     octahedron, and than all from 2 to 4 kHz, but not than dodecahedron and icosahedron, 1.7 and
//     1.6 dB, which below their limits, without what differs between real drivers and gives way
//     in real walls, are all but even. Cones of another size change these means by more.
//
// Time factor exp(+i omega t) throughout.
package radiate
