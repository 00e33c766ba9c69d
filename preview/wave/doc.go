// Package wave writes streams as WAV files of 16 or 24 bit integers or 32 bit
// floating point samples, with a text that says what is heard.
//
// Container and text chunk: Multimedia Programming Interface and Data
// Specifications 1.0 (IBM and Microsoft, 1991), chapters 2 and 3; floating point with its fact chunk:
// New Multimedia Data Types and Data Techniques 3.0 (Microsoft, 1994). Dither of
// triangular density, two steps wide: S. P. Lipshitz, R. A. Wannamaker and J.
// Vanderkooy, "Quantization and dither", J. Audio Eng. Soc. 40 (1992) 355.
package wave
