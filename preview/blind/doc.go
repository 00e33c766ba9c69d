// Package blind runs a blind test of whether two sounds can be told apart: in
// each of ten tries A, B and X may be heard at will, X being one of the two, and
// the listener says which (D. Clark, "High-resolution subjective testing using a
// double-blind comparator", J. Audio Eng. Soc. 30 (1982) 330; equal loudness is
// the caller's part).
//
// How well one does by guessing alone follows the binomial distribution: the
// chance of so many right answers or more is its upper tail (M. Abramowitz and I.
// A. Stegun, Handbook of Mathematical Functions, 26.1.20 and 26.5.24). A chance
// under 5 % is commonly taken as a sign that a difference was heard (common
// practice). A higher one does not show that there is none.
package blind
