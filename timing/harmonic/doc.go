// Package harmonic sums a function of the angle to each of many directions, at a cost
// that does not grow with their number. It is pure mathematics: it knows no sound.
//
// Let d be unit vectors with weights w_d, and f a function of the angle gamma between
// one of them and a point's direction x, with the Legendre series
//
//	f(gamma) = sum over n of z_n P_n(cos gamma)
//
// By the addition theorem for spherical harmonics (DLMF 14.30.9; Morse and Ingard,
// Theoretical Acoustics, section 7.2) the sum over all directions is
//
//	sum over d of w_d f(gamma_d(x)) = sum over n, m of z_n e_m N_nm(theta) (C_nm cos m phi + S_nm sin m phi)
//	C_nm = sum over d of w_d N_nm(theta_d) cos m phi_d,  S_nm the same with sin
//
// with n from 0 to the degree, m from 0 to n, e_0 = 1, else e_m = 2, theta from a polar
// axis and phi round it. N_nm are the associated Legendre functions without the
// Condon-Shortley phase, times sqrt((n-m)!/(n+m)!), so that none is above one in size.
//
// Directions that share their weights, as the drivers of a channel do, are a group: [NewSum]
// sums C and S over each group, once for all frequencies, and then over the groups with
// their weights, of which there is a set for each frequency. A [Ring] holds the sum over n for points that
// share z and theta: on a ring round the polar axis. The values at its points then cost a
// sum over m alone. What a slice of a room needs is such rings, if its normal is taken for
// the polar axis.
package harmonic
