package figure

import (
	"fmt"
	"math"
	"slices"

	"pappus/timing"
	"pappus/timing/band"
)

// Quantity is one field of values over a slice, to be drawn in colours.
type Quantity struct {
	Name, Unit string
	Values     []float64 // row-major, first row lowest; NaN inside the body
	Log        bool      // a logarithmic scale
	// Low and High are the ends of the scale; NaN: the 2nd and the 98th
	// percentile of the finite values, rounded outward.
	Low, High float64
}

// decibel is the unit of a level.
const decibel = "dB"

// Level returns the level in dB in a band, an index into c.Band.
func Level(c *timing.Coverage, b int) Quantity {
	return Quantity{
		Name: fmt.Sprintf("level in the %s octave", band.Hertz(c.Band[b])), Unit: decibel,
		Values: c.Level[b], Low: math.NaN(), High: math.NaN(),
	}
}

// Smear returns the spread of the arrivals in microseconds.
func Smear(c *timing.Coverage) Quantity {
	us := make([]float64, len(c.Smear))
	for i, v := range c.Smear {
		us[i] = 1e6 * v
	}
	return Quantity{Name: "smear", Unit: "µs", Values: us, Low: 0, High: math.NaN()}
}

// CombOnset returns the lowest frequency in Hz at which summing loses 3 dB.
func CombOnset(c *timing.Coverage) Quantity {
	return Quantity{
		Name: "comb onset", Unit: "Hz", Values: c.CombOnset, Log: true,
		Low: math.NaN(), High: math.NaN(),
	}
}

// scale is the colour scale of a quantity with its ends settled.
type scale struct {
	low, high float64
	log       bool
}

func (q Quantity) scale() scale {
	s := scale{q.Low, q.High, q.Log}
	low, high := robust(q.Values, q.Log)
	if math.IsNaN(s.low) || q.Log && s.low <= 0 {
		s.low = low
	}
	if math.IsNaN(s.high) {
		s.high = high
	}
	if !q.Log {
		step := niceStep(max(s.high-s.low, 1e-6), 8)
		if math.IsNaN(q.Low) {
			s.low = step * math.Floor(s.low/step)
		}
		if math.IsNaN(q.High) {
			s.high = step * math.Ceil(s.high/step)
		}
	}
	if s.high <= s.low {
		s.high = s.low + 1
	}
	return s
}

// robust returns the 2nd and the 98th percentile of the finite values, of the
// positive ones only on a logarithmic scale.
func robust(values []float64, log bool) (low, high float64) {
	var known []float64
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) && (!log || v > 0) {
			known = append(known, v)
		}
	}
	if len(known) == 0 {
		return 1000, 10000
	}
	slices.Sort(known)
	at := func(share float64) float64 {
		return known[int(math.Round(share*float64(len(known)-1)))]
	}
	return at(0.02), at(0.98)
}

// share returns where a value lies on the scale, 0 at its low end; a value
// that has no logarithm lies at or below it.
func (s scale) share(v float64) float64 {
	if s.log {
		if v <= 0 {
			return 0
		}
		return math.Log(v/s.low) / math.Log(s.high/s.low)
	}
	return (v - s.low) / (s.high - s.low)
}
