// Package biquad is the second-order section that processors are set with: five
// coefficients at a sampling rate.
//
//	y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2]
//
// that is, a0 is 1 and a1 and a2 are subtracted, as in the W3C Audio EQ Cookbook
// (R. Bristow-Johnson, W3C Working Group Note, 2021) once divided by its a0. Some
// processors add instead, and want a1 and a2 with the other sign: where this is
// overlooked, the output can rise without bound, so set it with the amplifier
// off.
//
// Sources: the cookbook; the transposed direct form and the triangle of
// stability from A. V. Oppenheim and R. W. Schafer, Discrete-Time Signal
// Processing, chapter 6.
package biquad
