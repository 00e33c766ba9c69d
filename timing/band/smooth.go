package band

import "math"

// Smooth fills dst with levels in dB smoothed over 1/b octave: at each
// frequency the energy mean of the levels from half a band below to half a
// band above, on a logarithmic axis; narrower, but still centred on the
// frequency, near the ends of the data. Frequencies rise; dst, frequency
// and level have the same length, and dst may not be level. If dst is nil a
// new slice is made. Smooth panics where the lengths differ.
//
// The mean is the integral of the energy, taken as piecewise linear over
// log-frequency, so uneven spacing does no harm and a constant stays exactly
// what it was up to rounding.
func Smooth(dst, frequency, level []float64, b int) []float64 {
	if dst == nil {
		dst = make([]float64, len(level))
	}
	if len(dst) != len(level) || len(frequency) != len(level) {
		panic("band: lengths differ")
	}
	if len(level) < 2 {
		copy(dst, level)
		return dst
	}
	x := make([]float64, len(level))
	energy := make([]float64, len(level))
	area := make([]float64, len(level)) // integral of the energy from the first frequency
	for i, f := range frequency {
		x[i] = math.Log(f)
		energy[i] = math.Pow(10, level[i]/10)
		if i > 0 {
			area[i] = area[i-1] + (x[i]-x[i-1])*(energy[i]+energy[i-1])/2
		}
	}
	half := math.Log(Ratio) / (2 * float64(b))
	low, high := 0, 0 // the samples at or just below each end of the window
	for i := range dst {
		reach := min(half, x[i]-x[0], x[len(x)-1]-x[i])
		if reach == 0 {
			dst[i] = level[i]
			continue
		}
		low = advance(x, low, x[i]-reach)
		high = advance(x, high, x[i]+reach)
		sum := upTo(x, energy, area, high, x[i]+reach) - upTo(x, energy, area, low, x[i]-reach)
		dst[i] = 10 * math.Log10(sum/(2*reach))
	}
	return dst
}

// advance returns the last index whose x is at most at, from a start that is
// not past it and below the last index.
func advance(x []float64, from int, at float64) int {
	for from > 0 && x[from] > at {
		from--
	}
	for from < len(x)-2 && x[from+1] <= at {
		from++
	}
	return from
}

// upTo returns the integral of the energy from the first x to a place within
// the step that starts at index i.
func upTo(x, energy, area []float64, i int, at float64) float64 {
	d := at - x[i]
	slope := (energy[i+1] - energy[i]) / (x[i+1] - x[i])
	return area[i] + d*(energy[i]+slope*d/2)
}
