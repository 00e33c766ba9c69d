// Package band holds the fractional-octave bands that levels are quoted in.
//
// Bands are those of IEC 61260-1:2014, base ten: the octave ratio is
// G = 10^(3/10) and bands stand round 1 kHz (clause 5). Smoothing is
// the energy mean over a band's width (common practice).
package band
