package verdict

import (
	"math"
	"slices"

	"pappus/timing/recording"
)

// repeat brings a channel that was recorded several times to the mean of its recordings, and
// returns the standard errors of that mean, in dB and s, by their scatter (JCGM 100:2008,
// 4.2), as Student's t has them for so few; 0 for one recording. What one recording cannot
// know is in that: where the microphone stood, and how warm the room was.
func (f *fit) repeat(o *one) (level, late float64) {
	levels, times := []float64{20 * math.Log10(math.Abs(o.gain))}, []float64{o.late}
	for _, m := range o.repeats {
		c := o.copy()
		if !f.timed {
			c.late += m.At - o.measured.At
		}
		c.look(m, f.frequency)
		if f.adjust(c); c.unlike <= foreign {
			levels, times = append(levels, 20*math.Log10(math.Abs(c.gain))), append(times, c.late)
		}
	}
	if len(levels) < 2 {
		return 0, 0
	}
	middle, level := meanError(levels)
	at, late := meanError(times)
	o.gain *= math.Pow(10, (middle-levels[0])/20)
	if f.timed {
		o.late = at
	}
	return level, late
}

// meanError returns the mean of some values and its standard error; half of what 95 percent
// of means lie within.
func meanError(x []float64) (mean, err float64) {
	n, square := float64(len(x)), 0.0
	for _, v := range x {
		mean += v / n
	}
	for _, v := range x {
		square += (v - mean) * (v - mean)
	}
	return mean, math.Sqrt(square/(n-1)/n) * student(n-1) / Expanded
}

// usable returns the recordings of some that can be held beside another: of the same sweep, and
// with a reference if that has one.
func usable(repeats []*recording.Measured, first *recording.Measured) []*recording.Measured {
	var out []*recording.Measured
	for _, m := range repeats {
		if m != nil && slices.Equal(m.Frequency, first.Frequency) && m.Absolute == first.Absolute {
			out = append(out, m)
		}
	}
	return out
}
