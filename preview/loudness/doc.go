// Package loudness measures how loud a programme is, in LUFS, by Recommendation
// ITU-R BS.1770-5 (2023), Annex 1: each channel is weighted (K-weighting), its
// mean square taken over blocks of 400 ms that begin every 100 ms, and the blocks
// averaged that lie above a gate, first at -70 LUFS, then 10 LU below the mean of
// those. LKFS is another name of the same unit; EBU R 128 and Tech 3341 call it
// LUFS.
//
// The standard gives the weighting as two second-order sections at 48 kHz only.
// Here each goes back to its analogue prototype by the inverse of the bilinear
// transform, with its own corner frequency kept in place, and from there to any
// other rate (A. V. Oppenheim and R. W. Schafer, Discrete-Time Signal Processing,
// chapter 7).
//
// Sub-package truepeak measures the peak between the samples, by Annex 2.
package loudness
