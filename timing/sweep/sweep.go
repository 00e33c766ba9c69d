package sweep

import (
	"errors"
	"math"

	"pappus/layout/prose"
)

// Errors that Check and CheckRate wrap.
var (
	ErrSweep = errors.New("impossible sweep")
	ErrRate  = errors.New("too low a rate for the sweep")
)

// What a sweep may be.
const (
	LeastFrequency = 1.0      // Hz
	MostFrequency  = 100000.0 // Hz
	LeastRatio     = 2.0      // of Stop over Start
	LeastLength    = 0.2      // s
	MostLength     = 60.0     // s
	MostSilence    = 10.0     // s

	mostOfRate = 0.46 // that Stop may be: recorders need the rest for their filters
)

// Usual silences and fades.
const (
	usualLead = 0.5 // s
	usualGap  = 0.5
	usualTail = 1.0
	usualFall = 0.01

	riseWaves = 4   // periods of Start
	mostRise  = 0.1 // of Length
)

// Sweep is an exponential sine sweep with a marker before and after it: silence of
// Lead, a marker, silence of Gap, the sweep, silence of Tail, the marker again,
// silence of Gap.
type Sweep struct {
	Start, Stop     float64 // Hz
	Length          float64 // s, from Start to Stop
	Rise, Fall      float64 // s, fades at the sweep's ends, within Length
	Lead, Gap, Tail float64 // s
}

// New returns a sweep from start to stop in Hz that lasts length in s, with the
// usual fades and silences. Errors wrap ErrSweep.
func New(start, stop, length float64) (Sweep, error) {
	s := Sweep{
		Start: start, Stop: stop, Length: length,
		Rise: min(riseWaves/start, mostRise*length), Fall: usualFall,
		Lead: usualLead, Gap: usualGap, Tail: usualTail,
	}
	return s, s.Check()
}

// Check returns an error that wraps ErrSweep where there is no such sweep.
func (s Sweep) Check() error {
	// Each is written so that NaN fails.
	switch {
	case !(s.Start >= LeastFrequency && s.Stop <= MostFrequency):
		return prose.Errorf("%w: from %g to %g Hz; must be within %g to %g Hz", ErrSweep, s.Start, s.Stop, LeastFrequency, MostFrequency)
	case !(s.Stop >= LeastRatio*s.Start):
		return prose.Errorf("%w: from %g to %g Hz; must rise by an octave at least", ErrSweep, s.Start, s.Stop)
	case !(s.Length >= LeastLength && s.Length <= MostLength):
		return prose.Errorf("%w: %g s; must last %g to %g s", ErrSweep, s.Length, LeastLength, MostLength)
	case !(s.Rise >= 0 && s.Fall >= 0 && s.Rise+s.Fall <= s.Length/2):
		return prose.Errorf("%w: fades of %g and %g s; must take half of %g s at most", ErrSweep, s.Rise, s.Fall, s.Length)
	}
	for _, silence := range []float64{s.Lead, s.Gap, s.Tail} {
		if !(silence >= 0.1 && silence <= MostSilence) {
			return prose.Errorf("%w: a silence of %g s; must last 0.1 to %g s", ErrSweep, silence, MostSilence)
		}
	}
	return nil
}

// CheckRate returns an error that wraps ErrRate where a rate in Hz is too low.
func (s Sweep) CheckRate(rate float64) error {
	if !(s.Stop <= mostOfRate*rate) {
		return prose.Errorf("%w: %g samples a second carry %.0f Hz at most, the sweep rises to %.0f Hz", ErrRate, rate, mostOfRate*rate, s.Stop)
	}
	return nil
}

// Growth returns L, the time in s in which the frequency grows by e.
func (s Sweep) Growth() float64 { return s.Length / math.Log(s.Stop/s.Start) }

// Ahead returns by how many seconds the response at k times the frequency stands
// ahead of the linear one, k from 1.
func (s Sweep) Ahead(k int) float64 { return s.Growth() * math.Log(float64(k)) }

// Times in s after the beginning.
func (s Sweep) First() float64    { return s.Lead }                                 // the first marker begins
func (s Sweep) Begin() float64    { return s.Lead + s.MarkerSeconds() + s.Gap }     // the sweep begins
func (s Sweep) Apart() float64    { return s.MarkerSeconds() + s.Gap + s.silent() } // from marker to marker
func (s Sweep) Duration() float64 { return s.First() + s.Apart() + s.MarkerSeconds() + s.Gap }

// silent returns the time from the sweep's beginning to the last marker's.
func (s Sweep) silent() float64 { return s.Length + s.Tail }

// Fill sets dst to the sweep without its markers, of amplitude 1, at a rate in Hz; it
// begins begin samples, not always whole, after the first of dst. It allocates nothing.
func (s Sweep) Fill(dst []float64, rate, begin float64) {
	growth := s.Growth()
	turns := 2 * math.Pi * s.Start * growth
	for i := range dst {
		t := (float64(i) - begin) / rate
		if t < 0 || t > s.Length {
			dst[i] = 0
			continue
		}
		dst[i] = fade(t, s.Rise) * fade(s.Length-t, s.Fall) * math.Sin(turns*math.Expm1(t/growth))
	}
}

// fade rises from 0 to 1 in a time as half a raised cosine.
func fade(t, rise float64) float64 {
	if t >= rise {
		return 1
	}
	return (1 - math.Cos(math.Pi*t/rise)) / 2
}

// Samples returns all of the signal, of amplitude 1, at a rate in Hz.
func (s Sweep) Samples(rate float64) []float64 {
	out := make([]float64, int(math.Ceil(s.Duration()*rate)))
	s.Fill(out, rate, s.Begin()*rate)
	one := make([]float64, s.MarkerSamples(rate)+1)
	for _, at := range []float64{s.First() * rate, (s.First() + s.Apart()) * rate} {
		whole := math.Floor(at)
		s.FillMarker(one, rate, at-whole)
		for i, v := range one {
			if n := int(whole) + i; n < len(out) {
				out[n] += v
			}
		}
	}
	return out
}
