// Package intake judges single drivers before they are built in, from a folder with what was
// measured of each: its impedance, and what a microphone heard of the sweep; and says which go
// where in a plan, and what that brings.
//
// Each driver is held against the others by the median and the median absolute deviation, which
// a few odd ones do not move: one is odd whose value x has
//
//	abs(x - median) > 3.5 sqrt((1.4826 MAD)2 + sigma2)
//
// with its own standard error sigma (B. Iglewicz and D. C. Hoaglin, How to Detect and Handle
// Outliers, 1993, for the 3.5), and that is off by more than data sheets leave open as well: in a
// lot that is alike within a percent nobody sends a driver back for being off by two. Resonance,
// Q and resistance are held against each other as logarithms. With fewer than five drivers the
// design is asked in place of the others, if there is one.
package intake
