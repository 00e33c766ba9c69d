package preview

import (
	"math"

	"github.com/gopxl/beep/v2"
)

// Ceiling is the largest magnitude in a set of cases, 3 dB below full scale.
var Ceiling = math.Pow(10, -3.0/20)

// Level is how strong a stream is, linear, full scale 1.
type Level struct {
	RMS  float64 // over both channels
	Peak float64
}

// Measure reads all of s.
func Measure(s beep.Streamer) Level {
	samples := make([][2]float64, 4096)
	var l Level
	square, count := 0.0, 0
	for {
		n, ok := s.Stream(samples)
		if !ok {
			break
		}
		for _, v := range samples[:n] {
			square += v[0]*v[0] + v[1]*v[1]
			l.Peak = max(l.Peak, math.Abs(v[0]), math.Abs(v[1]))
		}
		count += 2 * n
	}
	if count > 0 {
		l.RMS = math.Sqrt(square / float64(count))
	}
	return l
}

// Gains returns a factor for each stream that brings all to the same RMS, as
// much as can be with the highest peak of any at Ceiling. A silent stream gets
// 0.
func Gains(levels []Level) []float64 {
	crest := 0.0
	for _, l := range levels {
		if l.RMS > 0 {
			crest = max(crest, l.Peak/l.RMS)
		}
	}
	gains := make([]float64, len(levels))
	for i, l := range levels {
		if l.RMS > 0 {
			gains[i] = Ceiling / crest / l.RMS
		}
	}
	return gains
}
