package timing

import (
	"math"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// Lags returns by how much in s all of the array, besides what is in its channels' delays
// already, and the woofer are delayed in a case to be in step at the spot; as built
// neither is.
func (w *Woofer) Lags(p *Spot, c Case) (array, woofer float64) {
	switch c {
	case AsBuilt:
		return 0, 0
	case IdealPoint:
		point := r3.Norm(p.Array.Spot) / p.SpeedOfSound
		return max(0, w.Arrival-point), max(0, point-w.Arrival)
	}
	return 0, w.Delay
}

// Span is Spot.Span of the array and the woofer together, as a Listening with the woofer
// has them.
func (w *Woofer) Span(p *Spot, c Case, dry bool, place r3.Vec) (first, last float64) {
	array, woofer := w.Lags(p, c)
	first, last = p.Span(c, dry, place)
	first, last = first+array, last+array
	for _, way := range p.ways(dry) {
		at := r3.Norm(r3.Sub(way.Moved(place), p.Array.Woofer.At))/p.SpeedOfSound + woofer
		first, last = min(first, at), max(last, at)
	}
	return first, last
}

// ringing is how many periods of a crossover's frequency its filters ring until they are
// 80 dB down: of order 8, the slowest pole falls as exp(-0.383 omega t), and is there twice.
const ringing = 5

// Ring returns how long the crossover's filters ring, in s.
func (w *Woofer) Ring() float64 { return ringing / w.LowPass.Corner() }

// fed turns an array's weights, one row of frequencies in Hz for each mount, into those
// behind the crossover.
func (w *Woofer) fed(p *Spot, c Case, weight []complex128, frequency []float64) {
	late, _ := w.Lags(p, c)
	for f, hz := range frequency {
		h := w.HighPass.Response(hz) * turn(hz, late)
		for i := f; i < len(weight); i += len(frequency) {
			weight[i] *= h
		}
	}
}

// weights returns what the woofer is fed in a case.
func (w *Woofer) weights(p *Spot, c Case, frequency []float64) []complex128 {
	_, late := w.Lags(p, c)
	factor := complex(w.gain(), 0)
	out := make([]complex128, len(frequency))
	for f, hz := range frequency {
		out[f] = factor * w.LowPass.Response(hz) * turn(hz, late)
	}
	return out
}

// gain returns what the woofer is fed with, negative where inverted.
func (w *Woofer) gain() float64 {
	if w.Invert {
		return -w.factor
	}
	return w.factor
}

// group returns the woofer as a source that is heard as a point in the room is.
func (w *Woofer) group(p *Spot, point group) group {
	at := p.Array.Woofer.At
	point.mounts, point.fed, point.middle = []layout.Mount{{Point: at, Face: -1}}, nil, at
	return point
}

// HeardWoofer returns the woofer that belongs to what is heard of a plan; nil where there
// is none, or none that can be heard with it.
func HeardWoofer(p *Spot) *Woofer {
	w, err := WithWoofer(p)
	if err != nil || math.IsNaN(w.factor) || math.IsInf(w.factor, 0) {
		return nil
	}
	return &w
}
