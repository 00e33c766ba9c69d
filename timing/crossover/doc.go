// Package crossover is the high-pass and low-pass filters that share the work
// between loudspeakers and keep their cones alive, as sections of first and
// second order: as analog responses and as coefficients for a processor.
//
//   - Butterworth, order 1 to 8: flattest; -3.01 dB at the corner (S. Butterworth,
//     "On the theory of filter amplifiers", Experimental Wireless 7 (1930) 536).
//   - Linkwitz-Riley, order 2, 4, 6 and 8: a Butterworth filter of half the order
//     twice; -6.02 dB at the corner; low-pass and high-pass add up to an
//     all-pass, for order 2 and 6 with one of them inverted (S. H. Linkwitz,
//     "Active crossover networks for noncoincident drivers", J. Audio Eng. Soc.
//     24 (1976) 2; S. P. Lipshitz and J. Vanderkooy, J. Audio Eng. Soc. 31 (1983)
//     82).
//   - Bessel, order 1 to 8: flattest delay of the low-pass (W. E. Thomson, Proc.
//     IEE 96 III (1949) 487), scaled so that the level at the corner is -3.01 dB;
//     other scalings, by delay or by phase, are in use too. The high-pass is the
//     low-pass with s turned into 1/s: its slope is the same, but its delay is
//     not flat.
//
// The digital filters come from the bilinear transform, prewarped so that the
// response at the corner is exactly the analog one (A. V. Oppenheim and R. W.
// Schafer, Discrete-Time Signal Processing, chapter 7).
package crossover
