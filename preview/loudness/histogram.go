package loudness

import "math"

// Bins of the histogram of blocks, in LUFS. A gate stands at the edge of a bin;
// within a bin the sum is exact. The range is far wider than that of sound at full
// scale 1, for a stream may be in other units, such as pascals, and be scaled after.
// The last bin holds all that is louder too.
const (
	lowest  = -200.0
	highest = 200.0
	perLU   = 100
	bins    = (highest - lowest) * perLU
)

// histogram keeps what the gates need of any number of blocks.
type histogram struct {
	power [bins]float64 // sum of the blocks' weighted mean squares
	count [bins]float64
}

// add takes a block in by its weighted mean square. What lies below the lowest
// bin is below every gate.
func (h *histogram) add(power float64) {
	l := lufs(power)
	if !(l >= lowest) {
		return
	}
	i := min(int((l-lowest)*perLU), bins-1)
	h.power[i] += power
	h.count[i]++
}

// above returns the mean of the blocks above a gate in LUFS, 0 if there is none.
func (h *histogram) above(gate float64) float64 {
	first := math.Ceil((gate - lowest) * perLU)
	power, count := 0.0, 0.0
	for i := int(min(max(first, 0), bins-1)); i < bins; i++ {
		power += h.power[i]
		count += h.count[i]
	}
	if count == 0 {
		return 0
	}
	return power / count
}

// lufs turns a weighted mean square, summed over the channels, into LUFS; 0
// becomes minus infinity.
func lufs(power float64) float64 { return offset + 10*math.Log10(power) }

// offset makes up for the weighting at 1 kHz.
const offset = -0.691
