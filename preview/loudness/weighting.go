package loudness

import (
	"math"

	"pappus/timing/biquad"
)

// The two sections of the weighting at 48 kHz, ITU-R BS.1770-5, Annex 1, tables 1
// and 2: the shelf that stands for the head, and the high-pass.
const tableRate = 48000.0

var (
	shelf    = biquad.Section{B0: 1.53512485958697, B1: -2.69169618940638, B2: 1.19839281085285, A1: -1.69065929318241, A2: 0.73248077421585}
	highPass = biquad.Section{B0: 1, B1: -2, B2: 1, A1: -1.99004745483398, A2: 0.99007225036621}
)

// Weighting returns the two sections at a rate.
func Weighting(rate float64) biquad.Chain {
	return biquad.Chain{move(shelf, tableRate, rate), move(highPass, tableRate, rate)}
}

// move takes a section from one rate to another by way of its analogue
// prototype. The response stays exact at 0 Hz, at the corner of the poles, and
// from half one rate to half the other.
func move(s biquad.Section, from, to float64) biquad.Section {
	top, low := turned(s.B0, s.B1, s.B2), turned(1, s.A1, s.A2)
	corner := math.Sqrt(low[0] / low[2]) // tan(pi f / from)
	scale := corner / math.Tan(math.Atan(corner)*from/to)
	for i, factor := range [3]float64{1, scale, scale * scale} {
		top[i] *= factor
		low[i] *= factor
	}
	top, low = turned(top[0], top[1], top[2]), turned(low[0], low[1], low[2])
	return biquad.Section{
		B0: top[0] / low[0], B1: top[1] / low[0], B2: top[2] / low[0],
		A1: low[1] / low[0], A2: low[2] / low[0],
	}
}

// turned puts s = (1-z)/(1+z) for z in c0 + c1 z + c2 z^2 and returns the
// coefficients over (1+s)^2. Done twice it gives four times the first back.
func turned(c0, c1, c2 float64) [3]float64 {
	return [3]float64{c0 + c1 + c2, 2 * (c0 - c2), c0 - c1 + c2}
}
