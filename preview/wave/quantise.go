package wave

import (
	"math"
	"math/rand/v2"
)

// quantiser turns samples into the numbers that stand in the file.
type quantiser struct {
	depth  Depth
	dither *rand.Rand
}

func newQuantiser(d Depth) *quantiser {
	return &quantiser{depth: d, dither: rand.New(rand.NewPCG(16, 1992))}
}

// number returns v, full scale 1, as an integer of the depth, or the bits of a
// floating point number. What is past full scale is clipped, except in floating
// point; what is not a number becomes 0.
func (q *quantiser) number(v float64) int {
	if math.IsNaN(v) {
		v = 0
	}
	switch q.depth {
	case PCM16:
		return round(v*(1<<15)+q.dither.Float64()-q.dither.Float64(), 1<<15)
	case PCM24:
		return round(v*(1<<23), 1<<23)
	default:
		return int(int32(math.Float32bits(float32(v))))
	}
}

// round returns the integer nearest to v that fits below scale.
func round(v, scale float64) int {
	return int(math.RoundToEven(min(max(v, -scale), scale-1)))
}
