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

// downmix sums channels to mono.
type downmix struct {
	weights []float64
	peak    float64 // largest magnitude in any channel so far
}

// sum sums frames of interleaved numbers to mono.
func sum[T float32 | float64](dst []float64, numbers []T, m *downmix) {
	for i := range dst {
		frame := numbers[i*len(m.weights):]
		sum := 0.0
		for c, w := range m.weights {
			v := float64(frame[c])
			sum += w * v
			m.peak = max(m.peak, math.Abs(v))
		}
		dst[i] = sum
	}
}
