package recording

import (
	"math"
	"sort"

	"pappus/layout/prose"
	"pappus/timing/sweep"
)

// What Options may be, and what it is where it is left out.
const (
	UsualGate = 0.01 // s, or a period of Start
	perOctave = 48   // frequencies of a response
)

// Options says how a recording is looked at. The zero value is the usual way.
type Options struct {
	// Gate is for how long in s after the strongest sound the gated response listens, so
	// that echoes are left out; 0: UsualGate.
	Gate float64
	// Microphone is by how much the microphone reads too high, frequencies rising; empty:
	// nothing. It is taken straight over log frequency and held outside.
	Microphone []Correction
}

// Correction is one line of a microphone's correction.
type Correction struct {
	Frequency float64 // Hz
	Level     float64 // dB
}

// gate returns the gate in s for a sweep whose silences leave so much.
func (o Options) gate(s sweep.Sweep, span float64) (float64, error) {
	gate := o.Gate
	if gate == 0 {
		gate = min(max(UsualGate, 1/s.Start), span/2)
	}
	if !(gate >= 1/s.Stop && gate <= span/2) {
		return 0, prose.Errorf("%w: %g s; must be from %.3g to %.3g s, half of the silence after the sweep", ErrGate, gate, 1/s.Stop, span/2)
	}
	return gate, nil
}

// reads returns by how much the microphone reads too high at a frequency in Hz, in dB.
func (o Options) reads(hz float64) float64 {
	c := o.Microphone
	if len(c) == 0 {
		return 0
	}
	i := sort.Search(len(c), func(i int) bool { return c[i].Frequency >= hz })
	switch i {
	case 0:
		return c[0].Level
	case len(c):
		return c[len(c)-1].Level
	}
	share := math.Log(hz/c[i-1].Frequency) / math.Log(c[i].Frequency/c[i-1].Frequency)
	return c[i-1].Level + share*(c[i].Level-c[i-1].Level)
}

// checkMicrophone returns why a correction cannot be used.
func (o Options) checkMicrophone() error {
	for i, c := range o.Microphone {
		if !(c.Frequency > 0) || math.IsInf(c.Frequency, 0) || !(math.Abs(c.Level) <= 200) || i > 0 && !(c.Frequency > o.Microphone[i-1].Frequency) {
			return prose.Errorf("%w: line %d of the microphone's correction: %g Hz, %g dB", ErrTake, i+1, c.Frequency, c.Level)
		}
	}
	return nil
}
