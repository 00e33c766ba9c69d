// Package figure draws plans as pictures, PNG or SVG: responses, polar
// diagrams, slices of the room and arrivals; and sounds as spectrograms and
// impulse responses as energy over time.
//
// Curves are smoothed to third octaves, the bands of IEC 61260-1:2014. Line
// colours are the eight of M. Okabe and K. Ito, Color Universal Design (2008),
// without the yellow, each with dashes of its own, so that no curve is told by
// colour alone. The colour map of slices goes through five colours of our own
// the way of K. Moreland's luminance maps ("Why we use bad color maps and what
// you can do about it", Human Vision and Electronic Imaging 2016), which
// gonum/plot carries: straight lines in CIELAB, lightness in proportion to the
// value. Windows of spectra are told by F. J. Harris, Proc. IEEE 66 (1978) 51, the
// backward integral by M. R. Schroeder, JASA 37 (1965) 409.
//
// A function of this package keeps nothing between calls, so that several may
// run at once.
package figure
