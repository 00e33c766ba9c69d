package loudness

import (
	"math"

	"pappus/timing/biquad"
)

// filter is the weighting of one channel and its memory.
type filter struct {
	sections biquad.Chain
	memory   [2][2]float64
}

// next weights one sample.
func (f *filter) next(x float64) float64 { return f.sections.Next(f.memory[:], x) }

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
