package decode

import "math"

// place is where a channel is meant to be heard, as the bit of a WAV file's
// channel mask.
type place uint32

const (
	left place = 1 << iota
	right
	centre
	effects // low-frequency
	backLeft
	backRight
	leftOfCentre
	rightOfCentre
	back
	sideLeft
	sideRight
)

// weight is a place's share in one front channel (ITU-R BS.775).
func (p place) weight() float64 {
	switch p {
	case centre:
		return 1
	case left, right, leftOfCentre, rightOfCentre:
		return 0.7071
	case effects:
		return 0
	}
	return 0.5
}

// weights returns the weights that sum so many channels to mono: by their places
// where each has one, else alike.
func weights(channels int, places []place) []float64 {
	w := make([]float64, channels)
	sum := 0.0
	if len(places) == channels {
		for i, p := range places {
			w[i] = p.weight()
			sum += w[i]
		}
	}
	for i := range w {
		if sum == 0 {
			w[i] = 1 / float64(channels)
		} else {
			w[i] /= sum
		}
	}
	return w
}

// mix sums frames of interleaved numbers to mono, and returns the largest magnitude of any.
func mix(dst, numbers, weights []float64) (peak float64) {
	for i := range dst {
		dst[i] = 0
		for c, v := range numbers[i*len(weights) : (i+1)*len(weights)] {
			dst[i] += weights[c] * v
			peak = max(peak, math.Abs(v))
		}
	}
	return peak
}
