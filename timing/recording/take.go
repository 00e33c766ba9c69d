package recording

import (
	"errors"
	"fmt"
	"math"
	"pappus/layout/prose"
)

// Take is what was recorded.
type Take struct {
	Rate    float64   // Hz, as the recorder has it
	Samples []float64 // of the microphone, full scale 1
	// Reference is the player's signal, recorded beside it by a wire from output to
	// input; nil: none. It is as long as Samples.
	Reference []float64
}

// What a recording's samples may be.
const (
	silence = 1e-4 // RMS, -80 dB: noise of 16 bit, 1/32768/sqrt(12), is 21 dB below

	crest    = 0.001       // of the peak: how thick the layers are that are counted,
	steps    = 2.0 / 32768 // or two steps of 16 bit, if that is more
	steep    = 6           // times as many samples in the top layer as below it are too many
	clipMost = 10          // samples at the top that do not matter
)

// check returns why a take cannot be used.
func (t Take) check() error {
	if !(t.Rate >= 1000 && t.Rate <= 1e7) {
		return prose.Errorf("%w: %g samples a second", errTake, t.Rate)
	}
	if t.Reference != nil && len(t.Reference) != len(t.Samples) {
		return fmt.Errorf("%w: %d samples of the microphone and %d of the reference", errTake, len(t.Samples), len(t.Reference))
	}
	if err := sound(t.Samples, "the microphone's channel"); err != nil {
		return err
	}
	if t.Reference == nil {
		return nil
	}
	return sound(t.Reference, "the reference channel")
}

// sound returns what is wrong with one channel.
func sound(x []float64, name string) error {
	for i, v := range x {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return fmt.Errorf("%w: sample %d of %s is not finite", errTake, i+1, name)
		}
	}
	size := rms(x)
	if size == 0 {
		return fmt.Errorf("%w: %s is silent: is it connected?", ErrQuiet, name)
	}
	if size < silence {
		return fmt.Errorf("%w: %s has %.0f dB below full scale, must have less than %.0f: raise the recorder's gain",
			ErrQuiet, name, -20*math.Log10(size), -20*math.Log10(silence))
	}
	if n := Clipped(x); n > 0 {
		return fmt.Errorf("%w: %s of %s at its limit: lower the recorder's gain", errClipped, prose.Count(n, "sample", "samples"), name)
	}
	return nil
}

// Clipped returns how many samples stand at a limit, 0 where there is none. The values
// of a sine crowd towards its crests, but smoothly: 2.4 times as many stand in a thin
// layer at the top as in the next. Of a clipped one, many more do.
func Clipped(x []float64) int {
	high, low := 0.0, 0.0
	for _, v := range x {
		high, low = max(high, v), min(low, v)
	}
	worst := 0
	for _, side := range []struct{ sign, peak float64 }{{1, high}, {-1, -low}} {
		layer := max(crest*side.peak, steps)
		top, next := 0, 0
		for _, v := range x {
			switch v *= side.sign; {
			case v >= side.peak-layer:
				top++
			case v >= side.peak-2*layer:
				next++
			}
		}
		if top > clipMost && top > steep*next {
			worst = max(worst, top)
		}
	}
	return worst
}

// Errors of Analyse, for errors.Is. None of them comes with a response.
var (
	errTake      = errors.New("unusable recording") // no rate, samples that are not finite, channels of unequal length
	errClipped   = errors.New("the recording is clipped")
	ErrQuiet     = errors.New("the recording is too quiet")
	errNoSweep   = errors.New("the sweep is not in the recording")
	errTruncated = errors.New("the recording does not hold all of the sweep")
	errOther     = errors.New("the recording is of another sweep")
	errUnsteady  = errors.New("the recording is not steady")
	errSwapped   = errors.New("the microphone and the wire look swapped")
	errLate      = errors.New("the sweep is heard too late")
	errGate      = errors.New("unusable gate")
)
