// Package through hears a stream through an impulse response.
//
// The convolution is overlap-save in uniform partitions with a line of past
// spectra (W. G. Gardner, J. Audio Eng. Soc. 43 (1995) 127; F. Wefers,
// Partitioned Convolution Algorithms for Real-Time Auralization, 2015, chapter
// 4). Left and right travel as the real and imaginary part of one complex
// transform, which a real impulse response keeps apart.
package through
