// Package directivity measures what a source radiates in all directions: power
// and directivity index, by quadrature over a sphere.
//
// The rule is Gauss-Legendre along the polar axis and even steps round it: with
// N+1 rings (or one more) of 2N+1 directions it is exact for all spherical harmonics to degree
// 2N, so for the squared size of any pressure that is a sum of harmonics to
// degree N (Abramowitz and Stegun, Handbook of Mathematical Functions, 25.4.29;
// Rafaely, Fundamentals of Spherical Array Processing, chapter 3).
//
// A source that a sphere of radius a encloses sends next to nothing to a far
// field beyond degree ka and a margin: spherical Hankel functions grow without
// bound there. The margin for d right digits is 1.8 d^(2/3) (ka)^(1/3) (Chew, Jin,
// Michielssen and Song, Fast and Efficient Algorithms in Computational
// Electromagnetics, 2001, chapter 3, quoted from memory), which falls short where
// ka is small; see Degree.
package directivity
