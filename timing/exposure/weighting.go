package exposure

import "math"

// The poles in Hz, IEC 61672-1:2013, annex E.
var (
	f1, f4 = poles()
	f2     = outer(-1)
	f3     = outer(1)
)

// poles returns those of the C weighting: -3 dB at 10^1.5 and 10^3.9 Hz while 0
// dB at 1 kHz.
func poles() (low, high float64) {
	fr, fl, fh := 1000.0, math.Pow(10, 1.5), math.Pow(10, 3.9)
	d := math.Sqrt(0.5)
	b := (fr*fr + fl*fl*fh*fh/(fr*fr) - d*(fl*fl+fh*fh)) / (1 - d)
	c := fl * fl * fh * fh
	root := math.Sqrt(b*b - 4*c)
	return math.Sqrt((-b - root) / 2), math.Sqrt((-b + root) / 2)
}

// outer returns the further two poles of the A weighting, from its corner at
// 10^2.45 Hz.
func outer(sign float64) float64 { return math.Pow(10, 2.45) * (3 + sign*math.Sqrt(5)) / 2 }

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
