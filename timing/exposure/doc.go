// Package exposure says how long ears may be in a sound, and weighs sound as
// ears do.
//
// Allowed time: NIOSH, Criteria for a Recommended Standard: Occupational Noise
// Exposure, Publication 98-126 (1998), chapter 1: 8 hours at 85 dBA, half of that
// for each 3 dB more, and nothing above 140 dBA. It was made for working adults
// over a working life; for children, and for a place where people come to enjoy
// themselves, stay well below it (common practice). Local law comes first.
//
// A weighting: IEC 61672-1:2013, annex E, with the exact pole frequencies; 0 dB
// at 1 kHz.
package exposure
