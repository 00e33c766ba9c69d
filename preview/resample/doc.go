// Package resample changes the rate of a signal, in pieces of any size.
//
// The filter is a sinc in a Kaiser window, cut to its phases (A. V. Oppenheim and
// R. W. Schafer, Discrete-Time Signal Processing, section 4.6 for the change of
// rate, 7.5 for the window, whose design formulas are J. F. Kaiser's of 1974).
// Where the two rates have so little in common that the phases would be too many,
// the coefficients are interpolated between neighbouring phases (J. O. Smith and
// P. Gossett, "A flexible sampling-rate conversion method", ICASSP 1984).
//
// With the lower of the two rates as 1, the response is flat to 0.45 and gone at
// 0.5, so that nothing is folded back and no image is left, to 100 dB. Delay is
// none: sample 0 of the output is at the time of sample 0 of the input.
package resample
