// Package figure draws plans as pictures, PNG or SVG: responses, polar
// diagrams, slices of the room and arrivals.
//
// Curves are smoothed to third octaves, the bands of IEC 61260-1:2014. Line
// colours are the eight of M. Okabe and K. Ito, Color Universal Design (2008),
// without the yellow, each with dashes of its own, so that no curve is told by
// colour alone. The colour map of slices is K. Moreland's extended black body
// ("Why we use bad color maps and what you can do about it", Human Vision and
// Electronic Imaging 2016), which gonum/plot carries, between 5 and 95 percent
// of its length; its lightness rises evenly.
//
// A function of this package keeps nothing between calls, so that several may
// run at once.
package figure
