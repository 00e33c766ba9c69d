// Package limit keeps a stream safe for ears and amplifiers: a fade in, a quick
// fade out at the end or on demand, and a limiter that no peak passes, on the samples or between
// them.
//
// The limiter looks ahead: the gain that a peak needs is held over the look-ahead
// by a sliding least value and smoothed by a mean of the same length, so that it
// has come down in full, and without a corner, when the peak arrives (U. Zölzer
// (ed.), DAFX: Digital Audio Effects, 2nd ed., 2011, chapter 4, and common
// practice). Peaks between the samples are found by truepeak (ITU-R BS.1770-5,
// Annex 2). The sliding least value is kept in a queue that only rises (D.
// Lemire, Nordic J. Computing 13 (2006) 328).
package limit
