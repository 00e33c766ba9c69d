// Package head is what a listener's head does to the sound at the two ears. It
// knows wavenumbers, distances and angles; no medium, no audio.
//
// The head is a rigid ball of radius a with two points on it for the ears; it
// has no outer ear, no nose and no body below it. For a point source at the
// distance r from its centre and at the angle theta from the ray through an
// ear, the pressure at the ear over that at the place of the centre with the
// head away is (R. O. Duda and W. L. Martens, "Range dependence of the response
// of a spherical head model", J. Acoust. Soc. Am. 104 (1998) 3048), here with
// time factor exp(+i omega t) and spherical Hankel functions of the second kind,
//
//	H(k, r, theta) = -(r/a) exp(ikr)/(ka) * sum over n of (2n+1) P_n(cos theta) h_n(kr)/h_n'(ka)
//
// By reciprocity it is the field outside of a point source on the ball, which
// package ball sums: a cap so small that it is a point.
//
// The radius is 87.5 mm, the one that Duda and Martens take (from R. S. Woodworth
// and G. Schlosberg, Experimental Psychology). They put the ears at the ends of
// one diameter; here they lie 100 degrees from the nose, a little behind, as in
// C. P. Brown and R. O. Duda, "A structural model for binaural sound synthesis",
// IEEE Trans. Speech Audio Process. 6 (1998) 476 (the angle from memory).
//
// The delay between the ears is the one of the ball: 3 (a/c) sin(azimuth) at low
// frequencies (G. F. Kuhn, J. Acoust. Soc. Am. 62 (1977) 157) and at high ones
// (a/c)(azimuth + sin(azimuth)), Woodworth's.
package head
