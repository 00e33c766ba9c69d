// Package measure holds the figures of merit of an array at a point: smear,
// summing loss and comb onset, and how even a circle of levels is.
//
// Smear is the energy-weighted RMS spread of the arrivals: the square root of
// the second central moment of the arrivals, weights being squared pressures
// (the same moment that defines an RMS bandwidth or duration: D. Gabor, "Theory
// of communication", J. IEE 93 III (1946) 429). Summing loss is 20 log10 of the
// magnitude of the summed pressures over the sum of the magnitudes. Comb onset
// is the lowest frequency at which that loss reaches 3 dB.
package measure
