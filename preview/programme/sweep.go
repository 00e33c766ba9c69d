package programme

import "math"

const (
	sweepSeconds = 5.0  // s, from the lowest frequency to the highest
	sweepRest    = 0.5  // s, silence after it
	sweepLow     = 40.0 // Hz
	sweepIn      = 0.08 // s, rise at the beginning: three periods of the lowest tone
	sweepOut     = 0.02 // s, fall at the end
)

// Sweep makes a sine that rises from 40 Hz to 20 kHz, or to 0.45 of a low rate,
// in 5 s, each octave in the same time, and rests for half a second.
func Sweep(rate int) Loop {
	seconds := sweepSeconds
	growth := seconds / math.Log(top(rate)/sweepLow) // s, in which the frequency grows by e
	mono := make([]float64, int((sweepSeconds+sweepRest)*float64(rate)))
	level := make([]float64, len(mono))
	sum, levels := 0.0, 0.0
	for i := range int(seconds * float64(rate)) {
		t := float64(i) / float64(rate)
		level[i] = rise(t, 0, sweepIn) * (1 - rise(t, seconds-sweepOut, seconds))
		mono[i] = level[i] * math.Sin(2*math.Pi*sweepLow*growth*math.Expm1(t/growth))
		sum += mono[i]
		levels += level[i]
	}
	// What DC there is goes out where the sweep sounds, so that the rest stays
	// silent.
	for i, l := range level {
		mono[i] -= l * sum / levels
	}
	return finish(mono)
}
