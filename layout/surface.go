package layout

import "math"

// Absorption holds absorption coefficients, 0 to 1, at the seven octave bands
// from 125 Hz to 8 kHz.
type Absorption [7]float64

// At returns the coefficient at a frequency in Hz: that of the octave band it
// falls into, the first or last beyond the ends.
func (a Absorption) At(frequency float64) float64 {
	band := int(math.Round(math.Log10(frequency/1000)/0.3)) + 3
	return a[min(max(band, 0), len(a)-1)]
}

// Surface is a large level surface below the body, a table or a floor.
type Surface struct {
	Present    bool
	Height     float64 // m, from the body's centre
	Absorption Absorption
}
