// Package through hears a stream through an impulse response.
//
// The convolution is overlap-save in uniform partitions with a line of past
// spectra (W. G. Gardner, J. Audio Eng. Soc. 43 (1995) 127; F. Wefers,
// Partitioned Convolution Algorithms for Real-Time Auralization, 2015, chapter
// 4). Left and right travel as the real and imaginary part of one complex
// transform: a real impulse response keeps them apart, and of a source that is
// mono and so real, a complex one makes what two ears hear.
package through
