// Package boundary is the field of round pistons on a rigid convex body of flat or round faces,
// in free air or over a rigid plane, by boundary elements. It is pure mathematics of
// wavenumber and place; it knows no medium, no drivers and no design.
//
// # What is solved
//
// The time factor is exp(+i omega t). All pressures are over that of a point source of equal
// volume velocity Q at 1 m, i omega rho Q/4pi, as in package ball, but with their delay: a point
// source at y is heard at x as exp(-ikR)/R, R = |x-y|. Let G = exp(-ikR)/4piR, n the normal out of the body.
// The pressure p obeys the wave equation outside, is outgoing far away, and on the surface its
// slope along n is nothing but on a piston of radius a, where it is -4/a^2 (all of 4 pi leaves
// through the disc). Green's theorem makes an integral over the surface of it (Pierce, Acoustics,
// 1989, 4-6; Burton and Miller, Proc. R. Soc. A 323, 1971, 201):
//
//	c p(x) = given(x) + integral of p(y) dG/dn(y) dS(y),   c = 1 outside, 1/2 on the surface, 0 inside
//
// given is what the piston sends out by itself, the mean of exp(-ikR)/R over its disc. The
// integral is the double layer D p: what the body sends back.
//
// # Equations that have one solution
//
// The equation on the surface, p/2 - D p = given, has no single solution at the wavenumbers at
// which air in place of the body would ring with no pressure on the wall; near these a mesh
// finds anything. That inside the pressure is nothing, -D p = given, is true at all
// wavenumbers and cures it where it is asked for at enough places: at a few in CHIEF (Schenck,
// JASA 44, 1968, 41), here on a whole second surface, the body drawn in towards a place Inside, by
// half the way or a quarter of a wavelength, whichever is less. Each node has one equation, the
// first plus 0.3 i times the second; with an imaginary factor and a distance below half a
// wavelength no wavenumber is left at which a ringing obeys both (dual surface
// equations: Tobin, Yaghjian and Bell, 1987, for electric fields; from memory). No integral is more singular than those
// that are there anyway, as in Burton and Miller's equation for the slope. Where nothing can
// ring yet, below k size = pi, the factor fades to nothing.
//
// # Mesh and integrals
//
// A flat face of n corners is n kites, a ball six or ten curved patches; each is the map of a square,
// cut into elements with up to six Gauss-Legendre nodes a side, on which p is the polynomial
// through the nodes (collocation at the nodes; a Nyström method with corrected weights, as in
// Kress, Linear Integral Equations, chapter 12). Beside a sharp edge p goes with the distance to a power below one
// (Pierce, 9-8), and a narrow element comes first. The layer of a flat face on itself is nothing.
// Of other elements that are far, the nodes themselves are the quadrature; nearer ones are cut until
// each piece is far beside its size.
//
// # Pistons
//
// given has a slope without end at the disc's rim. It is split: the part 1/R, in closed form by complete
// elliptic integrals on the disc's plane, and a smooth rest, a sum round the rim. On its own face p
// is 2 given and a smooth rest, whatever the mesh; what a mesh cannot show of the former acts on
// nothing on that flat face, and on others only through its means. So the right side near a piston
// is not given at the nodes but its projection on the elements' polynomials, and pistons may be far smaller than
// elements. On curved patches a logarithm in the way to a small piston is left: nodes are nearer there.
//
// # Plane
//
// A rigid plane doubles each place of the equations by its mirror image (dG/dn(x) and dG/dn of x
// mirrored), with the same unknowns. A face that lies on it, as good as, is left out: what it adds is what
// its image takes. What a solution gives is the field without the plane's image: who listens adds
// the value at the place mirrored.
//
// # Symmetry and solution
//
// All turns and reflections that take the body's corners to themselves, and leave the plane, are
// found from the corners. If one takes nodes to nodes, the equation of the node turned is the equation
// turned, so only one of as many rows is set up (a dodecahedron's 120 turns leave 36 rows of 3,840), and a piston that is another turned has its solution turned.
// The equations are solved for all pistons in one space (see krylov).
//
// # Error and cost
//
// Against an independent solution (testdata/reference/faceted_given.csv) a dodecahedron is within
// 0.01 dB and half of one within 0.05 dB, which is about what that solution knows of itself; against the series of a cap, a
// ball within 0.03 dB to 5 kHz. choices.go has what each number changes. Slabs and gaps
// thinner than a tenth of the body's size are within 0.1 dB, gaps of 0.5 to 2 mm within 0.1 dB at 2 kHz,
// where real air is held up by its viscosity, which is not in the equations. The body must be
// convex, or at least be seen whole from Inside by every place of its surface; it is rigid, and
// pistons are flat and move as one.
//
// With n nodes, r rows, s right sides and t turns a wavenumber costs about 60 ns r n for
// each layer (two, with a plane four), 16 r n s t floating-point operations a round, 5 to 20 rounds, and 16 r n bytes.
package boundary
