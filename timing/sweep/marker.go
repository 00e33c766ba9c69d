package sweep

import "math"

// A marker's band and length.
const (
	markerLow    = 400.0  // Hz, or a quarter of Stop, or Start: above what rooms hum and small drivers do not give
	markerHigh   = 8000.0 // Hz, or an octave above Start, or Stop: below what goes straight ahead only
	markerLength = 0.1    // s, or as long as its band needs
	markerWaves  = 30     // length times bandwidth, at least: its correlation stands 15 dB over noise as loud in its band
)

// MarkerBand returns the lowest and the highest frequency of a marker in Hz: within
// those of the sweep.
func (s Sweep) MarkerBand() (low, high float64) {
	return max(s.Start, min(markerLow, s.Stop/4)), min(s.Stop, max(markerHigh, 2*s.Start))
}

// MarkerSeconds returns how long a marker lasts, in s.
func (s Sweep) MarkerSeconds() float64 {
	low, high := s.MarkerBand()
	return max(markerLength, markerWaves/(high-low))
}

// MarkerSamples returns how many samples a marker takes at a rate in Hz.
func (s Sweep) MarkerSamples(rate float64) int { return int(math.Ceil(s.MarkerSeconds() * rate)) }

// FillMarker sets dst to one marker of amplitude 1 at a rate in Hz, which begins begin
// samples after the first of dst. It allocates nothing.
func (s Sweep) FillMarker(dst []float64, rate, begin float64) {
	length := s.MarkerSeconds()
	low, high := s.MarkerBand()
	for i := range dst {
		t := (float64(i) - begin) / rate
		if t < 0 || t > length {
			dst[i] = 0
			continue
		}
		window := math.Sin(math.Pi * t / length)
		dst[i] = window * window * math.Sin(2*math.Pi*t*(high-(high-low)*t/(2*length)))
	}
}
