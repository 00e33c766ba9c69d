package loudness

import (
	"math"

	"pappus/timing/biquad"
)

// filter is the weighting of one channel and its memory.
type filter struct {
	sections [2]biquad.Section
	memory   [2][2]float64
}

// next weights one sample, in the transposed direct form.
func (f *filter) next(x float64) float64 {
	for i := range f.sections {
		s, m := &f.sections[i], &f.memory[i]
		y := s.B0*x + m[0]
		m[0] = s.B1*x - s.A1*y + m[1]
		m[1] = s.B2*x - s.A2*y
		x = y
	}
	return x
}

// inaudible is what a memory may hold after silence before it is emptied, far
// above the denormal numbers, which are slow.
const inaudible = 1e-60

// rest empties what is left of a long silence.
func (f *filter) rest() {
	for i := range f.memory {
		for k, v := range f.memory[i] {
			if math.Abs(v) < inaudible {
				f.memory[i][k] = 0
			}
		}
	}
}
