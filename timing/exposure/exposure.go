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

import "math"

// Limit is the level in dBA that may last for hours.
const (
	Limit    = 85.0
	hours    = 8.0
	exchange = 3.0   // dB, more by which the time is half
	ceiling  = 140.0 // dBA, above which no time is allowed
)

// Allowed returns for how many hours in a day a level in dBA may last, if there
// is no other sound: 8 h / 2^((level-85)/3), 0 above 140 dBA. Below 85 dBA it
// grows past 24. It is NaN for a level that is no number.
func Allowed(level float64) float64 { return lasting(hours, Limit, level) }

// lasting returns how long a level may last where another may for so many hours: as much energy in
// all, and no time above the ceiling.
func lasting(hours, limit, level float64) float64 {
	if level > ceiling {
		return 0
	}
	return hours * math.Pow(2, (limit-level)/exchange)
}

// The poles in Hz, IEC 61672-1:2013, annex E: those of the C weighting, which is -3 dB at
// 10^1.5 and 10^3.9 Hz while 0 dB at 1 kHz, and the further two of the A weighting, from its
// corner at 10^2.45 Hz.
var (
	f1, f4 = poles()
	f2, f3 = math.Pow(10, 2.45) * (3 - math.Sqrt(5)) / 2, math.Pow(10, 2.45) * (3 + math.Sqrt(5)) / 2
)

func poles() (low, high float64) {
	fr, fl, fh := 1000.0, math.Pow(10, 1.5), math.Pow(10, 3.9)
	d := math.Sqrt(0.5)
	b := (fr*fr + fl*fl*fh*fh/(fr*fr) - d*(fl*fl+fh*fh)) / (1 - d)
	c := fl * fl * fh * fh
	root := math.Sqrt(b*b - 4*c)
	return math.Sqrt((-b - root) / 2), math.Sqrt((-b + root) / 2)
}

// Weighting returns the A weighting in dB at a frequency in Hz, 0 at 1 kHz and
// -Inf at 0 Hz.
func Weighting(hz float64) float64 { return weighting(hz) - atKilohertz }

var atKilohertz = weighting(1000)

func weighting(hz float64) float64 {
	x := hz * hz
	return 20 * math.Log10(f4*f4*x*x/((x+f1*f1)*math.Sqrt((x+f2*f2)*(x+f3*f3))*(x+f4*f4)))
}

// Level returns the level in dBA of sound whose bands have levels in dB at
// frequencies in Hz: their energies, weighted, add up. It is -Inf for silence,
// and panics where the lengths differ.
func Level(frequency, level []float64) float64 {
	if len(frequency) != len(level) {
		panic("exposure: lengths differ")
	}
	energy := 0.0
	for i, hz := range frequency {
		energy += math.Pow(10, (level[i]+Weighting(hz))/10)
	}
	return 10 * math.Log10(energy)
}
