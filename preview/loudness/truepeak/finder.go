package truepeak

import (
	"math"

	"pappus/preview/resample"

	"gonum.org/v1/gonum/floats"
)

const (
	// Delay is how many samples a Finder must see beyond the one that it speaks
	// of.
	Delay = 12

	width  = 2 * Delay // samples that a point is made of
	points = 384000    // a second, at least
	least  = 2         // points for each sample, at any rate
	beta   = 6.2       // of the Kaiser window, for 65 dB
	huge   = 1e300
)

// Finder looks between the samples of a stream, left and right.
type Finder struct {
	weights [][]float64 // of each point between two samples
	// window holds the last samples of a channel, twice, so that they can be had
	// in one piece from at on, the oldest first.
	window [2][2 * width]float64
	at     int
	alike  int     // for how many samples left and right have been the same
	spread float64 // how many times the largest sample a point may be
	low    int     // for how many samples nothing could have passed the floor
}

// NewFinder returns a Finder for a stream of rate samples a second, over 0.
func NewFinder(rate int) *Finder {
	f := &Finder{weights: weights(max(least, (points+rate-1)/rate))}
	for _, w := range f.weights {
		f.spread = max(f.spread, floats.Norm(w, 1))
	}
	return f
}

// weights returns those of the factor-1 points between two samples, each scaled
// so that a constant stays what it is.
func weights(factor int) [][]float64 {
	all, window := make([][]float64, factor-1), resample.Kaiser(beta)
	for p := range all {
		w := make([]float64, width)
		for k := range w {
			t := float64(p+1)/float64(factor) + Delay - 1 - float64(k)
			w[k] = math.Sin(math.Pi*t) / (math.Pi * t) * window(t/Delay)
		}
		floats.Scale(1/floats.Sum(w), w)
		all[p] = w
	}
	return all
}

// Push takes the next sample in and returns the largest magnitude, of left and
// right, from the sample that came Delay before to the one after that. Before the
// first sample there is silence, and so it is in place of what is not finite.
//
// Only what passes floor matters, which must not fall from call to call: where
// nothing can, the samples alone are looked at, which saves most of the work. It
// allocates nothing.
func (f *Finder) Push(v [2]float64, floor float64) float64 {
	for c := range f.window {
		v[c] = summable(v[c])
		f.window[c][f.at], f.window[c][f.at+width] = v[c], v[c]
	}
	f.at = (f.at + 1) % width
	if f.alike++; v[0] != v[1] {
		f.alike = 0
	}
	if f.low++; max(math.Abs(v[0]), math.Abs(v[1]))*f.spread > floor {
		f.low = 0
	}
	between := f.weights
	if f.low >= width {
		between = nil
	}
	peak := f.peak(0, between)
	if f.alike < width {
		peak = max(peak, f.peak(1, between))
	}
	return peak
}

// summable keeps a sample such that the weighted sums of it stay finite.
func summable(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return min(max(v, -huge), huge)
}

// peak returns the largest magnitude of a channel between the middle two samples
// of its window, both among them, and of the points between them.
func (f *Finder) peak(channel int, between [][]float64) float64 {
	x := f.window[channel][f.at : f.at+width]
	peak := max(math.Abs(x[Delay-1]), math.Abs(x[Delay]))
	for _, w := range between {
		peak = max(peak, math.Abs(floats.Dot(w, x)))
	}
	return peak
}
