package omni

import "math"

// Spatial returns the spatial standard deviation, in dB, of levels in dB over directions that
// stand for shares of the sphere, which add to one:
//
//	sigma = sqrt(sum over i of w_i (L_i - M)^2),  M = sum over i of w_i L_i
//
// the area-weighted one of T. W. Leishman, S. Rollins and H. M. Smith, J. Acoust. Soc. Am. 120
// (2006), from p. 1411, for loudspeakers that are to be omnidirectional (pages and measure from
// memory; that M is the mean of the decibels, not of the energies, is taken to be theirs: it is
// the mean that makes sigma least). It is +Inf where a direction is silent and others are not,
// and NaN where all are or a level is NaN. Spatial panics where the lengths differ.
func Spatial(share, level []float64) float64 {
	if len(share) != len(level) {
		panic("omni: lengths differ")
	}
	mean, top := 0.0, math.Inf(-1)
	for i, l := range level {
		mean += share[i] * l
		top = math.Max(top, l)
	}
	switch {
	case math.IsNaN(mean) || math.IsInf(top, -1):
		return math.NaN()
	case math.IsInf(mean, -1):
		return math.Inf(1)
	}
	square := 0.0
	for i, l := range level {
		square += share[i] * (l - mean) * (l - mean)
	}
	return math.Sqrt(square)
}
