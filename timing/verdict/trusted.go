package verdict

import (
	"math"

	"pappus/timing"
	"pappus/timing/band"
)

// trusted is the largest expanded error in dB within which a level tells something: half of the
// energy, and less than what one dead string of three takes, 3.5 dB.
const trusted = 3.0

// IsTrusted tells whether a band's level is known well enough.
func (b Band) IsTrusted() bool { return Expanded*b.Error <= trusted }

// IsTrusted tells whether a level is known at a frequency by its index, and within trusted.
func (l Level) IsTrusted(f int) bool {
	return !math.IsNaN(l.Measured[f]) && len(l.Bands) > 0 && Expanded*l.ErrorAt(l.Frequency[f]) <= trusted
}

// Doubtful returns where from low to high in Hz nothing was measured that can be trusted; the
// edges lie half way between two frequencies, on a logarithmic axis.
func (l Level) Doubtful(low, high float64) []timing.Null {
	var out []timing.Null
	from := low // where the stretch begins that is not trusted
	for f := range l.Frequency {
		if !l.IsTrusted(f) {
			continue
		}
		begin, end := l.half(f-1, f), l.half(f, f+1)
		if begin > from {
			out = append(out, timing.Null{Low: from, High: min(begin, high)})
		}
		if from = max(low, end); from >= high {
			return out
		}
	}
	return append(out, timing.Null{Low: from, High: high})
}

// half returns the frequency in Hz half way between two neighbours, of which one may be missing.
func (l Level) half(a, b int) float64 {
	return math.Sqrt(l.Frequency[max(a, 0)] * l.Frequency[min(b, len(l.Frequency)-1)])
}

// AboveNoise returns by how much in dB the third of an octave that is nearest to the noise is
// above it; infinite where no noise is known.
func (l Level) AboveNoise() float64 {
	least := math.Inf(1)
	for _, b := range l.Bands {
		low, high := band.Edges(b.Centre, 3)
		from, to := band.Range(l.Frequency, low, high)
		energy, count := 0.0, 0.0
		for f := from; f < to; f++ {
			energy, count = energy+math.Pow(10, l.Noise[f]/10), count+1
		}
		least = min(least, b.Measured-10*math.Log10(energy/count))
	}
	return least
}
