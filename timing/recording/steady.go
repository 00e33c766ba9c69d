package recording

import (
	"fmt"
	"math"
	"slices"

	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

// What tells that a recording is not what it should be though both markers are there. In sweeps.csv 3 more faults are
// missed with driftMost at 1.4 times, 2 with gapShort so, none fewer with either at 0.7, and nothing sound is refused.
const (
	driftMost  = 0.001 // s for each octave by which what is heard may come later: a resonance of Q 1.5 delays 500 Hz by Q/(pi f), as much
	driftLook  = 0.25  // free: of the way to the second harmonic: so much of what is round the strongest sound is 5 ms of the shortest sweep over ten octaves, and far more of others
	driftFrom  = 500.0 // Hz; lower octaves cannot tell a time so well: a period of it is 2 ms
	driftFine  = 4     // points in the shortest thing that an octave can tell: those of the lowest are half of driftMost apart
	levelTold  = 0.5   // dB between the markers that are told: as much as an ear can just tell (common practice)
	levelMost  = 3.0   // and that are too many: a factor of 1.4 in voltage
	gapShort   = 0.01  // s for which a recording may stand still: a buffer that is lost is as long, 512 samples of 48 kHz (common practice)
	markerTail = 0.3   // s after a marker that belong to it: as a room of half a second dies away by 36 dB
)

// drift returns by how much in s for each octave what is heard comes later: what is left of
// a sweep of another band than was taken out. It is the middle of the steps from octave to
// octave, so that what the lowest tones take longer for, in high-passes and rooms, is out.
func (h *impulse) drift(s sweep.Sweep) float64 {
	reach := int(driftLook * s.Ahead(2) * h.rate)
	x := h.part(h.peak()-reach, h.peak()+reach)
	n := Length(len(x))
	spectrum := Spectrum(x, n)
	var steps []float64
	last := math.NaN()
	for low := max(bandLow*s.Start, driftFrom); 2*low <= bandHigh*s.Stop; low *= 2 {
		from := int(low / h.rate * float64(n))
		octave := spectrum[from:min(2*from, len(spectrum))]
		line := make([]complex128, Length(driftFine*len(octave))) // only the envelope counts
		copy(line, octave)
		fourier.NewCmplxFFT(len(line)).Sequence(line, line)
		top, most := 0, 0.0
		for i, v := range line {
			if e := real(v)*real(v) + imag(v)*imag(v); e > most {
				top, most = i, e
			}
		}
		at := float64(top) / float64(len(line)) * float64(n) / h.rate
		if !math.IsNaN(last) {
			steps = append(steps, at-last)
		}
		last = at
	}
	if len(steps) < 2 {
		return 0
	}
	slices.Sort(steps)
	return (steps[(len(steps)-1)/2] + steps[len(steps)/2]) / 2
}

// change returns by how many dB the second marker is louder than the first: they are the
// same, and so is all that they go through, but for a gain that was changed between.
func (w found) change(x []float64, s sweep.Sweep) float64 {
	width := int((s.MarkerSeconds() + min(markerTail, s.Gap/2)) * w.rate)
	second := w.first + int(math.Round(s.Apart()*w.rate))
	if width = min(width, len(x)-second); float64(width) < s.MarkerSeconds()*w.rate {
		return 0
	}
	n := Length(width)
	low, high := s.MarkerBand()
	energy := func(at int) (sum float64) {
		for k, v := range Spectrum(x[at:at+width], n) {
			if hz := float64(k) * w.rate / float64(n); hz >= low && hz <= high {
				sum += real(v)*real(v) + imag(v)*imag(v)
			}
		}
		return sum
	}
	return 10 * math.Log10(energy(second)/energy(w.first))
}

// gap returns when in s, and for how long, the longest stretch of the sweep begins in which a
// recording stands still; 0 where that is shorter than gapShort. A microphone never does.
func (w found) gap(x []float64, s sweep.Sweep) (at, long float64) {
	from := w.first + int((s.Begin()-s.First()+s.Rise)*w.rate)
	to := min(from+int((s.Length-s.Rise-s.Fall)*w.rate), len(x))
	run := 1
	for i := from + 1; i < to; i++ {
		if x[i] != x[i-1] {
			run = 1
			continue
		}
		if run++; float64(run) > long*w.rate {
			at, long = float64(i-run+1)/w.rate, float64(run)/w.rate
		}
	}
	if long < gapShort {
		return 0, 0
	}
	return at, long
}

// steady returns why a recording cannot be used that stops or whose gain changes, and by how
// many dB it changed.
func (w found) steady(x []float64, s sweep.Sweep) (change float64, err error) {
	if at, long := w.gap(x, s); long > 0 {
		return 0, fmt.Errorf("%w: it stands still for %.0f ms at %.1f s: was the microphone switched off?", errUnsteady, 1000*long, at)
	}
	if change = w.change(x, s); math.Abs(change) > levelMost {
		return 0, fmt.Errorf("%w: the marker after the sweep is %+.1f dB over the one before it, which is the same: the gain changed while recording; switch automatic gain off", errUnsteady, change)
	}
	return change, nil
}
