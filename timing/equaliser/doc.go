// Package equaliser levels a response: peaking and shelving sections for a
// processor, fitted to a level curve, and filters of many taps.
//
// Sections: R. Bristow-Johnson, Audio EQ Cookbook, W3C Working Group Note (2021):
// peaking EQ and the shelves with Q.
//
// Fit: least squares in dB with limits, one section more at a time, where it
// helps most, then all of them together by the method of Broyden, Fletcher,
// Goldfarb and Shanno (J. Nocedal and S. J. Wright, Numerical Optimization, 2nd
// ed., chapter 6; package gonum optimize). Limits are kept by writing each value
// as the sine of a free one (F. James, MINUIT, CERN D506).
//
// A null that comes from timing, where sounds arrive in opposite phase, cannot be
// filled: the boost is spent on both sounds alike, and only heats the coils. Such
// frequencies are marked, do not count, and get no boost; nor do their edges, where the
// level falls because the sounds drift out of step.
//
// A section that hardly lowers the error fits the noise of one curve, and so do a boost
// and a cut that lean on each other: the limits can forbid both.
//
// Taps: minimum phase by folding the real cepstrum, linear phase by a windowed
// inverse transform (A. V. Oppenheim and R. W. Schafer, Discrete-Time Signal
// Processing, chapters 7 and 13).
//
// Boost costs power and excursion: 3 dB more is twice the power. Set the
// protecting high-pass first.
package equaliser
