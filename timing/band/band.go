package band

import (
	"math"

	"pappus/layout/prose"
)

// Ratio is the octave ratio G of IEC 61260-1:2014: 10^(3/10).
var Ratio = math.Pow(10, 0.3)

// Octaves returns the exact centres, in Hz, of the octave bands whose nominal
// centres run from 125 Hz to 8 kHz: 1000 G^i, i from -3 to 3.
func Octaves() []float64 {
	var out []float64
	for i := -3; i <= 3; i++ {
		out = append(out, 1000*math.Pow(10, 0.3*float64(i)))
	}
	return out
}

// ThirdsWithin returns the exact centres, in Hz, of the third-octave bands of
// which both edges stand from low to high, in Hz.
func ThirdsWithin(low, high float64) []float64 {
	var out []float64
	for i := math.Ceil(10 * math.Log10(low)); ; i++ {
		centre := math.Pow(10, i/10)
		from, to := Edges(centre, 3)
		if !(to <= high) {
			return out
		}
		if from >= low {
			out = append(out, centre)
		}
	}
}

// Edges returns the lower and upper edge, in Hz, of the band of width 1/b
// octave round an exact centre: centre G^(-1/2b) and centre G^(1/2b).
func Edges(centre float64, b int) (low, high float64) {
	half := math.Pow(Ratio, 1/(2*float64(b)))
	return centre / half, centre * half
}

// Within fills dst with frequencies in Hz that stand evenly, on a logarithmic
// axis, in the band of width 1/b octave round a centre: each in the middle of
// its own share of the band, so that their energy mean is the band's level per
// logarithmic hertz, as for pink noise.
func Within(dst []float64, centre float64, b int) {
	low, _ := Edges(centre, b)
	width := math.Log(Ratio) / float64(b)
	for i := range dst {
		share := (float64(i) + 0.5) / float64(len(dst))
		dst[i] = low * math.Exp(width*share)
	}
}

// Frequencies returns count frequencies for each centre, one band after the
// other, as Within places them.
func Frequencies(centre []float64, b, count int) []float64 {
	out := make([]float64, len(centre)*count)
	for i, c := range centre {
		Within(out[i*count:(i+1)*count], c, b)
	}
	return out
}

// Log fills dst with frequencies in Hz evenly spaced on a logarithmic axis,
// the first at low and the last at high.
func Log(dst []float64, low, high float64) {
	step := math.Log(high/low) / float64(len(dst)-1)
	for i := range dst {
		dst[i] = low * math.Exp(step*float64(i))
	}
	dst[len(dst)-1] = high
}

// Name returns the usual short name of a band with its exact centre, to two or
// three figures: 125, 1k, 3.15k.
func Name(centre float64) string {
	nominal := nearestNominal(centre)
	if nominal >= 1000 {
		return prose.Sprintf("%gk", nominal/1000)
	}
	return prose.Sprintf("%g", nominal)
}

// Hertz returns the name of a band with its unit: 125 Hz, 1 kHz, 3.15 kHz.
func Hertz(centre float64) string {
	nominal := nearestNominal(centre)
	if nominal >= 1000 {
		return prose.Sprintf("%g kHz", nominal/1000)
	}
	return prose.Sprintf("%g Hz", nominal)
}

// nominals are the nominal third-octave mid-band frequencies of one decade,
// IEC 61260-1:2014, annex E.
var nominals = [...]float64{1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8}

// nearestNominal returns the nominal frequency of the third-octave band that a
// frequency falls into.
func nearestNominal(frequency float64) float64 {
	tenth := int(math.Round(10 * math.Log10(frequency)))
	decade, step := tenth/10, tenth%10
	if step < 0 {
		decade, step = decade-1, step+10
	}
	return nominals[step] * math.Pow(10, float64(decade))
}
