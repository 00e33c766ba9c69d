// Package ball is the field of one driver on a rigid ball: a polar cap that
// moves with uniform radial velocity on an otherwise rigid sphere. It is pure
// mathematics of wavenumber, distance and angle; it knows no medium and no
// mounts.
//
// The time factor is exp(+i omega t). With a the ball's radius, r >= a the
// distance of the point from the centre, gamma the angle between the cap's
// axis and the point as seen from the centre, and alpha the cap's half angle,
// the pressure over that of a point source of equal volume velocity at 1 m in
// free air, its delay taken out, is
//
//	H(k, r, gamma) = exp(-ikr)/r * sum over n of q_n c_n P_n(cos gamma)
//	q_n = (P_{n-1}(cos alpha) - P_{n+1}(cos alpha)) / (1 - cos alpha),  q_0 = 1
//	c_n = -(r/a) exp(ikr) h_n(kr) / (ka h_n'(ka))
//
// with spherical Hankel functions of the second kind and their derivative by
// the argument: Morse and Ingard, Theoretical Acoustics, chapter 7 (vibrating
// spheres); Beranek and Mellow, Acoustics: Sound Fields, Transducers and
// Vibration, section 12.6 (cap in a sphere). q_n is 2n+1 times the mean of P_n
// over the cap.
//
// # How it is summed
//
// Nothing here forms h_n, which grows like (2n-1)!!. With
// D_n(z) = z h_n(z)/h_{n-1}(z) the recurrence DLMF 10.51.1 reads
//
//	D_{n+1}(z) = 2n+1 - z^2/D_n(z),   D_1(z) = 1 + iz
//
// and runs upward without loss, since |h_n| grows with n. Then, with
// t_n(z) = z^2/D_n(z) and t_0 = -iz,
//
//	c_n = exp(ika) * (product over j = 1..n of (a/r) D_j(kr)/D_j(ka)) / (n+1 - t_n(ka))
//
// where each factor of the product is at most one in size. The limits k -> 0,
// (a/r)^n/(n+1), and r -> infinity come out of the same formula.
//
// # Where it ends
//
// The following bound holds for the rest of the series from the N-th term on;
// every sum here ends by it. M_n(z) = z|h_n(z)| is the root of a polynomial in
// 1/z^2 with positive coefficients, the first of them one (DLMF 10.49.18); the
// k-th coefficient of degree n+1 is (n+1+k)/(n+1-k) times that of degree n.
// So M_n >= 1 and |h_n| >= |h_{n-1}|, hence
//
//	|D_n(z)| >= z,  |D_n(z)| >= 2n-1-z,  |t_n(z)| <= T_n(z) = z^2/(2n-1-z)  for 2n-1 > z
//
// Also Re t_n lies in 0..n (n - Re t_n is a mean of the numbers 0..n, weighted
// by the polynomial's terms) and |Im t_n| = z/M_n^2 <= z (the Wronskian, DLMF
// 10.50.1), hence |D_{n+1}(z)|^2 <= (2n+1)^2 + z^2. So one factor of the
// product is never above
//
//	rho_n = sqrt((a/r)^2 + (ka/(2n+1))^2) / (1 - T_n(ka)/(2n+1)),
//
// which falls as n grows. With |P_n| <= 1 and the bound of DLMF 18.14.7
// on P_n(cos alpha), |q_n| <= min(2n+1, 2 sqrt(2/(pi (n-1/2) sin alpha))/(1-cos alpha)),
// the rest of the series is at most
//
//	|product up to N| * max over n >= N of |q_n|/(n+1-T_n) / (1 - rho_N).
//
// It falls too slowly on the surface and just above; see [Nearest].
package ball
