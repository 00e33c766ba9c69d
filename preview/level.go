package preview

import (
	"math"

	"pappus/preview/loudness"
	"pappus/preview/loudness/truepeak"

	"github.com/gopxl/beep/v2"
)

// Ceiling is the highest true peak in a set of cases, 3 dB below full scale.
var Ceiling = math.Pow(10, -3.0/20)

// Level is how strong a stream is. The first three measure the same with ever
// fewer conditions; each is minus infinity where it cannot be had.
type Level struct {
	// Integrated is the loudness in LUFS by ITU-R BS.1770-5, gates included, which
	// are set as they stand once the true peak is at Ceiling. A stream shorter than
	// 400 ms has none.
	Integrated float64
	Ungated    float64 // LUFS, the same weighting without blocks and gates
	RMS        float64 // dB, full scale 1, over both channels
	Peak       float64 // true peak, linear, full scale 1
}

// LevelOf reads all of s, at rate samples a second, at least 8000.
func LevelOf(s beep.Streamer, rate int) Level {
	loud, peak := loudness.New(rate), truepeak.New(rate)
	square, count := 0.0, 0
	each(s, func(samples [][2]float64) {
		loud.Push(samples)
		peak.Push(samples)
		for _, v := range samples {
			if both := v[0]*v[0] + v[1]*v[1]; both <= math.MaxFloat64 { // no NaN
				square += both
			}
		}
		count += 2 * len(samples)
	})
	l := Level{
		Integrated: math.Inf(-1),
		Ungated:    loud.Ungated(),
		RMS:        10 * math.Log10(square/float64(max(count, 1))),
		Peak:       peak.Peak(),
	}
	if l.Peak > 0 {
		lift := 20 * (math.Log10(Ceiling) - math.Log10(l.Peak))
		l.Integrated = loud.Integrated(lift) - lift
	}
	return l
}

// silent tells whether there is nothing to be matched.
func (l Level) silent() bool { return math.IsInf(l.RMS, -1) }

// Measure is what levels are held against each other by.
type Measure int

// From the best to what can always be had.
const (
	ByLoudness Measure = iota // Level.Integrated
	ByUngated                 // Level.Ungated
	ByRMS                     // Level.RMS
)

// of returns the level in dB, or LUFS.
func (m Measure) of(l Level) float64 { return [...]float64{l.Integrated, l.Ungated, l.RMS}[m] }

// Gains returns a factor for each stream that makes all equally loud, as loud as
// can be with the highest true peak of any at Ceiling. A silent stream gets 0.
//
// The measure is the integrated loudness; where any of them has none, the
// loudness without gates, and if even that is missing, the RMS: streams of one
// set are always held against each other by one measure.
func Gains(levels []Level) []float64 {
	measure := common(levels)
	crest := math.Inf(-1) // the highest peak once all are at 0 dB
	for _, l := range levels {
		if !l.silent() {
			crest = max(crest, 20*math.Log10(l.Peak)-measure.of(l))
		}
	}
	gains := make([]float64, len(levels))
	for i, l := range levels {
		if !l.silent() {
			gains[i] = Ceiling * math.Pow(10, (-crest-measure.of(l))/20)
		}
	}
	return gains
}

// common returns the best measure that all but the silent have.
func common(levels []Level) Measure {
	for _, m := range []Measure{ByLoudness, ByUngated} {
		if all(levels, m) {
			return m
		}
	}
	return ByRMS
}

func all(levels []Level, m Measure) bool {
	for _, l := range levels {
		if !l.silent() && math.IsInf(m.of(l), 0) {
			return false
		}
	}
	return true
}
